/**
 * The board has an edge: vehicles with an open visit, or one that ended within `keptAfterEndMs`, what belongs to them,
 * and the shop itself. `visible` says it over rows; the snapshot's SQL says the same (a test holds the two together).
 */
import { type AnyRow, type Row, type Rows, type Shown, type TableName, tableNames, tables } from '@holdfast/domain';

export type Audience = 'staff' | 'wall';

/** How long a visit stays on the board after it ended: today's strips still draw it, also across a night. */
export const keptAfterEndMs = 36 * 3_600_000;

const shopTables = [
  'shop',
  'shopSetting',
  'openingHours',
  'season',
  'person',
  'personSkill',
  'personHours',
  'bay',
  'baySpec',
  'supplier',
] as const satisfies readonly TableName[];

export function shownTo(shown: Shown, audience: Audience): boolean {
  return shown === 'all' || (shown === 'staff' && audience === 'staff');
}

/** Tables that the audience's board draws, in a fixed order. */
export function boardTables(audience: Audience): TableName[] {
  return tableNames.filter((name) => shownTo(tables[name].board, audience));
}

export function jobIsOnBoard(job: Row<'job'>, now: number): boolean {
  return job.endedAt === null || job.endedAt > now - keptAfterEndMs;
}

type Board = ReadonlyMap<TableName, ReadonlyMap<string, AnyRow>>;

/** The rows of a bag that a board shows at `now` (epoch ms of the shop), whole; projection by audience comes after. */
export function visible(rows: Rows, now: number): Board {
  const jobs = byId(rows.list('job', (job) => jobIsOnBoard(job, now)));
  const vehicles = new Set([...jobs.values()].map((job) => job.vehicleId));
  const customers = new Set<string>();
  for (const job of jobs.values()) if (job.customerId) customers.add(job.customerId);
  const board = new Map<TableName, ReadonlyMap<string, AnyRow>>();
  for (const name of shopTables) board.set(name, byId<AnyRow>(rows.list(name)));
  board.set('job', jobs);
  board.set('vehicle', byId(rows.list('vehicle', (v) => vehicles.has(v.id))));
  board.set('customer', byId(rows.list('customer', (c) => customers.has(c.id))));
  board.set('contact', byId(rows.list('contact', (c) => customers.has(c.customerId))));
  for (const name of ['concern', 'workLine', 'goAhead', 'clock', 'place', 'spotUse', 'hold', 'holdLine', 'holdPart', 'report'] as const) {
    board.set(name, byId<AnyRow>(rows.list(name, (row: { jobId: string }) => jobs.has(row.jobId))));
  }
  board.set('flag', byId(rows.list('flag', (f) => f.clearedAt === null && f.jobId !== null && jobs.has(f.jobId))));
  board.set('caution', byId(rows.list('caution', (c) => c.endedAt === null && vehicles.has(c.vehicleId))));
  board.set('temporaryFix', byId(rows.list('temporaryFix', (f) => vehicles.has(f.vehicleId) && (f.state !== 'ended' || jobs.has(f.jobId)))));
  const fixes = board.get('temporaryFix');
  board.set('secondCheck', byId(rows.list('secondCheck', (c) => fixes?.has(c.temporaryFixId) ?? false)));
  board.set('followUp', byId(rows.list('followUp', (f) => f.state === 'open' && vehicles.has(f.vehicleId))));
  board.set('partLine', byId(rows.list('partLine', (p) => partIsOnBoard(p, jobs, vehicles))));
  return board;
}

function partIsOnBoard(part: Row<'partLine'>, jobs: ReadonlyMap<string, unknown>, vehicles: ReadonlySet<string>): boolean {
  if (part.jobId !== null && jobs.has(part.jobId)) return true;
  return vehicles.has(part.vehicleId) && part.state !== 'fitted' && part.state !== 'cancelled';
}

function byId<R extends { readonly id: string }>(rows: readonly R[]): ReadonlyMap<string, R> {
  return new Map(rows.map((row) => [row.id, row]));
}
