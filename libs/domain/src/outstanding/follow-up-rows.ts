import { compare, plus } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { cancelPartLine } from '../parts/cancel-part.js';
import type { Row } from '../tables/tables.js';
import { limitsOf } from './limits.js';

/** Fixes that have not ended and whose permanent repair this follow-up is: on, failed or removed (rule 8). */
export function unendedFixesOf(rows: Rows, followUpId: string): Row<'temporaryFix'>[] {
  return rows.list('temporaryFix', (fix) => fix.followUpId === followUpId && fix.state !== 'ended');
}

/** The open follow-up that a fix names, if any. */
export function openFollowUpOf(rows: Rows, fix: Row<'temporaryFix'>): Row<'followUp'> | undefined {
  const followUp = rows.find('followUp', fix.followUpId);
  return followUp && !followUp.void && followUp.state === 'open' ? followUp : undefined;
}

/** Closes a follow-up. What was only wanted for it, with nothing ordered or here, is wanted no more. */
export function closeFollowUpRow(
  rows: Rows,
  at: Circumstances,
  followUpId: string,
  closing: { readonly state: 'done' | 'dropped'; readonly words: string | null; readonly lineId: string | null },
): void {
  rows.change('followUp', followUpId, {
    state: closing.state,
    closedAt: at.effectiveAt,
    closedById: at.by.personId,
    closeWords: closing.words,
    closeLineId: closing.lineId,
  });
  const unordered = rows.list('partLine', (part) => part.followUpId === followUpId && part.state === 'wanted');
  for (const part of unordered) {
    if (compare(plus(part.here, part.fitted), '0') === 0) cancelPartLine(rows, at, part.id, closing.words);
  }
}

/**
 * A fix that failed or was removed is not ended: its permanent repair becomes urgent and stays open. Where nobody had
 * made that follow-up yet, it is made here.
 */
export function makeUrgent(rows: Rows, at: Circumstances, fix: Row<'temporaryFix'>, words: string | null): string {
  const open = openFollowUpOf(rows, fix);
  if (open) {
    const both = [open.words, words].filter((some) => some !== null).join('\n');
    rows.change('followUp', open.id, { urgency: 'urgent', words: both === '' ? null : both });
    return open.id;
  }
  const followUpId = at.newId();
  rows.add('followUp', {
    id: followUpId,
    ...recordedBy(at),
    vehicleId: fix.vehicleId,
    fromJobId: fix.jobId,
    kind: 'permanentRepair',
    title: fix.endedByWhat,
    words,
    urgency: 'urgent',
    lineId: null,
    remainingMinutes: null,
    needsGoAhead: false,
    needsFollowUpId: null,
    ...limitsOf(rows, { distanceUnit: fix.distanceUnit }),
    state: 'open',
    closedAt: null,
    closedById: null,
    closeWords: null,
    closeLineId: null,
  });
  return followUpId;
}
