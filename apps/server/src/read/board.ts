/**
 * The snapshot: the board of a shop at one number of its log. The edge below says in SQL what `visible` of libs/board
 * says over rows; where one of them changes, the other has to (a test compares them after every command):
 *
 * - visits that are open or expected, or ended no longer than `keptAfterEndMs` ago, open calls, and the vehicles and
 *   customers of both, with contacts and standing go-aheads;
 * - of these visits: concerns, lines, clocks, wheels, places, spot uses, sublets, holds with their lines and parts,
 *   questions, reports, open flags;
 * - of these vehicles: open cautions, open follow-ups, fixes that have not ended (ended ones only of these visits), each
 *   with its second checks, and part lines that are neither fitted nor cancelled (those only of these visits);
 * - who is here, and presence that ended no longer than `keptAfterEndMs` ago;
 * - the shop's own rows, all of them.
 */
import { type Audience, boardTables, keptAfterEndMs, wireColumns } from '@holdfast/board';
import { contractVersion } from '@holdfast/contract';
import type { TableName } from '@holdfast/domain';
import type pg from 'pg';
import { limitedTo } from '../auth/limited-to.js';
import { withShop } from '../database/pools.js';
import { shopNow } from '../store/head.js';
import { fromTable, isoText, jsonObject, wireFields } from './wire-sql.js';

export type ReadBoard = (shopId: string, audience: Audience) => Promise<string | null>;

/** A snapshot as old as this may be given again while no change has come. */
const keptForMs = 250;
/** Snapshots made at once in this process; the rest wait. */
const atOnce = 4;
const mostWaiting = 500;

const edge = `WITH at AS MATERIALIZED (
  SELECT h."seq", h."epoch", (${shopNow})::timestamptz(3) AS now FROM "head" h WHERE h."shop_id" = $1
), on_job AS MATERIALIZED (
  SELECT j."id", j."vehicle_id", j."customer_id" FROM "job" j
  WHERE j."shop_id" = $1 AND NOT j."void"
    AND (j."ended_at" IS NULL OR j."ended_at" > (SELECT now FROM at) - interval '${keptAfterEndMs} milliseconds')
), on_call AS MATERIALIZED (
  SELECT c."vehicle_id", c."customer_id" FROM "call" c WHERE c."shop_id" = $1 AND NOT c."void" AND c."ended_at" IS NULL
), on_vehicle AS MATERIALIZED (SELECT "vehicle_id" AS id FROM on_job UNION SELECT "vehicle_id" FROM on_call),
on_customer AS MATERIALIZED (
  SELECT "customer_id" AS id FROM on_job WHERE "customer_id" IS NOT NULL
  UNION SELECT "customer_id" FROM on_call WHERE "customer_id" IS NOT NULL
),
on_fix AS MATERIALIZED (
  SELECT f."id" FROM "temporary_fix" f
  WHERE f."shop_id" = $1 AND NOT f."void" AND f."vehicle_id" IN (SELECT id FROM on_vehicle)
    AND (f."state" <> 'ended' OR f."job_id" IN (SELECT id FROM on_job))
)`;

const ofJob = `t."job_id" IN (SELECT id FROM on_job)`;
const ofVehicle = `t."vehicle_id" IN (SELECT id FROM on_vehicle)`;

/** Tables that are not here are on the board whole (the shop's own rows). */
const where: Readonly<Partial<Record<TableName, string>>> = {
  job: `t."id" IN (SELECT id FROM on_job)`,
  vehicle: `t."id" IN (SELECT id FROM on_vehicle)`,
  customer: `t."id" IN (SELECT id FROM on_customer)`,
  contact: `t."customer_id" IN (SELECT id FROM on_customer)`,
  standingGoAhead: `t."ended_at" IS NULL AND t."customer_id" IN (SELECT id FROM on_customer)`,
  call: `t."ended_at" IS NULL`,
  attendance: `(t."to_at" IS NULL OR t."to_at" > (SELECT now FROM at) - interval '${keptAfterEndMs} milliseconds')`,
  concern: ofJob,
  workLine: ofJob,
  goAhead: ofJob,
  clock: ofJob,
  wheelRecord: ofJob,
  place: ofJob,
  liftingPoints: ofJob,
  spotUse: ofJob,
  sublet: ofJob,
  question: ofJob,
  hold: ofJob,
  holdLine: ofJob,
  holdPart: ofJob,
  report: ofJob,
  flag: `t."cleared_at" IS NULL AND ${ofJob}`,
  caution: `t."ended_at" IS NULL AND ${ofVehicle}`,
  temporaryFix: `t."id" IN (SELECT id FROM on_fix)`,
  secondCheck: `t."temporary_fix_id" IN (SELECT id FROM on_fix)`,
  followUp: `t."state" = 'open' AND ${ofVehicle}`,
  partLine: `(${ofJob} OR (${ofVehicle} AND t."state" NOT IN ('fitted', 'cancelled')))`,
};

