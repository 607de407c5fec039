import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { isHere, linesOf, missingParts, neededNow, partsOf, timeHasCome } from '../questions/parts-and-holds.js';
import { lineEnded } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';
import { endHoldAt } from './end-hold-at.js';

/**
 * Rule 6, the end: a parts hold ends when every part line that is needed now is here or no longer wanted. A hold that
 * names nothing needed now (somebody opened it all the same) ends when nothing it names is both wanted and missing.
 */
export function endPartsHold(rows: Rows, at: Circumstances, hold: Row<'hold'>): void {
  const parts = partsOf(rows, hold);
  if (parts.length === 0) return;
  const missing = new Set(missingParts(rows, hold).map((part) => part.id));
  const called = parts.filter((part) => part.jobId === hold.jobId && timeHasCome(rows, part));
  const over = missing.size === 0 || (called.length > 0 && called.every((part) => !missing.has(part.id)));
  if (!over) return;
  const here = parts.filter((part) => part.state !== 'cancelled' && isHere(part));
  const arrived = rows
    .list('arrival', (one) => one.verdict === 'good' || one.verdict === 'accepted')
    .filter((one) => here.some((part) => part.id === one.partLineId));
  const causes = arrived.map((one) => one.effectiveAt);
  endHoldAt(rows, at, hold, here.length > 0 ? 'partsHere' : 'partsNoLongerNeeded', causes);
}

/**
 * Rule 6, again: pieces found damaged or wrong since the last hold for their part line ended open it again, as a new hold
 * that names the one before, while the part is needed now and no other hold waits for it. A hold ended by hand after the
 * find stays ended: somebody decided to go on without.
 */
export function openPartsHoldsAgain(rows: Rows, at: Circumstances): void {
  const again = new Map<string, Row<'partLine'>[]>();
  for (const partLineId of new Set(badArrivals(rows).map((one) => one.partLineId))) {
    const part = rows.get('partLine', partLineId);
    const last = isHere(part) || !neededNow(rows, part) ? undefined : lastEndedHoldFor(rows, part);
    if (last && foundSince(rows, at, part, last)) again.set(last.id, [...(again.get(last.id) ?? []), part]);
  }
  for (const [holdId, parts] of again) openAgain(rows, at, rows.get('hold', holdId), parts);
}

function badArrivals(rows: Rows): Row<'arrival'>[] {
  return rows.list('arrival', (one) => one.verdict === 'damaged' || one.verdict === 'wrong');
}

/** Undefined when a hold that is open waits for the part, or none ever did on this visit. */
function lastEndedHoldFor(rows: Rows, part: Row<'partLine'>): Row<'hold'> | undefined {
  const holds = rows
    .list('holdPart', (one) => one.partLineId === part.id)
    .map((one) => rows.get('hold', one.holdId))
    .filter((hold) => !hold.void && hold.reason === 'parts' && hold.jobId === part.jobId);
  if (holds.some((hold) => hold.toAt === null)) return undefined;
  return holds.reduce<Row<'hold'> | undefined>(
    (last, hold) => (last === undefined || (hold.toAt ?? 0) >= (last.toAt ?? 0) ? hold : last),
    undefined,
  );
}

/** Found after the hold ended, or told only now (by a device that was offline) though found before. */
function foundSince(rows: Rows, at: Circumstances, part: Row<'partLine'>, hold: Row<'hold'>): boolean {
  return badArrivals(rows).some(
    (one) => one.partLineId === part.id && (one.recordedAt === at.now || one.effectiveAt > (hold.toAt ?? 0)),
  );
}

function openAgain(rows: Rows, at: Circumstances, before: Row<'hold'>, parts: readonly Row<'partLine'>[]): void {
  const { jobId, vehicleId, words, moveOfId, moveOf } = before;
  const holdId = at.newId();
  rows.add('hold', {
    id: holdId,
    ...recordedBy(at),
    ...{ jobId, vehicleId, words, moveOfId, moveOf },
    reason: 'parts',
    endsAt: null,
    openedById: at.by.personId,
    fromAt: Math.max(at.effectiveAt, before.toAt ?? before.fromAt),
    toAt: null,
    endedHow: null,
    endWords: null,
    endedById: null,
    againOfId: before.id,
    subletId: null,
  });
  const named = linesOf(rows, before);
  const going = named.filter((line) => !lineEnded(line)).map((line) => line.id);
  // All lines it named have ended, yet a part of another line is missing again: then that line is held, not the job.
  const lineIds = named.length > 0 && going.length === 0 ? parts.map((part) => part.lineId) : going;
  for (const lineId of new Set(lineIds)) {
    if (lineId !== null) rows.add('holdLine', { id: at.newId(), holdId, jobId, lineId });
  }
  for (const part of parts) rows.add('holdPart', { id: at.newId(), holdId, jobId, partLineId: part.id });
}
