/**
 * The load slices as one statement: which jobs, vehicles, bays and people the ids of a command lead to, and their rows.
 * Everything is filtered by the shop here and walled by row-level security beneath; each is tested with the other off.
 *
 * The shop's own tables (people, bays, hours …) are not read here: they change seldom and are kept by ./shop-cache.
 */
import type { Slices, TableName } from '@holdfast/domain';
import { readRow, storedTables } from './columns.js';
import { type Has, type IdField, idFields, type IdParams, recentlyEnded, walk, type Wide } from './slice-walk.js';

const byJob = `t."job_id" IN (SELECT id FROM whole_job)`;
const byVehicle = `t."vehicle_id" IN (SELECT id FROM on_vehicle)`;
const ofParts = `IN (SELECT p."id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`;

/** Which rows of each table a bag gets; tables that are not here come from the shop cache or in reads of their own. */
const where: Readonly<Partial<Record<TableName, string>>> = {
  job: `t."id" IN (SELECT id FROM whole_job)`,
  vehicle: `t."id" IN (SELECT id FROM known_vehicle)`,
  customer: `t."id" IN (SELECT id FROM known_customer)`,
  contact: `t."customer_id" IN (SELECT id FROM known_customer)`,
  standingGoAhead: `t."customer_id" IN (SELECT id FROM known_customer) AND t."ended_at" IS NULL`,
  odometerReading: byVehicle,
  caution: `${byVehicle} AND t."ended_at" IS NULL`,
  concern: byJob,
  attempt: byJob,
  cause: byJob,
  causeConcern: byJob,
  finding: byJob,
  photo: byJob,
  sheet: byJob,
  workLine: byJob,
  goAhead: byJob,
  wheelRecord: byJob,
  clock: byJob,
  place: byJob,
  liftingPoints: byJob,
  spotUse: byJob,
  sublet: byJob,
  report: byJob,
  flag: byJob,
  hold: byJob,
  question: byJob,
  // What was said about a follow-up stays known, so that it is not said again.
  call: `${byVehicle} AND (t."ended_at" IS NULL OR t."follow_up_id" IS NOT NULL OR ${byJob})`,
  holdLine: byJob,
  holdPart: byJob,
  partLine: byVehicle,
  dueIn: `t."part_line_id" ${ofParts}`,
  arrival: `t."part_line_id" ${ofParts}`,
  partsOrder: `t."id" IN (SELECT p."order_id" FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" IN (SELECT id FROM on_vehicle))`,
  temporaryFix: `${byVehicle} AND (t."state" <> 'ended' OR ${byJob})`,
  secondCheck: byVehicle,
  // Whether a visit's wheels are to be tightened again stays told when that was done or dropped since.
  attendance: 'false',
  contactEntry: 'false',
  followUp: `${byVehicle} AND (t."state" = 'open' OR (t."kind" = 'retorque' AND t."from_job_id" IN (SELECT id FROM whole_job)))`,
};
const allTables = Object.keys(where) as TableName[];

/** Rows that some calls reach besides, as a query of their ids. */
interface Also {
  readonly when: (has: Has, wide: Wide) => boolean;
  readonly ids: (param: IdParams) => string;
}
const byIds =
  (...fields: readonly IdField[]) =>
  (has: Has) =>
    fields.some(has);
const inTheBay = (has: Has, { baysOfJobs }: Wide) => has('bays') || has('reports') || baysOfJobs;
const nearFire = (_has: Has, { hotWork }: Wide) => hotWork;
const onClocks = (has: Has, { around }: Wide) => has('people') || has('reports') || (around !== null && has('clocks'));
const namesCustomers = byIds('customers', 'contacts', 'standingGoAheads');
/** One that a command names is loaded when it has ended too, or belongs to no visit. */
const itself = (field: IdField): Also => ({ when: byIds(field), ids: (param) => `SELECT unnest(${param(field)})` });

