/** A line that had ended goes on, on the same visit; what it was carried over to goes back into it. */
import type { CommandRule } from '../kernel/family.js';
import type { Circumstances } from '../kernel/decision.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { closeFollowUpRow, unendedFixesOf } from '../outstanding/follow-up-rows.js';
import { givenInstead } from '../questions/choices.js';
import { lineEnded, live } from '../questions/place-and-work.js';
import { isPutBack } from '../questions/totals.js';
import type { Row } from '../tables/tables.js';
import { type LineOfVisit, lineOfVisit } from './line-of-visit.js';
import { isOpenPart, movePart } from './parts-of-line.js';

export const reopenLine: CommandRule<'reopenLine'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = lineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
    if (!lineEnded(line)) return refuse('work.lineOpen', {}, { table: 'workLine', id: line.id });
    const other = line.goAhead === 'given' ? givenInstead(rows, line) : undefined;
    if (other) return refuse('work.choiceTaken', { lineId: other.id }, { table: 'workLine', id: other.id });
    const refused = line.progress === 'carriedOver' ? takeBackCarriedOver(rows, at, found, input.words) : null;
    if (refused) return refused;
    const before = line.progress;
    rows.change('workLine', line.id, {
      progress: line.startedAt === null ? 'planned' : 'stopped',
      endedAt: null,
      endWords: null,
      toFollowUpId: before === 'carriedOver' ? null : line.toFollowUpId,
      // What was said when it ended, and why it goes on, is what whoever starts next has to know.
      handover: [line.handover, line.endWords, input.words].filter((some) => some !== null).join('\n'),
      // The price of a line that was put back is what was charged for that, and no price of the work.
      ...(before === 'dropped' && isPutBack(line) ? { price: null } : {}),
    });
    return { facts: { jobId: job.id, lineId: line.id, before } };
  },
};

/** Only while nothing has come of the follow-up: open, no line made from it, no fix that waits for it. */
function takeBackCarriedOver(rows: Rows, at: Circumstances, { job, line }: LineOfVisit, words: string): Refused | null {
  const followUp = live(rows, 'followUp', line.toFollowUpId);
  if (followUp?.state !== 'open' || hasGoneOn(rows, followUp)) {
    return refuse('work.followUpGoesOn', {}, followUp && { table: 'followUp', id: followUp.id });
  }
  // First the parts: closing a follow-up cancels what is only wanted for it.
  const parts = rows.list('partLine', (part) => part.followUpId === followUp.id && isOpenPart(part));
  for (const part of parts) movePart(rows, part, { jobId: job.id, lineId: line.id, followUpId: null });
  closeFollowUpRow(rows, at, followUp.id, { state: 'dropped', words, lineId: null });
  return null;
}

function hasGoneOn(rows: Rows, { id, fromJobId }: Row<'followUp'>): boolean {
  const takenUp = rows.list('workLine', (line) => line.fromFollowUpId === id && line.progress !== 'dropped').length > 0;
  const elsewhere = rows.list('partLine', (part) => part.followUpId === id && part.state === 'fitted').length > 0;
  return takenUp || elsewhere || fromJobId === null || unendedFixesOf(rows, id).length > 0;
}
