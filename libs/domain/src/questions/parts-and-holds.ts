/**
 * Questions about part lines and holds that several families ask: is it here, is it still wanted on this visit, is it
 * needed now (rule 6), what does a hold still wait for.
 */
import { compare, plus } from '../kernel/amounts.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import { lineSettledByChoice } from './choices.js';
import { lineEnded, live } from './place-and-work.js';

/** All pieces that the part line asks for are here and usable, or on the vehicle. */
export function isHere(part: Row<'partLine'>): boolean {
  return compare(plus(part.here, part.fitted), part.quantity) >= 0;
}

/**
 * Wanted on this visit: not cancelled, and its line is neither ended nor put off, turned down or decided by
 * another way that the customer chose, in a job that is still open. A part whose purpose is a follow-up is wanted, but not on this visit.
 */
export function isStillWanted(rows: Rows, part: Row<'partLine'>): boolean {
  const line = live(rows, 'workLine', part.lineId);
  if (!line || part.void || part.state === 'cancelled') return false;
  if (lineEnded(line) || line.goAhead === 'deferred' || line.goAhead === 'declined') return false;
  if (lineSettledByChoice(rows, line)) return false;
  return (rows.find('job', line.jobId)?.endedAt ?? null) === null;
}

/** The moment of need has come, whatever became of the part since: rule 6, first half. */
export function timeHasCome(rows: Rows, part: Row<'partLine'>): boolean {
  const line = live(rows, 'workLine', part.lineId);
  if (!line) return false;
  switch (part.needed) {
    case 'beforeStart':
      return line.goAhead === 'given' || line.startedAt !== null;
    case 'beforeRefit':
      return line.startedAt !== null;
    case 'mayFollow':
      return false;
  }
}

/** "Before starting" from the go-ahead of its line on, "before refit" once the line is started, "may follow" never. */
export function neededNow(rows: Rows, part: Row<'partLine'>): boolean {
  return timeHasCome(rows, part) && isStillWanted(rows, part);
}

export function openHolds(rows: Rows, jobId: string): Row<'hold'>[] {
  return rows.list('hold', (hold) => hold.jobId === jobId && hold.toAt === null);
}

/** The part lines that a hold names. All part lines of its vehicle have to be in the bag. */
export function partsOf(rows: Rows, hold: Row<'hold'>): Row<'partLine'>[] {
  return rows.list('holdPart', (one) => one.holdId === hold.id).map((one) => rows.get('partLine', one.partLineId));
}

/** The work lines that a hold names; none when it holds the whole job. */
export function linesOf(rows: Rows, hold: Row<'hold'>): Row<'workLine'>[] {
  return rows.list('holdLine', (one) => one.holdId === hold.id).map((one) => rows.get('workLine', one.lineId));
}

/** The part lines for which a hold still waits: wanted on its visit, and not all pieces here. */
export function missingParts(rows: Rows, hold: Row<'hold'>): Row<'partLine'>[] {
  return partsOf(rows, hold).filter((part) => part.jobId === hold.jobId && isStillWanted(rows, part) && !isHere(part));
}
