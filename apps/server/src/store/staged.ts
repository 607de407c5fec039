/**
 * A staged file at its acceptance. 20 000 vehicles take seconds to write, and nobody shall wait for them: they are laid
 * down in the transaction before it takes the lock on the shop's head, where no other transaction sees them. Under the lock
 * is looked at only what was recorded meanwhile; then they are there with the change, or gone with the rollback.
 */
import type { ImportKind, Row, StagedFile, TableName } from '@holdfast/domain';
import type pg from 'pg';
import { readRow, readValue, rowOf, storedTables } from './columns.js';
import { recentlyEnded } from './slice-walk.js';
import { shopNow } from './head.js';
import type { TablesOfRows } from './shop-cache.js';

export interface StagedRows {
  readonly file: StagedFile;
  /** The file's own row. */
  readonly content: TablesOfRows;
  /** Whose boards show follow-ups of the file. */
  readonly vehicles: readonly string[];
}

/** A file whose good rows are down in a transaction that has not the shop's lock yet. */
export interface LaidDown {
  readonly batch: Row<'importBatch'> | null;
  /** The log ended here before anything was looked at. */
  readonly seq: number;
  readonly overtaken: number;
  /** Follow-ups that are not down, because a board shows their vehicles. */
  readonly left: readonly string[];
}

/** Rows that are written by one statement. */
const laidAtOnce = 1_000;

const goodRows = `"import_row" r WHERE r."shop_id" = $1 AND r."import_id" = $2 AND r."state" = 'good'`;

const isGone = (
  customer: string,
) => `NOT EXISTS (SELECT FROM "customer" c WHERE c."shop_id" = $1 AND c."id" = ${customer}
  AND NOT c."void" AND c."erased_at" IS NULL AND c."merged_into_id" IS NULL)`;
/** A customer of the name with the number, or where no number is said of the name alone. */
const isThereNow = `EXISTS (SELECT FROM "customer" c WHERE c."shop_id" = $1 AND c."name_key" = r."name_key" AND NOT c."void"
  AND c."erased_at" IS NULL AND c."merged_into_id" IS NULL AND (r."phone_key" IS NULL OR EXISTS (SELECT FROM "contact" k
    WHERE k."shop_id" = $1 AND k."customer_id" = c."id" AND NOT k."void" AND regexp_replace(k."phone", '\\D', '', 'g') = r."phone_key")))`;
const customersHold = `(r."new_customer" AND ${isThereNow})`;
/** Of a row whose customer is made by another row of the file there is nothing to look at. */
const customersLeft = `(r."customer_id" IS NOT NULL AND NOT r."new_customer" AND ${isGone('r."customer_id"')}
  AND NOT EXISTS (SELECT FROM made_here m WHERE m."customer_id" = r."customer_id"))`;
const vehicleThere = (condition: string) =>
  `EXISTS (SELECT FROM "vehicle" v WHERE v."shop_id" = $1 AND ${condition} AND NOT v."void")`;

const overtakenBy: Readonly<Record<ImportKind, string>> = {
  customers: customersHold,
  vehicles: [
    vehicleThere('v."plate_key" = r."plate_key"'),
    `(r."vin" IS NOT NULL AND ${vehicleThere('v."vin" = r."vin"')})`,
    customersHold,
    customersLeft,
  ].join(' OR '),
  followUps: [
    `NOT ${vehicleThere('v."id" = r."vehicle_id" AND v."merged_into_id" IS NULL')}`,
    `EXISTS (SELECT FROM "follow_up" f WHERE f."shop_id" = $1 AND f."vehicle_id" = r."vehicle_id" AND f."state" = 'open'
      AND NOT f."void" AND f."title" = r."made"->>'title')`,
  ].join(' OR '),
};

const overtakenStatement = (kind: ImportKind) => `WITH made_here AS MATERIALIZED (
  SELECT r."customer_id" FROM ${goodRows} AND r."new_customer"
) SELECT count(*)::int AS rows FROM ${goodRows} AND (${overtakenBy[kind]})`;

