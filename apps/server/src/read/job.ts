/** One visit with everything that belongs to it, and what stands against its hand-back now. */
import { handBackBlockers, type By, type Refusal, type Rows } from '@holdfast/domain';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { bagOf, decodeTables } from '../store/shop-cache.js';
import { loadCall } from '../store/slices.js';
import { logOfJob } from './change-log.js';
import type { ShopOf } from './shop-of.js';
import { hangingRows, jsonObject, rowJson, rowsJson, wireFields } from './wire-sql.js';

const ofJob = `t."job_id" = $2`;
const ofVehicle = `t."vehicle_id" = (SELECT "vehicle_id" FROM this_job)`;
const customerHere = `(SELECT "customer_id" FROM this_job)`;
const asRecorded = `t."effective_at", t."id"`;
const asBegun = `t."from_at", t."id"`;

const concernIds = `(SELECT coalesce(json_agg(k."concern_id" ORDER BY k."id"), '[]'::json) FROM "cause_concern" k
  WHERE k."shop_id" = $1 AND k."cause_id" = t."id" AND NOT k."void") AS "concernIds"`;
const earlierFinding = `(SELECT row_to_json(r) FROM (SELECT ${wireFields('finding', 'e')} FROM "finding" e
  WHERE e."shop_id" = $1 AND e."vehicle_id" = t."vehicle_id" AND e."place_key" = t."place_key" AND NOT e."void"
    AND (e."effective_at", e."id") < (t."effective_at", t."id")
  ORDER BY e."effective_at" DESC, e."id" DESC LIMIT 1) r) AS "earlier"`;
/** Those that end stay beside the lines that rest on them. */
const coversJob = `((t."ended_at" IS NULL AND t."customer_id" = ${customerHere}
    AND (t."job_id" IS NULL OR ${ofJob}) AND (t."vehicle_id" IS NULL OR ${ofVehicle}))
  OR t."id" IN (SELECT l."standing_id" FROM "work_line" l WHERE l."shop_id" = $1 AND l."job_id" = $2 AND NOT l."void"))`;
const usedOfStanding = `(SELECT coalesce(sum(l."price"), 0)::text FROM "work_line" l WHERE l."shop_id" = $1 AND l."job_id" = $2
  AND l."standing_id" = t."id" AND l."go_ahead" = 'given' AND l."progress" <> 'dropped' AND NOT l."void") AS "used"`;

