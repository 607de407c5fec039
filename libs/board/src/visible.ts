/**
 * The board has an edge: vehicles with an open visit (expected ones too, however far ahead: a row cannot come in because
 * time passed), or one that ended within `keptAfterEndMs`, vehicles about which somebody has to be called, what belongs
 * to them, and the shop itself. `visible` says it over rows; the snapshot's SQL says the same (a test holds the two together).
 */
import { type AnyRow, type Row, type Rows, type Shown, type TableName, tableNames, tables } from '@holdfast/domain';

export type Audience = 'staff' | 'wall';

/** How long a visit stays on the board after it ended: today's strips still draw it, also across a night. */
export const keptAfterEndMs = 36 * 3_600_000;

export function shownTo(shown: Shown, audience: Audience): boolean {
  return shown === 'all' || (shown === 'staff' && audience === 'staff');
}

/** Tables that the audience's board draws, in a fixed order. */
export function boardTables(audience: Audience): readonly TableName[] {
  return tablesByAudience[audience];
}

const tablesByAudience = {
  staff: tableNames.filter((name) => shownTo(tables[name].board, 'staff')),
  wall: tableNames.filter((name) => shownTo(tables[name].board, 'wall')),
} as const;

export function jobIsOnBoard(job: Row<'job'>, now: number): boolean {
  return job.endedAt === null || job.endedAt > now - keptAfterEndMs;
}

/** Which visits are on the board, and the vehicles and customers that they bring with them. */
export interface Edge {
  readonly jobs: ReadonlySet<string>;
  readonly vehicles: ReadonlySet<string>;
  readonly customers: ReadonlySet<string>;
  /** Presence that ended before is no longer shown, epoch ms. */
  readonly since: number;
}

export function presenceIsOnBoard(stretch: Pick<Row<'attendance'>, 'toAt'>, now: number): boolean {
  return stretch.toAt === null || stretch.toAt > now - keptAfterEndMs;
}

export function edgeOf(rows: Rows, now: number): Edge {
  const edge = {
    jobs: new Set<string>(),
    vehicles: new Set<string>(),
    customers: new Set<string>(),
    since: now - keptAfterEndMs,
  };
  for (const job of rows.list('job')) {
    if (!jobIsOnBoard(job, now)) continue;
    edge.jobs.add(job.id);
    edge.vehicles.add(job.vehicleId);
    if (job.customerId) edge.customers.add(job.customerId);
  }
  for (const call of rows.list('call')) {
    if (call.void || call.endedAt !== null) continue;
    edge.vehicles.add(call.vehicleId);
    if (call.customerId) edge.customers.add(call.customerId);
  }
  return edge;
}

/** Whether a row is inside the edge. A void row never is. */
export function shows<T extends TableName>(rows: Rows, edge: Edge, table: T, row: Row<T>): boolean {
  return !row.void && rules[table](row as never, edge, rows);
}

type Shows<T extends TableName> = (row: Row<T>, edge: Edge, rows: Rows) => boolean;

const always = () => true;
const never = () => false;
const withJob = (row: { readonly jobId: string | null }, edge: Edge) => row.jobId !== null && edge.jobs.has(row.jobId);
const withVehicle = (row: { readonly vehicleId: string }, edge: Edge) => edge.vehicles.has(row.vehicleId);

const rules: { readonly [T in TableName]: Shows<T> } = {
  shop: always,
  shopSetting: always,
  openingHours: always,
  season: always,
  person: always,
  personSkill: always,
  personHours: always,
  bay: always,
  baySpec: always,
  supplier: always,
  shopZone: always,
  hoursException: always,
  outage: always,
  liftInspection: always,
  liftDecision: always,
  counter: never,
  customer: (row, edge) => edge.customers.has(row.id),
  contact: (row, edge) => edge.customers.has(row.customerId),
  standingGoAhead: (row, edge) => row.endedAt === null && edge.customers.has(row.customerId),
  vehicle: (row, edge) => edge.vehicles.has(row.id),
  job: (row, edge) => edge.jobs.has(row.id),
  odometerReading: never,
  caution: (row, edge) => row.endedAt === null && withVehicle(row, edge),
  concern: withJob,
  attempt: never,
  cause: never,
  causeConcern: never,
  finding: never,
  photo: never,
  sheet: never,
  call: (row) => row.endedAt === null,
  contactEntry: never,
  vehicleCorrection: never,
  ownerChange: never,
  erasure: never,
  workLine: withJob,
  goAhead: withJob,
  clock: withJob,
  wheelRecord: withJob,
  place: withJob,
  liftingPoints: withJob,
  spotUse: withJob,
  sublet: withJob,
  report: withJob,
  flag: (row, edge) => row.clearedAt === null && withJob(row, edge),
  hold: withJob,
  question: withJob,
  holdLine: withJob,
  holdPart: withJob,
  partLine: (row, edge) =>
    withJob(row, edge) || (withVehicle(row, edge) && row.state !== 'fitted' && row.state !== 'cancelled'),
  partsOrder: never,
  dueIn: never,
  delivery: never,
  arrival: never,
  temporaryFix: (row, edge) => withVehicle(row, edge) && (row.state !== 'ended' || withJob(row, edge)),
  secondCheck: (row, edge, rows) => {
    const fix = rows.find('temporaryFix', row.temporaryFixId);
    return fix !== undefined && shows(rows, edge, 'temporaryFix', fix);
  },
  followUp: (row, edge) => row.state === 'open' && withVehicle(row, edge),
  importBatch: never,
  attendance: (row, edge) => row.toAt === null || row.toAt > edge.since,
  correction: never,
  closedMonth: always,
};

export type VisibleRows = ReadonlyMap<TableName, ReadonlyMap<string, AnyRow>>;

/** The rows of a bag that a board shows at `now` (epoch ms of the shop), whole; projection by audience comes after. */
export function visible(rows: Rows, now: number): VisibleRows {
  const edge = edgeOf(rows, now);
  return new Map(
    tableNames
      .filter((table) => tables[table].board !== 'none')
      .map((table) => {
        const shown = (rows.list(table) as Row<TableName>[]).filter((row) => shows(rows, edge, table, row));
        return [table, new Map<string, AnyRow>(shown.map((row) => [row.id, row]))];
      }),
  );
}
