/** Questions about where vehicles stand, which spots are free, who works on what, and which cautions stand. */
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { LineProgress } from '../tables/words.js';
import { usesOfSpot } from '../timeline/lanes.js';
import { isRunning, overlap, type Span } from '../timeline/timeline.js';

/** One of two records of one vehicle or customer that turned out to be the other: nothing is recorded on it any more. */
function isMerged(row: object): boolean {
  return 'mergedIntoId' in row && typeof row.mergedIntoId === 'string';
}

/** The row where it is there, not void and not merged into another: what a reference of an input may name. */
export function live<T extends Parameters<Rows['find']>[0]>(
  rows: Rows,
  table: T,
  id: string | null | undefined,
): Row<T> | undefined {
  const row = rows.find(table, id);
  return row && !row.void && !isMerged(row) ? row : undefined;
}

/** The visit that a vehicle is here for, if it is here; one that is only expected is not here. */
export function openJobOf(rows: Rows, vehicleId: string): Row<'job'> | undefined {
  return rows.list('job', (job) => job.vehicleId === vehicleId && isOnPremises(job))[0];
}

/** Between arrival and hand-back: in the yard, in a bay, on a road test or away at another firm. */
export function isOnPremises(job: Pick<Row<'job'>, 'arrivedAt' | 'endedAt'>): boolean {
  return job.arrivedAt !== null && job.endedAt === null;
}

/** The visits that a vehicle is expected for, the next one first. */
export function expectedJobsOf(rows: Rows, vehicleId: string): Row<'job'>[] {
  return rows
    .list('job', (job) => job.vehicleId === vehicleId && job.arrivedAt === null && job.endedAt === null)
    .sort((a, b) => (a.expectedAt ?? 0) - (b.expectedAt ?? 0));
}

/** Where the vehicle of the job is now. */
export function placeOf(rows: Rows, jobId: string): Row<'place'> | undefined {
  return rows.list('place', (place) => place.jobId === jobId && isRunning(place))[0];
}

/** The uses of that spot that share an instant with the span, but those of the vehicle itself. */
export function usedByOthers(rows: Rows, bayId: string, spot: number, span: Span, vehicleId: string): Row<'spotUse'>[] {
  return usesOfSpot(rows, bayId, spot).filter((use) => use.vehicleId !== vehicleId && overlap(use, span));
}

/** The lowest spot of the bay, from 1 to `spots`, that nobody else uses in the span. */
export function freeSpot(rows: Rows, bayId: string, spots: number, span: Span, vehicleId: string): number | undefined {
  for (let spot = 1; spot <= spots; spot += 1) {
    if (usedByOthers(rows, bayId, spot, span, vehicleId).length === 0) return spot;
  }
  return undefined;
}

/** The clock that a person is on. */
export function runningClockOf(rows: Rows, personId: string): Row<'clock'> | undefined {
  return rows.list('clock', (clock) => clock.personId === personId && isRunning(clock))[0];
}

export function clocksRunningOn(rows: Rows, lineId: string): Row<'clock'>[] {
  return rows.list('clock', (clock) => clock.lineId === lineId && isRunning(clock));
}

/** Whether a line has come to its end on this visit. */
export function lineEnded(line: { readonly progress: LineProgress }): boolean {
  switch (line.progress) {
    case 'planned':
    case 'started':
    case 'stopped':
      return false;
    case 'done':
    case 'carriedOver':
    case 'dropped':
      return true;
  }
}

/**
 * The line that has to be done before this one, while it is not (rule 10: only an explicit "after" gates work). A dropped
 * one gates no longer; one that was carried over still does, it is not done.
 */
export function unfinishedBefore(rows: Rows, line: Row<'workLine'>): Row<'workLine'> | undefined {
  const before = live(rows, 'workLine', line.afterLineId);
  return before && before.progress !== 'done' && before.progress !== 'dropped' ? before : undefined;
}

/** Owner or manager named the points that are used on the visit of today, since this caution was put up (rule 4). */
export function pointsNamed(rows: Rows, caution: Row<'caution'>): boolean {
  const named = rows.list(
    'liftingPoints',
    (one) => one.vehicleId === caution.vehicleId && one.recordedAt >= caution.recordedAt,
  );
  return named.some(({ jobId }) => live(rows, 'job', jobId)?.endedAt === null);
}

/** The cautions that stand on a vehicle now, standing and working ones, in the order they were put there. */
export function openCautions(rows: Rows, vehicleId: string): Row<'caution'>[] {
  return rows
    .list('caution', (one) => one.vehicleId === vehicleId && one.endedAt === null)
    .sort((a, b) => a.effectiveAt - b.effectiveAt);
}
