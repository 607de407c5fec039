/**
 * Calls that somebody at the desk has to make, as they follow from the rows: the customer is asked about a line; the vehicle
 * is ready; a vehicle that is gone can come back, because the parts for it are here. A call ends by its entry in the contact
 * log, or by itself when there is nothing left to say. What only time brings about (a limit that comes near) is no row.
 */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { isReady } from '../job/hand-back-blockers.js';
import { lineSettledByChoice } from '../questions/choices.js';
import { isHere } from '../questions/parts-and-holds.js';
import { expectedJobsOf, isOnPremises, lineEnded, openJobOf } from '../questions/place-and-work.js';
import type { Row, TableName } from '../tables/tables.js';

type Reason = Row<'call'>['reason'];

/** Tables whose rows say where a vehicle was: a command writes them for vehicles too that it has not loaded whole. */
const ofOthersToo: readonly TableName[] = ['place', 'spotUse', 'clock', 'report', 'flag'];

/** What decides whether the parts for a vehicle that is gone are all here. */
const ofParts: readonly TableName[] = ['partLine', 'followUp', 'job'];

interface Touched {
  /** The visits that the command itself is about: it wrote something of theirs. */
  readonly jobs: ReadonlySet<string>;
  /** Vehicles whose parts, follow-ups or visits it wrote. */
  readonly vehicles: ReadonlySet<string>;
}

function touchedBy(rows: Rows): Touched {
  const jobs = new Set<string>();
  const written = new Set<string>();
  const vehicles = new Set<string>();
  for (const { table, after } of rows.changes()) {
    if (ofOthersToo.includes(table)) continue;
    const { jobId, vehicleId } = after as { jobId?: string | null; vehicleId?: string | null };
    if (table === 'job') jobs.add(after.id);
    if (jobId) jobs.add(jobId);
    if (!vehicleId) continue;
    written.add(vehicleId);
    if (ofParts.includes(table)) vehicles.add(vehicleId);
  }
  for (const vehicleId of written) {
    const here = openJobOf(rows, vehicleId);
    if (here) jobs.add(here.id);
  }
  return { jobs, vehicles };
}

/** Judges the visits and vehicles that the command wrote to; their rows have to be in the bag whole. */
export function settleCalls(rows: Rows, at: Circumstances): void {
  const { jobs, vehicles } = touchedBy(rows);
  if (jobs.size === 0 && vehicles.size === 0) return;
  const calls = rows.list('call').sort((a, b) => a.recordedAt - b.recordedAt);
  const of = (reason: Reason, of: { readonly jobId?: string; readonly followUpId?: string }) =>
    calls.filter(
      (call) =>
        call.reason === reason && call.jobId === (of.jobId ?? null) && call.followUpId === (of.followUpId ?? null),
    );
  for (const id of jobs) {
    const job = rows.find('job', id);
    if (!job || job.void) continue;
    settleGoAheadCall(rows, at, job, of('goAhead', { jobId: id }));
    settleReadyCall(rows, at, job, of('ready', { jobId: id }));
  }
  if (vehicles.size === 0) return;
  for (const followUp of rows.list('followUp', (one) => vehicles.has(one.vehicleId))) {
    settlePartsCall(rows, at, followUp, of('partsIn', { followUpId: followUp.id }));
  }
}

type Calls = readonly Row<'call'>[];

function raise(
  rows: Rows,
  at: Circumstances,
  reason: Reason,
  of: {
    readonly vehicleId: string;
    readonly jobId: string | null;
    readonly followUpId: string | null;
    readonly customerId: string | null;
  },
): void {
  rows.add('call', {
    id: at.newId(),
    ...recordedBy(at),
    ...of,
    reason,
    words: null,
    nextTryAt: null,
    endedAt: null,
    endedHow: null,
  });
}

function endThose(rows: Rows, at: Circumstances, calls: Calls): void {
  for (const call of calls) {
    if (call.endedAt === null) rows.change('call', call.id, { endedAt: at.effectiveAt, endedHow: 'noLongerNeeded' });
  }
}

/** The customer was asked about a line when it was added, and each time anew that its answer says "with the customer". */
function lastAskedAt(rows: Rows, line: Row<'workLine'>): number {
  const anew = rows.list('goAhead', (one) => one.lineId === line.id && one.answer === 'withCustomer');
  return Math.max(line.recordedAt, ...anew.map((one) => one.recordedAt));
}

/** Lines that the shop or a guarantee pays are for the shop to give; an internal visit has nobody to ask. */
function settleGoAheadCall(rows: Rows, at: Circumstances, job: Row<'job'>, calls: Calls): void {
  const asks = isOnPremises(job) && job.customerId !== null;
  const asked = asks
    ? rows.list(
        'workLine',
        (line) =>
          line.jobId === job.id &&
          line.goAhead === 'withCustomer' &&
          line.payer !== 'shop' &&
          line.payer !== 'guarantee' &&
          !lineEnded(line) &&
          !lineSettledByChoice(rows, line),
      )
    : [];
  if (asked.length === 0) return endThose(rows, at, calls);
  const last = calls.at(-1);
  if (last?.endedAt === null) return;
  const askedAt = Math.max(...asked.map((line) => lastAskedAt(rows, line)));
  if (last === undefined || last.endedHow === 'noLongerNeeded' || askedAt > last.endedAt) {
    raise(rows, at, 'goAhead', {
      vehicleId: job.vehicleId,
      jobId: job.id,
      followUpId: null,
      customerId: job.customerId,
    });
  }
}

/** Ready, with something that was done or looked at: a vehicle that was only just checked in is not. */
function canBeCollected(rows: Rows, job: Row<'job'>): boolean {
  if (!isOnPremises(job) || job.customerId === null || !isReady(rows, job.id)) return false;
  const told = rows.list('concern', (one) => one.jobId === job.id && one.outcome !== null).length > 0;
  const over = (line: Row<'workLine'>) => line.progress === 'done' || line.progress === 'dropped';
  return told || rows.list('workLine', (line) => line.jobId === job.id && over(line)).length > 0;
}

function settleReadyCall(rows: Rows, at: Circumstances, job: Row<'job'>, calls: Calls): void {
  if (!canBeCollected(rows, job)) return endThose(rows, at, calls);
  const last = calls.at(-1);
  if (last?.endedAt === null || last?.endedHow === 'logged') return;
  raise(rows, at, 'ready', { vehicleId: job.vehicleId, jobId: job.id, followUpId: null, customerId: job.customerId });
}

/** All that a follow-up of a vehicle which is gone waits for lies here, and it is not booked to come. */
function partsAreIn(rows: Rows, followUp: Row<'followUp'>): boolean {
  if (followUp.state !== 'open' || openJobOf(rows, followUp.vehicleId)) return false;
  if (expectedJobsOf(rows, followUp.vehicleId).length > 0) return false;
  const parts = rows.list('partLine', (part) => part.followUpId === followUp.id && part.state !== 'cancelled');
  return parts.length > 0 && parts.every(isHere);
}

function settlePartsCall(rows: Rows, at: Circumstances, followUp: Row<'followUp'>, calls: Calls): void {
  if (!partsAreIn(rows, followUp)) return endThose(rows, at, calls);
  const last = calls.at(-1);
  if (last?.endedAt === null || last?.endedHow === 'logged') return;
  const { vehicleId, id: followUpId } = followUp;
  const customerId = rows.find('vehicle', vehicleId)?.customerId ?? null;
  raise(rows, at, 'partsIn', { vehicleId, jobId: null, followUpId, customerId });
}