/**
 * The rows that changes after number $3 wrote, and how many changes of them still have their images. Own rows of this
 * transaction are in no change yet.
 */
const touched = `meanwhile AS MATERIALIZED (
  SELECT c."seq", c."rows" FROM "change_rows" c WHERE c."shop_id" = $1 AND c."seq" > $3
), touched AS MATERIALIZED (
  SELECT e->>0 AS "table", (e->>1)::uuid AS id, e->3 AS row FROM meanwhile m, jsonb_array_elements(m."rows") e
  WHERE e->>0 IN ('vehicle', 'customer', 'contact', 'followUp')
), named AS MATERIALIZED (
  SELECT c."id", c."name_key", c."erased_at", c."merged_into_id" FROM "customer" c WHERE c."shop_id" = $1 AND c."id" IN (
    SELECT t.id FROM touched t WHERE t."table" = 'customer' UNION SELECT (t.row->>'customerId')::uuid FROM touched t WHERE t."table" = 'contact')
)`;
/** Whether something touched since stands against a row; a little more than the full look, never less. */
const touchedAgainst: Readonly<Record<ImportKind, string>> = {
  customers: `r."name_key" IN (SELECT "name_key" FROM named)`,
  vehicles: `r."plate_key" IN (SELECT t.row->>'plateKey' FROM touched t WHERE t."table" = 'vehicle')
    OR r."vin" IN (SELECT t.row->>'vin' FROM touched t WHERE t."table" = 'vehicle')
    OR r."name_key" IN (SELECT "name_key" FROM named) OR r."customer_id" IN (SELECT "id" FROM named)`,
  followUps: `r."vehicle_id" IN (SELECT t.id FROM touched t WHERE t."table" = 'vehicle' AND t.row->>'mergedIntoId' IS NOT NULL)
    OR EXISTS (SELECT FROM touched t WHERE t."table" = 'followUp' AND (t.row->>'vehicleId')::uuid = r."vehicle_id" AND t.row->>'title' = r."made"->>'title')`,
};
const meanwhileStatement = (kind: ImportKind) => `WITH ${touched}
SELECT (SELECT count(*) FROM meanwhile)::int AS changes, (SELECT h."seq" - $3 FROM "head" h WHERE h."shop_id" = $1)::int AS wanted,
  (SELECT count(*) FROM ${goodRows} AND (${touchedAgainst[kind]}))::int AS rows`;

type Expressions = Readonly<Record<string, string>>;
const said = (name: string) => `r."made"->>'${name}'`;

/** What each column of a table gets from a good row `r`; those left out are null. */
const customerFrom: Expressions = {
  id: 'r."customer_id"',
  name: `coalesce(${said('name')}, ${said('customerName')})`,
  nameKey: 'r."name_key"',
  fleet: said('fleet'),
};
const contactFrom: Expressions = {
  id: 'r."contact_id"',
  customerId: 'r."customer_id"',
  name: `coalesce(${said('contactName')}, ${said('customerName')})`,
  phone: said('phone'),
  mail: said('mail'),
  mayBring: 'true',
  // As for a contact that is added by hand: a private customer's people speak for them.
  mayAgreeAny: `${said('fleet')} IS NULL`,
  mayCollect: 'false',
};
const vehicleFrom: Expressions = {
  id: 'r."row_id"',
  customerId: 'r."customer_id"',
  plate: said('plate'),
  plateKey: 'r."plate_key"',
  vin: 'r."vin"',
  description: said('description'),
  kind: said('vehicleKind'),
  drive: said('drive'),
  curbKg: `(${said('curbKg')})::int`,
  curbSource: `CASE WHEN ${said('curbKg')} IS NULL THEN NULL ELSE 'told' END`,
  grossKg: `(${said('grossKg')})::int`,
  grossSource: `CASE WHEN ${said('grossKg')} IS NULL THEN NULL ELSE 'told' END`,
  rolls: 'true',
  mayBeDriven: 'true',
  notes: said('notes'),
};
const followUpFrom: Expressions = {
  id: 'r."row_id"',
  vehicleId: 'r."vehicle_id"',
  kind: said('followUpKind'),
  title: said('title'),
  words: said('words'),
  urgency: said('urgency'),
  needsGoAhead: 'false',
  beforeDay: `(${said('beforeDay')})::date`,
  beforeOdometer: `(${said('beforeOdometer')})::int`,
  distanceUnit: `(SELECT CASE WHEN s."units" = 'us' THEN 'mi' ELSE 'km' END FROM "shop" s WHERE s."shop_id" = $1 LIMIT 1)`,
  state: `'open'`,
};
/** `$3` the person, `$4` the shop's time. */
const recordedFrom: Expressions = {
  recordedAt: 'to_timestamp($4::double precision / 1000)',
  effectiveAt: 'to_timestamp($4::double precision / 1000)',
  byId: '$3::uuid',
};

