/**
 * The load slices as one statement: which jobs, vehicles, bays and people the ids of a command lead to, and their rows.
 * Everything is filtered by the shop here and walled by row-level security beneath; each is tested with the other off.
 *
 * The shop's own tables (people, bays, hours …) are not read here: they change seldom and are kept by ./shop-cache.
 */
import type { Slices, TableName } from '@holdfast/domain';
import { readRow, storedTables } from './columns.js';
import { shopNow } from './head.js';

/** How far back closed stays and clocks are read for the rules that look at what came before. */
const recentDays = 14;
/** As `keptAfterEndMs` of the board: visits that ended lately may still be on it. */
const recentlyEnded = `(j."ended_at" IS NULL OR j."ended_at" > (SELECT now FROM shop_now) - interval '36 hours')`;

const idFields = [
  'jobs',
  'vehicles',
  'lines',
  'concerns',
  'clocks',
  'holds',
  'partLines',
  'orders',
  'cautions',
  'fixes',
  'followUps',
  'reports',
  'bays',
  'people',
  'customers',
] as const satisfies readonly (keyof Slices)[];
type IdField = (typeof idFields)[number];

/** Rows of a child table lead to their job, and rows that belong to the vehicle to the vehicle. */
const toJob = [
  ['lines', 'work_line'],
  ['concerns', 'concern'],
  ['clocks', 'clock'],
  ['holds', 'hold'],
  ['reports', 'report'],
] as const;
const toVehicle = [
  ['partLines', 'part_line', 'id'],
  ['orders', 'part_line', 'order_id'],
  ['cautions', 'caution', 'id'],
  ['fixes', 'temporary_fix', 'id'],
  ['followUps', 'follow_up', 'id'],
] as const;

/** The parameter of each kind of id that a call has; a kind it does not have is an empty array. */
type IdParams = (field: IdField) => string;

function unionOf(parts: readonly string[]): string {
  return parts.length > 0 ? parts.join('\n  UNION ALL ') : 'SELECT NULL::uuid AS id WHERE false';
}

const lately = (alias: string) =>
  `(${alias}."to_at" IS NULL OR ${alias}."from_at" > (SELECT now FROM shop_now) - interval '${String(recentDays)} days')`;

const inBay = (
  has: (field: IdField) => boolean,
  param: IdParams,
) => `SELECT s."id", s."job_id", s."vehicle_id" FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void"
    AND (s."bay_id" = ANY(${param('bays')})${has('reports') ? ' OR s."bay_id" IN (SELECT "bay_id" FROM reported)' : ''})
    AND ${lately('s')}`;

const onClock = (
  has: (field: IdField) => boolean,
  param: IdParams,
) => `SELECT c."id", c."line_id" FROM "clock" c WHERE c."shop_id" = $1 AND NOT c."void"
    AND (c."person_id" = ANY(${param('people')})${has('reports') ? ' OR c."person_id" IN (SELECT "person_id" FROM reported)' : ''})
    AND ${lately('c')}`;

/** A step that a call does not take costs nothing: the planner sees that it is empty. $1 is the shop. */
function named(has: (field: IdField) => boolean, param: IdParams, plate: string | null): string {
  const jobs = [
    ...(has('jobs') ? [`SELECT unnest(${param('jobs')}) AS id`] : []),
    ...toJob
      .filter(([field]) => has(field))
      .map(
        ([field, table]) =>
          `SELECT "job_id" AS id FROM "${table}" WHERE "shop_id" = $1 AND "id" = ANY(${param(field)})`,
      ),
  ];
  const vehicles = [
    ...(has('vehicles') ? [`SELECT unnest(${param('vehicles')}) AS id`] : []),
    `SELECT "vehicle_id" AS id FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM named_job)`,
    ...toVehicle
      .filter(([field]) => has(field))
      .map(
        ([field, table, column]) =>
          `SELECT "vehicle_id" AS id FROM "${table}" WHERE "shop_id" = $1 AND "${column}" = ANY(${param(field)})`,
      ),
  ];
  return `shop_now AS (
  SELECT ${shopNow} AS now FROM "head" h WHERE h."shop_id" = $1
), named_job AS (
  ${unionOf(jobs)}
), on_vehicle AS (
  ${unionOf(vehicles)}
), whole_job AS (
  SELECT id FROM named_job
  UNION ALL SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" IN (SELECT id FROM on_vehicle) AND NOT j."void" AND ${recentlyEnded}
), reported AS (
  ${has('reports') ? `SELECT "bay_id", "person_id" FROM "report" WHERE "shop_id" = $1 AND "id" = ANY(${param('reports')})` : 'SELECT NULL::uuid AS "bay_id", NULL::uuid AS "person_id" WHERE false'}
), in_bay AS (
  ${has('bays') || has('reports') ? inBay(has, param) : 'SELECT NULL::uuid AS "id", NULL::uuid AS "job_id", NULL::uuid AS "vehicle_id" WHERE false'}
), on_clock AS (
  ${has('people') || has('reports') ? onClock(has, param) : 'SELECT NULL::uuid AS "id", NULL::uuid AS "line_id" WHERE false'}
), known_vehicle AS (
  SELECT id FROM on_vehicle
  UNION ALL SELECT "vehicle_id" FROM in_bay
  ${plate === null ? '' : `UNION ALL SELECT "id" FROM "vehicle" WHERE "shop_id" = $1 AND "plate_key" = ${plate}`}
), known_customer AS (
  SELECT unnest(${param('customers')}) AS id
  UNION ALL SELECT "customer_id" FROM "vehicle" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM on_vehicle)
  UNION ALL SELECT "customer_id" FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM whole_job)
)`;
}

