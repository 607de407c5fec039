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
  'places',
  'attendances',
  'findings',
  'attempts',
  'photos',
  'readings',
  'contactEntries',
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
  ['places', 'place'],
  ['findings', 'finding'],
  ['attempts', 'attempt'],
  ['photos', 'photo'],
] as const;
const toVehicle = [
  ['partLines', 'part_line', 'id'],
  ['orders', 'part_line', 'order_id'],
  ['cautions', 'caution', 'id'],
  ['fixes', 'temporary_fix', 'id'],
  ['followUps', 'follow_up', 'id'],
  ['calls', 'call', 'id'],
  ['readings', 'odometer_reading', 'id'],
  ['contactEntries', 'contact_entry', 'id'],
] as const;
const toCustomer = [
  ['contacts', 'contact'],
  ['standingGoAheads', 'standing_go_ahead'],
] as const;

/** The parameter of each kind of id that a call has; a kind it does not have is an empty array. */
export type IdParams = (field: IdField) => string;
export type Has = (field: IdField) => boolean;
/** What a call asks for besides ids. */
export interface Wide {
  readonly hotWork: boolean;
  readonly baysOfJobs: boolean;
  readonly clockedJobs: boolean;
  /** The parameter of the instants around which lanes are read too; null where only what is recent counts. */
  readonly around: string | null;
}

function unionOf(parts: readonly string[]): string {
  return parts.length > 0 ? parts.join('\n  UNION ALL ') : 'SELECT NULL::uuid AS id WHERE false';
}

const none = (...columns: readonly string[]) =>
  `SELECT ${columns.map((column) => `NULL::uuid AS "${column}"`).join(', ')} WHERE false`;

const lately = (alias: string) =>
  `(${alias}."to_at" IS NULL OR ${alias}."from_at" > (SELECT now FROM shop_now) - interval '${String(recentDays)} days')`;

/** What is recent; and, for what is put right long after, what touches the stretch of `around`. */
const near = (alias: string, { around }: Wide) =>
  around === null
    ? lately(alias)
    : `(${lately(alias)} OR (${alias}."from_at" <= (SELECT to_at FROM around)
      AND (${alias}."to_at" IS NULL OR ${alias}."to_at" >= (SELECT from_at FROM around))))`;

/** From the first to the last of the instants and of the rows and visits that are named. */
function aroundThem(has: Has, param: IdParams, { around }: Wide): string {
  if (around === null) return 'SELECT NULL::timestamptz AS from_at, NULL::timestamptz AS to_at WHERE false';
  const now = '(SELECT now FROM shop_now)';
  const named = (['clocks', 'attendances'] as const).filter(has).map(
    (field) =>
      `SELECT "from_at", coalesce("to_at", ${now}) FROM "${field === 'clocks' ? 'clock' : 'attendance'}"
    WHERE "shop_id" = $1 AND "id" = ANY(${param(field)})`,
  );
  return `SELECT min(a) AS from_at, max(b) AS to_at FROM (${[
    `SELECT to_timestamp(x / 1000) AS a, to_timestamp(x / 1000) AS b FROM unnest(${around}) x`,
    ...named,
    `SELECT coalesce("arrived_at", ${now}), coalesce("ended_at", ${now}) FROM "job" WHERE "shop_id" = $1 AND "id" IN (SELECT id FROM named_job)`,
  ].join('\n  UNION ALL ')}) one`;
}

function inBay(has: Has, param: IdParams, wide: Wide): string {
  const { baysOfJobs } = wide;
  const ofJobs = `s."bay_id" IN (SELECT u."bay_id" FROM "spot_use" u WHERE u."shop_id" = $1 AND u."job_id" IN (SELECT id FROM named_job))`;
  const ways = [
    ...(has('bays') ? [`s."bay_id" = ANY(${param('bays')})`] : []),
    ...(has('reports') ? ['s."bay_id" IN (SELECT "bay_id" FROM reported)'] : []),
    ...(baysOfJobs ? [ofJobs] : []),
  ];
  if (ways.length === 0) return none('id', 'job_id', 'vehicle_id');
  return `SELECT s."id", s."job_id", s."vehicle_id" FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void"
    AND (${ways.join(' OR ')}) AND ${near('s', wide)}`;
}

/** Whose clocks and presence are read: the people that are named, and those of the rows that are. */
function ofPeople(has: Has, param: IdParams, { around }: Wide): string | null {
  const named = (field: IdField, table: string) =>
    `SELECT "person_id" FROM "${table}" WHERE "shop_id" = $1 AND "id" = ANY(${param(field)})`;
  const others = [
    ...(has('reports') ? ['SELECT "person_id" FROM reported'] : []),
    ...(around !== null && has('clocks') ? [named('clocks', 'clock')] : []),
    ...(has('attendances') ? [named('attendances', 'attendance')] : []),
  ];
  if (others.length === 0) return has('people') ? `c."person_id" = ANY(${param('people')})` : null;
  // One array, so that the index of a person's clocks is used for all of them.
  const all = [...(has('people') ? [`SELECT unnest(${param('people')})`] : []), ...others];
  return `c."person_id" = ANY(ARRAY(${all.join(' UNION ALL ')}))`;
}

function onClock(has: Has, param: IdParams, wide: Wide): string {
  const people = ofPeople(has, param, wide);
  if (people === null) return none('id', 'line_id', 'job_id');
  return `SELECT c."id", c."line_id", c."job_id" FROM "clock" c WHERE c."shop_id" = $1 AND NOT c."void"
    AND ${people} AND ${near('c', wide)}`;
}

function onHand(has: Has, param: IdParams, wide: Wide): string {
  const people = ofPeople(has, param, wide);
  if (people === null) return none('id');
  return `SELECT c."id" FROM "attendance" c WHERE c."shop_id" = $1 AND NOT c."void" AND ${people} AND ${near('c', wide)}`;
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
), around AS (
  ${aroundThem(has, param, wide)}
), in_bay AS (
  ${inBay(has, param, wide)}
), on_clock AS (
  ${onClock(has, param, wide)}
), on_hand AS (
  ${onHand(has, param, wide)}
), fire_risk AS (
  ${wide.hotWork ? fireRisk : none('id', 'job_id', 'vehicle_id')}
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
