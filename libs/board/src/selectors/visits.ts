/** One visit as the live screens show it: where the vehicle is, what goes on, what it waits for, what is on it. */
import { waitsOfJob } from '@holdfast/bay-time';
import { isOnPremises, lineSettled, placeOf, type HoldReason, type Row, type Totals, totalsOf } from '@holdfast/domain';
import type { Board } from '../board.js';
import { rowsOf } from './rows-of.js';
import { accountHolds, accountLines, storedMarks } from './spots.js';

export type VisitState =
  | { readonly kind: 'worked'; readonly since: number }
  | { readonly kind: 'held'; readonly since: number; readonly reason: HoldReason; readonly holdId: string | null }
  | { readonly kind: 'stored'; readonly since: number }
  /** Nothing holds it and nobody works: either some line could go on, or nothing is left to do. */
  | { readonly kind: 'noReason'; readonly since: number; readonly workLeft: boolean }
  | { readonly kind: 'ended'; readonly since: number };

export interface Visit {
  readonly job: Row<'job'>;
  readonly vehicle: Row<'vehicle'>;
  readonly customer: Row<'customer'> | null;
  readonly contact: Row<'contact'> | null;
  readonly place: Row<'place'> | null;
  readonly state: VisitState;
  readonly lines: readonly Row<'workLine'>[];
  readonly openHolds: readonly Row<'hold'>[];
  readonly runningClocks: readonly Row<'clock'>[];
  readonly cautions: readonly Row<'caution'>[];
  /** On, failed or removed without a real end. */
  readonly fixes: readonly Row<'temporaryFix'>[];
  readonly parts: readonly Row<'partLine'>[];
  readonly followUps: readonly Row<'followUp'>[];
}

function stateOf(board: Board, job: Row<'job'>, now: number): VisitState {
  if (job.endedAt !== null) return { kind: 'ended', since: job.endedAt };
  const rows = rowsOf(board);
  const running = rows.list('clock', (clock) => clock.jobId === job.id && clock.toAt === null);
  if (running.length > 0) return { kind: 'worked', since: Math.min(...running.map((clock) => clock.fromAt)) };
  const waits = waitsOfJob(
    { lines: accountLines(board, job.id), holds: accountHolds(board, job.id), stored: storedMarks(job) },
    now,
  );
  const last = waits.at(-1);
  const cameAt = job.arrivedAt ?? job.expectedAt ?? now;
  const stopped = Math.max(cameAt, ...rows.list('clock', (c) => c.jobId === job.id).map((c) => c.toAt ?? now));
  if (last?.to !== now) {
    const workLeft = rows.list('workLine', (l) => l.jobId === job.id && !lineSettled(rows, l)).length > 0;
    return { kind: 'noReason', since: Math.max(stopped, last?.to ?? 0), workLeft };
  }
  const since = Math.max(last.from, stopped);
  if (last.state === 'stored') return { kind: 'stored', since };
  return { kind: 'held', since, reason: (last.reason ?? 'other') as HoldReason, holdId: last.holdId };
}

/** The visit of a job on the board; undefined when it is not (or no longer) there. */
export function visitOf(board: Board, jobId: string, now: number): Visit | undefined {
  const rows = rowsOf(board);
  const job = rows.find('job', jobId);
  const vehicle = rows.find('vehicle', job?.vehicleId);
  if (!job || !vehicle) return undefined;
  const ofJob = (row: { readonly jobId: string | null }) => row.jobId === jobId;
  const ofVehicle = (row: { readonly vehicleId: string }) => row.vehicleId === vehicle.id;
  return {
    job,
    vehicle,
    customer: rows.find('customer', job.customerId) ?? null,
    contact: rows.find('contact', job.contactId) ?? null,
    place: placeOf(rows, jobId) ?? null,
    state: stateOf(board, job, now),
    lines: rows.list('workLine', ofJob).sort((a, b) => a.position - b.position),
    openHolds: rows.list('hold', (hold) => ofJob(hold) && hold.toAt === null).sort((a, b) => a.fromAt - b.fromAt),
    runningClocks: rows.list('clock', (clock) => ofJob(clock) && clock.toAt === null),
    cautions: rows.list('caution', (caution) => ofVehicle(caution) && caution.endedAt === null),
    fixes: rows.list('temporaryFix', (fix) => ofVehicle(fix) && fix.state !== 'ended'),
    parts: rows.list('partLine', (part) => ofVehicle(part)),
    followUps: rows.list('followUp', ofVehicle),
  };
}

/** All visits on the premises, by job number. */
export function openVisits(board: Board, now: number): Visit[] {
  return [...board.tables.job.values()]
    .filter(isOnPremises)
    .sort((a, b) => a.number - b.number)
    .flatMap((job) => visitOf(board, job.id, now) ?? []);
}

/** Booked visits whose vehicle is not here yet, the earliest first. */
export function expectedVisits(board: Board, now: number): Visit[] {
  return [...board.tables.job.values()]
    .filter((job) => job.arrivedAt === null && job.endedAt === null)
    .sort((a, b) => (a.expectedAt ?? 0) - (b.expectedAt ?? 0) || a.number - b.number)
    .flatMap((job) => visitOf(board, job.id, now) ?? []);
}

export type RunningTotal = Totals;

/**
 * The total so far against the total given, of the lines of one visit; `standing` are the standing go-aheads that cover it.
 * Decimals in the shop's currency; counted in one place, with the domain's rules.
 */
export const runningTotal: typeof totalsOf = totalsOf;