/** $1 shop, $2 file, the last two parameters the first and last row. */
function insertFrom(table: TableName, from: Expressions, where: string, firstParameter: number): string {
  const { sql, columns } = storedTables[table];
  const all: Expressions = { version: '1', void: 'false', ...from };
  const values = columns.map(({ name }) => all[name] ?? 'NULL');
  return `INSERT INTO ${sql} ("shop_id", ${columns.map((column) => column.sql).join(', ')})
SELECT $1, ${values.join(', ')} FROM ${goodRows} AND ${where}
  AND r."number" BETWEEN $${String(firstParameter)} AND $${String(firstParameter + 1)}`;
}

const inserts = {
  customer: insertFrom('customer', customerFrom, 'r."new_customer"', 3),
  contact: insertFrom('contact', contactFrom, 'r."contact_id" IS NOT NULL', 3),
  vehicle: insertFrom('vehicle', vehicleFrom, 'true', 3),
  followUp: insertFrom('followUp', { ...followUpFrom, ...recordedFrom }, 'r."row_id" <> ALL($5::uuid[])', 6),
} as const;

const tablesOf: Readonly<Record<ImportKind, readonly (keyof typeof inserts)[]>> = {
  customers: ['customer', 'contact'],
  vehicles: ['customer', 'contact', 'vehicle'],
  followUps: ['followUp'],
};

const followUpColumns = storedTables.followUp.columns.filter(
  ({ name }) => !['version', 'void', 'recordedAt', 'effectiveAt', 'byId', 'device'].includes(name),
);
const onBoardStatement = `WITH shop_now AS (SELECT ${shopNow} AS now FROM "head" h WHERE h."shop_id" = $1), on_board AS MATERIALIZED (
  SELECT j."vehicle_id" FROM "job" j WHERE j."shop_id" = $1 AND NOT j."void" AND ${recentlyEnded('j')}
  UNION SELECT k."vehicle_id" FROM "call" k WHERE k."shop_id" = $1 AND k."ended_at" IS NULL AND NOT k."void"
)
SELECT json_build_object(${followUpColumns
  .map(({ name, kind }) => {
    const from = followUpFrom[name];
    return `'${name}', ${from === undefined ? 'NULL' : readValue(kind, from)}`;
  })
  .join(', ')}) AS row FROM ${goodRows} AND r."vehicle_id" IN (SELECT "vehicle_id" FROM on_board)`;

type FollowUp = StagedFile['onBoard'][number];

async function followUpsOnBoard(client: pg.ClientBase, shopId: string, batch: Row<'importBatch'>): Promise<FollowUp[]> {
  if (batch.kind !== 'followUps' || batch.state !== 'checked') return [];
  const { rows } = await client.query<{ row: FollowUp }>(onBoardStatement, [shopId, batch.id]);
  return rows.map(({ row }) => row);
}