const also: Readonly<Partial<Record<TableName, readonly Also[]>>> = {
  job: [
    { when: inTheBay, ids: () => `SELECT "job_id" FROM in_bay` },
    { when: nearFire, ids: () => `SELECT "job_id" FROM fire_risk` },
    { when: (_has, { clockedJobs }) => clockedJobs, ids: () => `SELECT "job_id" FROM on_clock` },
    // A customer is on the board while one of their visits or calls is; nothing that belongs to these comes along.
    {
      when: namesCustomers,
      ids: () =>
        `SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."customer_id" IN (SELECT id FROM named_customer) AND ${recentlyEnded('j')}`,
    },
  ],
  attendance: [{ when: byIds('people', 'reports', 'attendances'), ids: () => `SELECT "id" FROM on_hand` }],
  contactEntry: [itself('contactEntries')],
  odometerReading: [itself('readings')],
  call: [
    itself('calls'),
    {
      when: namesCustomers,
      ids: () =>
        `SELECT c."id" FROM "call" c WHERE c."shop_id" = $1 AND c."customer_id" IN (SELECT id FROM named_customer) AND c."ended_at" IS NULL`,
    },
  ],
  workLine: [{ when: onClocks, ids: () => `SELECT "line_id" FROM on_clock` }],
  clock: [{ when: onClocks, ids: () => `SELECT "id" FROM on_clock` }],
  place: [
    {
      when: inTheBay,
      ids: () => `SELECT p."id" FROM "place" p WHERE p."shop_id" = $1 AND p."job_id" IN (SELECT "job_id" FROM in_bay)`,
    },
  ],
  spotUse: [
    { when: inTheBay, ids: () => `SELECT "id" FROM in_bay` },
    {
      when: nearFire,
      ids: () =>
        `SELECT s."id" FROM "spot_use" s WHERE s."shop_id" = $1 AND s."to_at" IS NULL AND s."job_id" IN (SELECT "job_id" FROM fire_risk)`,
    },
  ],
  caution: [{ when: nearFire, ids: () => `SELECT "id" FROM fire_risk` }, itself('cautions')],
  followUp: [itself('followUps')],
  standingGoAhead: [itself('standingGoAheads')],
  flag: [itself('flags')],
};

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
  { hotWork = false, baysOfJobs = false, clockedJobs = false, times }: Slices,
): { name: string; text: string } {
  const more = [byPlate, hotWork, baysOfJobs, clockedJobs, times !== undefined];
  const key = `${fields.join()} ${tables.join()} ${more.join()}`;
  const known = statements.get(key);
  if (known) return known;
  const has: Has = (field) => fields.includes(field);
  const param: IdParams = (field) => (has(field) ? `$${String(fields.indexOf(field) + 2)}::uuid[]` : `'{}'::uuid[]`);
  const plate = byPlate ? `$${String(fields.length + 2)}` : null;
  const around = times ? `$${String(fields.length + (byPlate ? 3 : 2))}::double precision[]` : null;
  const wide: Wide = { hotWork, baysOfJobs, clockedJobs, around };
  const rows = tables.map((name) => {
    const table = storedTables[name];
    return `'${name}', (SELECT json_agg(${readRow(table, 't')}) FROM ${table.sql} t WHERE t."shop_id" = $1 AND NOT t."void" AND (${filterOf(name, has, param, wide)}))`;
  });
  const text = `WITH ${walk(has, param, plate, wide)}\nSELECT json_build_object(${rows.join(',\n')})::text AS rows`;
  const made = { name: `load-${String(statements.size)}`, text };
  statements.set(key, made);
  return made;
}

/** All ways to a row as one set of ids: joined by OR in the condition, they would have every row of the shop read. */
function filterOf(name: TableName, has: Has, param: IdParams, wide: Wide): string {
  const filter = where[name] ?? 'false';
  const more = (also[name] ?? []).filter(({ when }) => when(has, wide)).map(({ ids }) => ids(param));
  if (more.length === 0) return filter;
  const first = `SELECT t."id" FROM ${storedTables[name].sql} t WHERE t."shop_id" = $1 AND (${filter})`;
  return `t."id" IN (${[first, ...more].join(' UNION ALL ')})`;
}

/** For commands that look at nothing but the visit's own row: no walk, one row by its key. */
const jobAlone = {
  name: 'load-job-alone',
  text: `SELECT json_build_object('job', (SELECT json_agg(${readRow(storedTables.job, 't')}) FROM "job" t WHERE t."shop_id" = $1 AND t."id" = ANY($2::uuid[]) AND NOT t."void"))::text AS rows`,
};

/** Null where a command needs no rows beyond the shop's own. */
export function loadCall(shopId: string, slices: Slices): LoadCall | null {
  const fields = idFields.filter((field) => (slices[field]?.length ?? 0) > 0);
  if (slices.plateKey === undefined && fields.length === 0) return null;
  if (slices.tables?.length === 0 && fields.join() === 'jobs' && slices.plateKey === undefined) {
    return { ...jobAlone, values: [shopId, slices.jobs] };
  }
  const tables = slices.tables
    ? allTables.filter((name) => name === 'job' || name === 'vehicle' || slices.tables?.includes(name))
    : allTables;
  return {
    ...statementFor(fields, slices.plateKey !== undefined, tables, slices),
    values: [
      shopId,
      ...fields.map((field) => slices[field]),
      ...(slices.plateKey === undefined ? [] : [slices.plateKey]),
      ...(slices.times === undefined ? [] : [slices.times]),
    ],
  };
}