function boardStatement(audience: Audience): string {
  const rows = boardTables(audience).map((table) => {
    const shown = wireColumns(table, audience).map(({ name }) => name);
    const fields = wireFields(table, 't', shown);
    const list = `(SELECT coalesce(json_agg(r), '[]'::json) FROM (SELECT ${fields} ${fromTable(table, where[table] ?? 'true')}) r)`;
    return [table, list] as const;
  });
  return `${edge}
SELECT at."seq", at."epoch", ${isoText('at.now')} AS now, ${jsonObject(Object.fromEntries(rows))}::text AS rows FROM at`;
}

const statements: Readonly<Record<Audience, { name: string; text: string }>> = {
  staff: { name: 'board-staff', text: boardStatement('staff') },
  wall: { name: 'board-wall', text: boardStatement('wall') },
};

interface BoardRow {
  readonly seq: number;
  readonly epoch: string;
  readonly now: string;
  readonly rows: string;
}

interface Head {
  readonly seq: number;
  readonly epoch: string;
}

interface Snapshot extends Head {
  readonly text: string;
  readonly madeAt: number;
}

async function take(pool: pg.Pool, shopId: string, audience: Audience): Promise<Snapshot | null> {
  const { rows } = await withShop(
    pool,
    shopId,
    (client) => client.query<BoardRow>({ ...statements[audience], values: [shopId] }),
    { oneView: true },
  );
  const row = rows[0];
  if (!row) return null;
  const { seq, epoch, now } = row;
  const text = `{"epoch":"${epoch}","seq":${seq},"now":"${now}","contract":${contractVersion},"rows":${row.rows}}`;
  return { seq, epoch, text, madeAt: performance.now() };
}

/**
 * The answer of `GET /api/board` as JSON text, null where there is no such shop. It is never older than the log was when
 * it was asked for: one that was made less than a quarter of a second ago is given again only while the number stands,
 * and whoever asks while one is being made waits for it. Rejects with `Overloaded` when too many wait.
 */
export function makeReadBoard(pool: pg.Pool, headOf: (shopId: string) => Promise<Head | null>): ReadBoard {
  const inTurn = limitedTo(atOnce, mostWaiting);
  const kept = new Map<string, Snapshot>();
  const making = new Map<string, Promise<Snapshot | null>>();

  const make = (key: string, shopId: string, audience: Audience) => {
    const made = inTurn(() => take(pool, shopId, audience)).finally(() => making.delete(key));
    making.set(key, made);
    return made.then((snapshot) => {
      if (snapshot) kept.set(key, snapshot);
      setTimeout(() => {
        if (kept.get(key) === snapshot) kept.delete(key);
      }, keptForMs).unref();
      return snapshot;
    });
  };

  return async (shopId, audience) => {
    const head = await headOf(shopId);
    if (!head) return null;
    const key = `${shopId}:${audience}`;
    const isLevel = (snapshot: Snapshot) => snapshot.epoch === head.epoch && snapshot.seq >= head.seq;
    const known = kept.get(key);
    if (known && isLevel(known) && performance.now() - known.madeAt < keptForMs) return known.text;
    // The one that is being made may have begun before our look at the head; the one after it did not.
    const underway = await making.get(key);
    if (underway && isLevel(underway)) return underway.text;
    return (await (making.get(key) ?? make(key, shopId, audience)))?.text ?? null;
  };
}
