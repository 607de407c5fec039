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

type Ids = readonly string[] | undefined;
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

/** $1 shop, $2 plate key; then the id arrays in the order of `idFields`. */
const idParam = Object.fromEntries(idFields.map((field, at) => [field, `$${at + 3}::uuid[]`])) as Record<
  (typeof idFields)[number],
  string
>;

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

const named = `shop_now AS (
  SELECT ${shopNow} AS now FROM "head" h WHERE h."shop_id" = $1
), named_job AS (
  SELECT unnest(${idParam.jobs}) AS id
  ${toJob.map(([field, table]) => `UNION SELECT "job_id" FROM "${table}" WHERE "shop_id" = $1 AND "id" = ANY(${idParam[field]})`).join('\n  ')}
), on_vehicle AS (
  SELECT unnest(${idParam.vehicles}) AS id
  UNION SELECT "vehicle_id" FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM named_job)
  ${toVehicle.map(([field, table, column]) => `UNION SELECT "vehicle_id" FROM "${table}" WHERE "shop_id" = $1 AND "${column}" = ANY(${idParam[field]})`).join('\n  ')}
), whole_job AS (
  SELECT id FROM named_job
  UNION SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" IN (SELECT id FROM on_vehicle) AND NOT j."void" AND ${recentlyEnded}
), reported AS (
  SELECT "bay_id", "person_id" FROM "report" WHERE "shop_id" = $1 AND "id" = ANY(${idParam.reports})
), in_bay AS (
  SELECT s.* FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void"
    AND (s."bay_id" = ANY(${idParam.bays}) OR s."bay_id" IN (SELECT "bay_id" FROM reported))
    AND (s."to_at" IS NULL OR s."from_at" > (SELECT now FROM shop_now) - interval '${recentDays} days')
), on_clock AS (
  SELECT c."id", c."line_id" FROM "clock" c WHERE c."shop_id" = $1 AND NOT c."void"
    AND (c."person_id" = ANY(${idParam.people}) OR c."person_id" IN (SELECT "person_id" FROM reported))
    AND (c."to_at" IS NULL OR c."from_at" > (SELECT now FROM shop_now) - interval '${recentDays} days')
), known_vehicle AS (
  SELECT id FROM on_vehicle
  UNION SELECT "vehicle_id" FROM in_bay
  UNION SELECT "id" FROM "vehicle" WHERE "shop_id" = $1 AND $2::text IS NOT NULL AND "plate_key" = $2
), known_customer AS (
  SELECT unnest(${idParam.customers}) AS id
  UNION SELECT "customer_id" FROM "vehicle" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM on_vehicle)
  UNION SELECT "customer_id" FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM whole_job)
)`;

const byJob = `t."job_id" IN (SELECT id FROM whole_job)`;
const byVehicle = `t."vehicle_id" IN (SELECT id FROM on_vehicle)`;
const parts = `IN (SELECT p."id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`;

/** Which rows of each table a bag gets; tables that are not here come from the shop cache or in reads of their own. */
const where: Readonly<Partial<Record<TableName, string>>> = {
  job: `(t."id" IN (SELECT id FROM whole_job) OR t."id" IN (SELECT "job_id" FROM in_bay))`,
  vehicle: `t."id" IN (SELECT id FROM known_vehicle)`,
  customer: `t."id" IN (SELECT id FROM known_customer)`,
  contact: `t."customer_id" IN (SELECT id FROM known_customer)`,
  odometerReading: byVehicle,
  caution: `${byVehicle} AND t."ended_at" IS NULL`,
  concern: byJob,
  finding: byJob,
  photo: byJob,
  sheet: byJob,
  workLine: `(${byJob} OR t."id" IN (SELECT "line_id" FROM on_clock))`,
  goAhead: byJob,
  clock: `(${byJob} OR t."id" IN (SELECT "id" FROM on_clock))`,
  place: `(${byJob} OR t."job_id" IN (SELECT "job_id" FROM in_bay))`,
  spotUse: `(${byJob} OR t."id" IN (SELECT "id" FROM in_bay))`,
  report: byJob,
  flag: byJob,
  hold: byJob,
  holdLine: byJob,
  holdPart: byJob,
  partLine: byVehicle,
  dueIn: `t."part_line_id" ${parts}`,
  arrival: `t."part_line_id" ${parts}`,
  partsOrder: `t."id" IN (SELECT p."order_id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`,
  temporaryFix: `${byVehicle} AND (t."state" <> 'ended' OR ${byJob})`,
  secondCheck: byVehicle,
  followUp: `${byVehicle} AND (t."state" = 'open' OR t."id" = ANY(${idParam.followUps}))`,
};
const loadedTables = Object.keys(where) as TableName[];

const loadStatement = `WITH ${named}
SELECT json_build_object(${loadedTables
  .map((name) => {
    const table = storedTables[name];
    return `'${name}', (SELECT json_agg(${readRow(table, 't')}) FROM ${table.sql} t WHERE t."shop_id" = $1 AND NOT t."void" AND ${where[name] ?? 'false'})`;
  })
  .join(',\n')})::text AS rows`;

export interface LoadCall {
  readonly name: string;
  readonly text: string;
  readonly values: readonly unknown[];
}

/** Null where a command needs no rows beyond the shop's own. */
export function loadCall(shopId: string, slices: Slices): LoadCall | null {
  const ids: Ids[] = idFields.map((field) => slices[field]);
  if (slices.plateKey === undefined && ids.every((list) => !list || list.length === 0)) return null;
  return {
    name: 'load-slices',
    text: loadStatement,
    values: [shopId, slices.plateKey ?? null, ...ids.map((list) => list ?? [])],
  };
}
