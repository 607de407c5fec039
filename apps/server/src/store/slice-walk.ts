/**
 * From the ids that a command names to the visits, vehicles, bays, people and customers that they lead to: the steps in
 * front of every load (see ./slices). A step that a call does not take costs nothing: the planner sees that it is empty.
 */
import type { Slices } from '@holdfast/domain';
import { shopNow } from './head.js';

/** How far back closed stays and clocks are read for the rules that look at what came before. */
const recentDays = 14;
/** As `keptAfterEndMs` of the board: visits that ended lately may still be on it. */
export const recentlyEnded = (job: string) =>
  `(${job}."ended_at" IS NULL OR ${job}."ended_at" > (SELECT now FROM shop_now) - interval '36 hours')`;

export const idFields = [
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
  'causes',
  'questions',
  'sublets',
  'flags',
  'contacts',
  'standingGoAheads',
  'calls',
  'bays',
  'people',
  'customers',
] as const satisfies readonly (keyof Slices)[];
export type IdField = (typeof idFields)[number];

/** Rows of a child table lead to their job, rows that belong to the vehicle to the vehicle, and so on. */
const toJob = [
  ['lines', 'work_line'],
  ['concerns', 'concern'],
  ['clocks', 'clock'],
  ['holds', 'hold'],
  ['reports', 'report'],
  ['causes', 'cause'],
  ['questions', 'question'],
  ['sublets', 'sublet'],
  ['flags', 'flag'],
] as const;
const toVehicle = [
  ['partLines', 'part_line', 'id'],
  ['orders', 'part_line', 'order_id'],
  ['cautions', 'caution', 'id'],
  ['fixes', 'temporary_fix', 'id'],
  ['followUps', 'follow_up', 'id'],
  ['calls', 'call', 'id'],
] as const;
const toCustomer = [
  ['contacts', 'contact'],
  ['standingGoAheads', 'standing_go_ahead'],
] as const;

/** The parameter of each kind of id that a call has; a kind it does not have is an empty array. */
export type IdParams = (field: IdField) => string;
export type Has = (field: IdField) => boolean;
/** What a call asks for besides ids. */
export type Wide = Pick<Slices, 'hotWork' | 'baysOfJobs'>;

function unionOf(parts: readonly string[]): string {
  return parts.length > 0 ? parts.join('\n  UNION ALL ') : 'SELECT NULL::uuid AS id WHERE false';
}

const none = (...columns: readonly string[]) =>
  `SELECT ${columns.map((column) => `NULL::uuid AS "${column}"`).join(', ')} WHERE false`;

const lately = (alias: string) =>
  `(${alias}."to_at" IS NULL OR ${alias}."from_at" > (SELECT now FROM shop_now) - interval '${String(recentDays)} days')`;

function inBay(has: Has, param: IdParams, { baysOfJobs }: Wide): string {
  const ofJobs = `s."bay_id" IN (SELECT u."bay_id" FROM "spot_use" u WHERE u."shop_id" = $1 AND u."job_id" IN (SELECT id FROM named_job))`;
  const ways = [
    ...(has('bays') ? [`s."bay_id" = ANY(${param('bays')})`] : []),
    ...(has('reports') ? ['s."bay_id" IN (SELECT "bay_id" FROM reported)'] : []),
    ...(baysOfJobs === true ? [ofJobs] : []),
  ];
  if (ways.length === 0) return none('id', 'job_id', 'vehicle_id');
  return `SELECT s."id", s."job_id", s."vehicle_id" FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void"
    AND (${ways.join(' OR ')}) AND ${lately('s')}`;
}

function onClock(has: Has, param: IdParams): string {
  if (!has('people') && !has('reports')) return none('id', 'line_id');
  return `SELECT c."id", c."line_id" FROM "clock" c WHERE c."shop_id" = $1 AND NOT c."void"
    AND (c."person_id" = ANY(${param('people')})${has('reports') ? ' OR c."person_id" IN (SELECT "person_id" FROM reported)' : ''})
    AND ${lately('c')}`;
}

/** Open cautions that hot work and open fuel are to each other, anywhere in the shop. */
const fireRisk = `SELECT c."id", c."job_id", c."vehicle_id" FROM "caution" c
  WHERE c."shop_id" = $1 AND NOT c."void" AND c."ended_at" IS NULL AND c."code" IN ('fuelOpen', 'hotWork')`;

const child = (table: string, column: string, by: string, param: string) =>
  `SELECT "${column}" AS id FROM "${table}" WHERE "shop_id" = $1 AND "${by}" = ANY(${param})`;

/** The steps as common table expressions; $1 is the shop. */
export function walk(has: Has, param: IdParams, plate: string | null, wide: Wide): string {
  const jobs = [
    ...(has('jobs') ? [`SELECT unnest(${param('jobs')}) AS id`] : []),
    ...toJob.filter(([field]) => has(field)).map(([field, table]) => child(table, 'job_id', 'id', param(field))),
  ];
  const vehicles = [
    ...(has('vehicles') ? [`SELECT unnest(${param('vehicles')}) AS id`] : []),
    `SELECT "vehicle_id" AS id FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM named_job)`,
    ...toVehicle
      .filter(([field]) => has(field))
      .map(([field, table, column]) => child(table, 'vehicle_id', column, param(field))),
  ];
  const customers = [
    ...(has('customers') ? [`SELECT unnest(${param('customers')}) AS id`] : []),
    ...toCustomer
      .filter(([field]) => has(field))
      .map(([field, table]) => child(table, 'customer_id', 'id', param(field))),
  ];
  return `shop_now AS (
  SELECT ${shopNow} AS now FROM "head" h WHERE h."shop_id" = $1
), named_job AS (
  ${unionOf(jobs)}
), on_vehicle AS (
  ${unionOf(vehicles)}
), whole_job AS (
  SELECT id FROM named_job
  UNION ALL SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" IN (SELECT id FROM on_vehicle) AND NOT j."void" AND ${recentlyEnded('j')}
), reported AS (
  ${has('reports') ? `SELECT "bay_id", "person_id" FROM "report" WHERE "shop_id" = $1 AND "id" = ANY(${param('reports')})` : none('bay_id', 'person_id')}
), in_bay AS (
  ${inBay(has, param, wide)}
), on_clock AS (
  ${onClock(has, param)}
), fire_risk AS (
  ${wide.hotWork === true ? fireRisk : none('id', 'job_id', 'vehicle_id')}
), known_vehicle AS (
  SELECT id FROM on_vehicle
  UNION ALL SELECT "vehicle_id" FROM in_bay
  UNION ALL SELECT "vehicle_id" FROM fire_risk
  ${plate === null ? '' : `UNION ALL SELECT "id" FROM "vehicle" WHERE "shop_id" = $1 AND "plate_key" = ${plate}`}
), named_customer AS (
  ${unionOf(customers)}
), known_customer AS (
  SELECT id FROM named_customer
  UNION ALL SELECT "customer_id" FROM "vehicle" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM on_vehicle)
  UNION ALL SELECT "customer_id" FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM whole_job)
)`;
}