const statement = {
  name: 'read-job',
  text: `WITH this_job AS MATERIALIZED (
  SELECT j."id", j."vehicle_id", j."customer_id", j."ended_at" FROM "job" j WHERE j."shop_id" = $1 AND j."id" = $2 AND NOT j."void"
)
SELECT (SELECT "ended_at" IS NULL FROM this_job) AS open, ${jsonObject({
    job: rowJson('job', `t."id" = $2`),
    vehicle: rowJson('vehicle', `t."id" = (SELECT "vehicle_id" FROM this_job)`),
    customer: rowJson('customer', `t."id" = ${customerHere}`),
    contacts: rowsJson('contact', { where: `t."customer_id" = ${customerHere}`, order: 't."name", t."id"' }),
    cautions: rowsJson('caution', { where: `${ofVehicle} AND (t."ended_at" IS NULL OR ${ofJob})`, order: asRecorded }),
    odometerReadings: rowsJson('odometerReading', { where: ofJob, order: asRecorded }),
    concerns: rowsJson('concern', { where: ofJob, order: 't."position", t."id"' }),
    attempts: rowsJson('attempt', { where: ofJob, order: asRecorded }),
    causes: rowsJson('cause', { where: ofJob, order: asRecorded, also: [concernIds] }),
    findings: rowsJson('finding', { where: ofJob, order: asRecorded, also: [earlierFinding] }),
    photos: rowsJson('photo', { where: ofJob, order: asRecorded }),
    lines: rowsJson('workLine', {
      where: ofJob,
      order: 't."position", t."id"',
      also: [`${hangingRows('goAhead', 'k."line_id" = t."id"', 'k."effective_at", k."id"')} AS "goAheads"`],
    }),
    clocks: rowsJson('clock', { where: ofJob, order: asBegun }),
    wheels: rowsJson('wheelRecord', { where: ofJob, order: 't."position", t."effective_at", t."id"' }),
    places: rowsJson('place', { where: ofJob, order: asBegun }),
    spotUses: rowsJson('spotUse', { where: ofJob, order: asBegun }),
    sublets: rowsJson('sublet', { where: ofJob, order: asRecorded }),
    questions: rowsJson('question', { where: ofJob, order: asRecorded }),
    standing: rowsJson('standingGoAhead', { where: coversJob, order: asRecorded, also: [usedOfStanding] }),
    holds: rowsJson('hold', {
      where: ofJob,
      order: asBegun,
      also: [idsOf('hold_line', 'line_id', 'lineIds'), idsOf('hold_part', 'part_line_id', 'partLineIds')],
    }),
    partLines: rowsJson('partLine', {
      where: ofJob,
      order: asRecorded,
      also: [
        `${hangingRows('dueIn', 'k."part_line_id" = t."id"', 'k."ordinal", k."id"')} AS "dueIns"`,
        `${hangingRows('arrival', 'k."part_line_id" = t."id"', 'k."effective_at", k."id"')} AS "arrivals"`,
      ],
    }),
    orders: rowsJson('partsOrder', {
      where: `t."id" IN (SELECT p."order_id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."job_id" = $2 AND NOT p."void")`,
      order: asRecorded,
    }),
    temporaryFixes: rowsJson('temporaryFix', {
      where: `${ofVehicle} AND (${ofJob} OR (t."state" <> 'ended' AND (SELECT "ended_at" FROM this_job) IS NULL))`,
      order: asRecorded,
      also: [
        `${hangingRows('secondCheck', 'k."temporary_fix_id" = t."id"', 'k."effective_at", k."id"')} AS "secondChecks"`,
      ],
    }),
    followUps: rowsJson('followUp', {
      where: `${ofVehicle} AND (t."from_job_id" = $2 OR t."state" = 'open')`,
      order: asRecorded,
    }),
    flags: rowsJson('flag', { where: ofJob, order: asRecorded }),
    reports: rowsJson('report', { where: ofJob, order: asRecorded }),
    sheets: rowsJson('sheet', { where: ofJob, order: asRecorded }),
    calls: rowsJson('call', { where: ofJob, order: asRecorded }),
    contactEntries: rowsJson('contactEntry', { where: ofJob, order: asRecorded }),
    log: logOfJob,
  })}::text AS view WHERE EXISTS (SELECT 1 FROM this_job)`,
};

function idsOf(table: string, column: string, name: string): string {
  return `(SELECT coalesce(json_agg(k."${column}"), '[]'::json) FROM "${table}" k WHERE k."shop_id" = $1 AND k."hold_id" = t."id" AND NOT k."void") AS "${name}"`;
}

export interface JobRead {
  /** JSON of the view without `blockers`. */
  readonly text: string;
  /** Null once the visit has ended. */
  readonly blockers: { readonly road: readonly Refusal[]; readonly transporter: readonly Refusal[] } | null;
}

/** Null where the shop has no such visit. The blockers are those that `by` would meet, with the receiver there. */
export function readJob(pool: pg.Pool, shopOf: ShopOf, shopId: string, jobId: string, by: By): Promise<JobRead | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const { rows } = await client.query<{ open: boolean; view: string }>({ ...statement, values: [shopId, jobId] });
      const row = rows[0];
      if (!row) return null;
      const bag = row.open ? await bagOfJob(client, shopOf, shopId, jobId) : null;
      return { text: row.view, blockers: bag && blockersIn(bag, jobId, by) };
    },
    { oneView: true },
  );
}

async function bagOfJob(client: pg.ClientBase, shopOf: ShopOf, shopId: string, jobId: string): Promise<Rows | null> {
  const shop = await shopOf(client, shopId);
  const call = loadCall(shopId, { jobs: [jobId] });
  if (!shop || !call) return null;
  const { rows } = await client.query<{ rows: string }>({ ...call, values: [...call.values] });
  return bagOf(shop, decodeTables(rows[0]?.rows ?? '{}'));
}

function blockersIn(rows: Rows, jobId: string, by: By): NonNullable<JobRead['blockers']> {
  const asked = { jobId, receivedHow: 'there' } as const;
  return {
    road: handBackBlockers(rows, { ...asked, leavesBy: 'road' }, by),
    transporter: handBackBlockers(rows, { ...asked, leavesBy: 'transporter' }, by),
  };
}