/** Locks the file's row, so that no run of checking changes it any more; null where the shop has no such file. */
async function lockedBatch(
  client: pg.ClientBase,
  shopId: string,
  importId: string,
): Promise<Row<'importBatch'> | null> {
  const { rows } = await client.query<{ row: unknown[] }>(
    `SELECT ${readRow(storedTables.importBatch, 't')} AS row FROM "import_batch" t
      WHERE t."shop_id" = $1 AND t."id" = $2 AND NOT t."void" FOR UPDATE`,
    [shopId, importId],
  );
  const values = rows[0]?.row;
  return values ? rowOf<'importBatch'>(storedTables.importBatch, values) : null;
}

/** Opens the transaction and writes the good rows of a file that holds; of one that does not, nothing. */
export async function layDown(
  client: pg.ClientBase,
  shopId: string,
  importId: string,
  personId: string | null,
): Promise<LaidDown> {
  await client.query('BEGIN');
  await client.query(`SELECT set_config('app.shop_id', $1, true)`, [shopId]);
  const batch = await lockedBatch(client, shopId, importId);
  const head = await client.query<{ seq: number; now: number }>(
    `SELECT h."seq", ${shopNow} AS now FROM "head" h WHERE h."shop_id" = $1`,
    [shopId],
  );
  const { seq, now } = head.rows[0] ?? { seq: 0, now: 0 };
  if (batch?.state !== 'checked') return { batch, seq, overtaken: 0, left: [] };
  const looked = await client.query<{ rows: number }>(overtakenStatement(batch.kind), [shopId, importId]);
  const overtaken = looked.rows[0]?.rows ?? 0;
  if (overtaken > 0) return { batch, seq, overtaken, left: [] };
  const left = (await followUpsOnBoard(client, shopId, batch)).map(({ id }) => id);
  // References are looked at row by row now and not all at once at the commit, when others wait.
  await client.query('SET CONSTRAINTS ALL IMMEDIATE');
  for (const table of tablesOf[batch.kind]) {
    for (let from = 2; from <= batch.rowCount + 1; from += laidAtOnce) {
      const range = [from, from + laidAtOnce - 1];
      const values =
        table === 'followUp' ? [shopId, importId, personId, now, left, ...range] : [shopId, importId, ...range];
      await client.query(inserts[table], values);
    }
  }
  await client.query('SET CONSTRAINTS ALL DEFERRED');
  return { batch, seq, overtaken, left };
}

/** What was recorded since the rows were laid down, and the follow-ups that are left to the decision. */
export async function stagedUnderLock(
  client: pg.ClientBase,
  shopId: string,
  { batch, seq, overtaken, left }: LaidDown,
): Promise<StagedRows | null> {
  if (batch === null) return null;
  const onBoard = await followUpsOnBoard(client, shopId, batch);
  const file = { importId: batch.id, overtaken: overtaken + (await meanwhile(client, shopId, batch, seq)), onBoard };
  const content = { importBatch: [batch] };
  const now = new Set(onBoard.map(({ id }) => id));
  // A vehicle that came or went meanwhile: accepted again in a moment, every board is told.
  const moved = left.filter((id) => !now.has(id)).length + onBoard.filter(({ id }) => !left.includes(id)).length;
  const vehicles = [...new Set(onBoard.map(({ vehicleId }) => vehicleId))];
  return { file: { ...file, overtaken: file.overtaken + moved }, content, vehicles };
}

async function meanwhile(
  client: pg.ClientBase,
  shopId: string,
  batch: Row<'importBatch'>,
  seq: number,
): Promise<number> {
  if (batch.state !== 'checked') return 0;
  const { rows } = await client.query<{ changes: number; wanted: number; rows: number }>(
    meanwhileStatement(batch.kind),
    [shopId, batch.id, seq],
  );
  const found = rows[0];
  // Images that were cleared away meanwhile would have told of something.
  return found === undefined || found.changes !== found.wanted ? 1 : found.rows;
}