const byJob = `t."job_id" IN (SELECT id FROM whole_job)`;
const byVehicle = `t."vehicle_id" IN (SELECT id FROM on_vehicle)`;
const ofParts = `IN (SELECT p."id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`;

/** Which rows of each table a bag gets; tables that are not here come from the shop cache or in reads of their own. */
const where: Readonly<Partial<Record<TableName, string>>> = {
  job: `t."id" IN (SELECT id FROM whole_job)`,
  vehicle: `t."id" IN (SELECT id FROM known_vehicle)`,
  customer: `t."id" IN (SELECT id FROM known_customer)`,
  contact: `t."customer_id" IN (SELECT id FROM known_customer)`,
  odometerReading: byVehicle,
  caution: `${byVehicle} AND t."ended_at" IS NULL`,
  concern: byJob,
  finding: byJob,
  photo: byJob,
  sheet: byJob,
  workLine: byJob,
  goAhead: byJob,
  clock: byJob,
  place: byJob,
  spotUse: byJob,
  report: byJob,
  flag: byJob,
  hold: byJob,
  holdLine: byJob,
  holdPart: byJob,
  partLine: byVehicle,
  dueIn: `t."part_line_id" ${ofParts}`,
  arrival: `t."part_line_id" ${ofParts}`,
  partsOrder: `t."id" IN (SELECT p."order_id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`,
  temporaryFix: `${byVehicle} AND (t."state" <> 'ended' OR ${byJob})`,
  secondCheck: byVehicle,
  followUp: `${byVehicle} AND t."state" = 'open'`,
};

/** Rows that some calls reach besides, as a query of their ids: the kinds of id that lead to them, and the query. */
const also: Readonly<
  Partial<Record<TableName, readonly [from: readonly IdField[], ids: (param: IdParams) => string]>>
> = {
  job: [['bays', 'reports'], () => `SELECT "job_id" FROM in_bay`],
  workLine: [['people', 'reports'], () => `SELECT "line_id" FROM on_clock`],
  clock: [['people', 'reports'], () => `SELECT "id" FROM on_clock`],
  place: [
    ['bays', 'reports'],
    () => `SELECT p."id" FROM "place" p WHERE p."shop_id" = $1 AND p."job_id" IN (SELECT "job_id" FROM in_bay)`,
  ],
  spotUse: [['bays', 'reports'], () => `SELECT "id" FROM in_bay`],
  // One that a command names is loaded when it is closed too.
  followUp: [['followUps'], (param) => `SELECT unnest(${param('followUps')})`],
};
const allTables = Object.keys(where) as TableName[];

export interface LoadCall {
  readonly name: string;
  readonly text: string;
  readonly values: readonly unknown[];
}

/** Each combination of ids and tables that commands ask for is one prepared statement; there are some dozens. */
const statements = new Map<string, { readonly name: string; readonly text: string }>();

function statementFor(
  fields: readonly IdField[],
  byPlate: boolean,
  tables: readonly TableName[],
): { name: string; text: string } {
  const key = `${fields.join()} ${String(byPlate)} ${tables.join()}`;
  const known = statements.get(key);
  if (known) return known;
  const has = (field: IdField) => fields.includes(field);
  const param: IdParams = (field) => (has(field) ? `$${String(fields.indexOf(field) + 2)}::uuid[]` : `'{}'::uuid[]`);
  const rows = tables.map((name) => {
    const table = storedTables[name];
    return `'${name}', (SELECT json_agg(${readRow(table, 't')}) FROM ${table.sql} t WHERE t."shop_id" = $1 AND NOT t."void" AND (${filterOf(name, has, param)}))`;
  });
  const plate = byPlate ? `$${String(fields.length + 2)}` : null;
  const text = `WITH ${named(has, param, plate)}\nSELECT json_build_object(${rows.join(',\n')})::text AS rows`;
  const made = { name: `load-${String(statements.size)}`, text };
  statements.set(key, made);
  return made;
}

/** Both ways to a row as one set of ids: joined by OR in the condition, they would have every row of the shop read. */
function filterOf(name: TableName, has: (field: IdField) => boolean, param: IdParams): string {
  const filter = where[name] ?? 'false';
  const [from, ids] = also[name] ?? [];
  if (!ids || !from?.some(has)) return filter;
  return `t."id" IN (SELECT t."id" FROM ${storedTables[name].sql} t WHERE t."shop_id" = $1 AND ${filter} UNION ALL ${ids(param)})`;
}

/** Null where a command needs no rows beyond the shop's own. */
export function loadCall(shopId: string, slices: Slices): LoadCall | null {
  const fields = idFields.filter((field) => (slices[field]?.length ?? 0) > 0);
  if (slices.plateKey === undefined && fields.length === 0) return null;
  const tables = slices.tables
    ? allTables.filter((name) => name === 'job' || name === 'vehicle' || slices.tables?.includes(name))
    : allTables;
  return {
    ...statementFor(fields, slices.plateKey !== undefined, tables),
    values: [
      shopId,
      ...fields.map((field) => slices[field]),
      ...(slices.plateKey === undefined ? [] : [slices.plateKey]),
    ],
  };
}
