/**
 * The live picture of a shop as a client holds it: rows by table and id, with the number of the last change in it.
 * `fromSnapshot` starts it, `apply` takes it from one number to the next, `prune` drops what time has carried over the
 * edge. All pure; the rows that a change does not touch stay the same objects.
 */
import type { TableName } from '@holdfast/domain';
import type { BoardDifference } from './difference.js';
import { type Audience, boardTables, jobIsOnBoard, presenceIsOnBoard } from './visible.js';
import { type BoardRow, decodeRow, type WireRow } from './wire.js';

export type BoardTables = { readonly [T in TableName]: ReadonlyMap<string, BoardRow<T>> };

export interface Board {
  readonly audience: Audience;
  readonly epoch: string;
  readonly seq: number;
  readonly tables: BoardTables;
}

export interface Snapshot {
  readonly epoch: string;
  readonly seq: number;
  readonly rows: { readonly [T in TableName]?: readonly WireRow[] };
}

export type BoardChange = BoardDifference & { readonly seq: number };

const empty: ReadonlyMap<string, never> = new Map<string, never>();

export function fromSnapshot(snapshot: Snapshot, audience: Audience): Board {
  const filled: Record<string, ReadonlyMap<string, unknown>> = {};
  for (const table of boardTables(audience)) {
    filled[table] = new Map((snapshot.rows[table] ?? []).map((row) => [row.id, decodeRow(table, row, audience)]));
  }
  return { audience, epoch: snapshot.epoch, seq: snapshot.seq, tables: withAbsent(filled) };
}

/** Tables that an audience does not have read as empty, so that selectors need not ask. */
function withAbsent(filled: Record<string, ReadonlyMap<string, unknown>>): BoardTables {
  return new Proxy(filled, {
    get: (target, name) => (typeof name === 'string' ? (target[name] ?? empty) : undefined),
  }) as unknown as BoardTables;
}

/**
 * number = last + 1 applies; a lower one was applied before and changes nothing; a higher one means that some are
 * missing: the caller asks for them (`'missing'`).
 */
export function apply(board: Board, change: BoardChange): Board | 'missing' {
  if (change.seq <= board.seq) return board;
  if (change.seq !== board.seq + 1) return 'missing';
  const next: Record<string, ReadonlyMap<string, unknown>> = {};
  for (const table of boardTables(board.audience)) {
    const put = change.put[table];
    const gone = change.gone[table];
    const old: ReadonlyMap<string, unknown> = board.tables[table];
    if (!put && !gone) {
      next[table] = old;
      continue;
    }
    const rows = new Map(old);
    for (const id of gone ?? []) rows.delete(id);
    for (const row of put ?? []) rows.set(row.id, decodeRow(table, row, board.audience));
    next[table] = rows;
  }
  return { ...board, seq: change.seq, tables: withAbsent(next) };
}

/** Drops visits that ended too long ago at `now` (epoch ms of the shop), with all that neither a visit nor a call keeps. */
export function prune(board: Board, now: number): Board {
  const jobs = [...board.tables.job.values()];
  const staying = new Map(jobs.filter((job) => jobIsOnBoard(job, now)).map((job) => [job.id, job]));
  const calls = [...board.tables.call.values()];
  const vehicles = new Set([...staying.values(), ...calls].map((one) => one.vehicleId));
  const customers = new Set([...staying.values(), ...calls].map((one) => one.customerId));
  const all = (table: 'vehicle' | 'customer', kept: ReadonlySet<string | null>) =>
    [...board.tables[table].keys()].every((id) => kept.has(id));
  const present = [...board.tables.attendance.values()].every((one) => presenceIsOnBoard(one, now));
  if (staying.size === jobs.length && present && all('vehicle', vehicles) && all('customer', customers)) return board;
  const next: Record<string, ReadonlyMap<string, unknown>> = {};
  for (const table of boardTables(board.audience)) {
    const rows: ReadonlyMap<string, object> = board.tables[table];
    next[table] = new Map([...rows].filter(([, row]) => stays(table, row, { staying, vehicles, customers, now })));
  }
  const fixes = next['temporaryFix'] ?? empty;
  const checks = board.tables.secondCheck;
  next['secondCheck'] = new Map([...checks].filter(([, check]) => fixes.has(check.temporaryFixId)));
  return { ...board, tables: withAbsent(next) };
}

interface Edge {
  readonly staying: ReadonlyMap<string, unknown>;
  readonly vehicles: ReadonlySet<string>;
  readonly customers: ReadonlySet<string | null>;
  readonly now: number;
}

function stays(table: TableName, row: object, edge: Edge): boolean {
  const ids = row as { id: string; jobId?: string | null; vehicleId?: string; customerId?: string; state?: string };
  switch (table) {
    case 'job':
      return edge.staying.has(ids.id);
    case 'vehicle':
      return edge.vehicles.has(ids.id);
    case 'customer':
      return edge.customers.has(ids.id);
    case 'contact':
    case 'standingGoAhead':
      return edge.customers.has(ids.customerId ?? null);
    case 'call':
      return true;
    case 'attendance':
      return presenceIsOnBoard(row as BoardRow<'attendance'>, edge.now);
    case 'caution':
    case 'followUp':
      return ids.vehicleId !== undefined && edge.vehicles.has(ids.vehicleId);
    case 'temporaryFix':
      return staysByVehicle(ids, edge, ids.state !== 'ended');
    case 'partLine':
      return staysByVehicle(ids, edge, ids.state !== 'fitted' && ids.state !== 'cancelled');
    default:
      return staysWithJob(ids, edge);
  }
}

/** What has no job is the shop's own, or stays by another way. */
function staysWithJob({ jobId }: { jobId?: string | null }, edge: Edge): boolean {
  return jobId === undefined || (jobId !== null && edge.staying.has(jobId));
}

function staysByVehicle(ids: { jobId?: string | null; vehicleId?: string }, edge: Edge, open: boolean): boolean {
  if (ids.jobId && edge.staying.has(ids.jobId)) return true;
  return open && ids.vehicleId !== undefined && edge.vehicles.has(ids.vehicleId);
}
