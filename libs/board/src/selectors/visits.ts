/** One visit as the live screens show it: where the vehicle is, what goes on, what it waits for, what is on it. */
import { waitsOfJob } from '@holdfast/bay-time';
import { compare, lineEnded, placeOf, plus, type HoldReason, type Row } from '@holdfast/domain';
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
  const stopped = Math.max(job.checkedInAt, ...rows.list('clock', (c) => c.jobId === job.id).map((c) => c.toAt ?? now));
  if (last?.to !== now) {
    const workLeft = rows.list('workLine', (l) => l.jobId === job.id && !lineEnded(l)).length > 0;
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

/** All open visits, by job number. */
export function openVisits(board: Board, now: number): Visit[] {
  return [...board.tables.job.values()]
    .filter((job) => job.endedAt === null)
    .sort((a, b) => a.number - b.number)
    .flatMap((job) => visitOf(board, job.id, now) ?? []);
}

export interface RunningTotal {
  /** Prices of the lines with the go-ahead, and what was agreed to for them; decimals in the shop's currency. */
  readonly soFar: string;
  readonly given: string;
  readonly over: boolean;
  /** Lines with the go-ahead whose price is not known yet. */
  readonly unpriced: number;
}

type PricedLine = Pick<Row<'workLine'>, 'goAhead' | 'goAheadUpTo' | 'progress' | 'payer' | 'price'>;

/** The total so far against the total given. A line without an amount is agreed at its price. */
export function runningTotal(lines: readonly PricedLine[]): RunningTotal {
  const counted = lines.filter(
    (line) => line.goAhead === 'given' && line.progress !== 'dropped' && line.payer === 'customer',
  );
  const soFar = counted.reduce((total, line) => plus(total, line.price ?? '0'), '0');
  const given = counted.reduce((total, line) => plus(total, line.goAheadUpTo ?? line.price ?? '0'), '0');
  return {
    soFar,
    given,
    over: compare(soFar, given) > 0,
    unpriced: counted.filter((line) => line.price === null).length,
  };
}
