/**
 * The customer takes the word back. What was not begun is declined; what was begun stops, is put back, and ends as
 * dropped with what is charged for it. Work that was asked again because its price moved can be withdrawn as well.
 */
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import { isLead } from '../questions/people-and-shop.js';
import { openLineOfVisit, stopClocksOn } from './line-of-visit.js';
import { mayNotRecord } from './record-go-ahead.js';

export const withdrawGoAhead: CommandRule<'withdrawGoAhead'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    const refused = mayNotRecord(rows, at);
    if (refused) return refused;
    const begun = line.startedAt !== null;
    const standsGiven = line.goAhead === 'given' || (begun && line.goAhead === 'withCustomer');
    if (!standsGiven) return refuse('work.notGiven', { goAhead: line.goAhead }, { table: 'workLine', id: line.id });
    if (input.how === 'standing') return refuse('work.goAheadByWhom');
    if (input.how === 'shop' && !isLead(at.by)) return refuse('work.goAheadOfShop');
    const { byName, how } = input;
    const of = { jobId: job.id, lineId: line.id };
    const words = input.words ?? null;
    const answer = rows.add('goAhead', {
      id: at.newId(),
      ...recordedBy(at),
      ...of,
      answer: 'declined',
      byName,
      how,
      upTo: null,
      words,
      standingId: line.standingId,
    });
    const stopped = begun ? { progress: 'stopped' as const } : {};
    if (begun) stopClocksOn(rows, at, line.id, at.effectiveAt);
    rows.change('workLine', line.id, {
      goAhead: 'declined',
      goAheadUpTo: null,
      standingId: null,
      withdrawnAt: at.effectiveAt,
      ...stopped,
    });
    return { facts: { ...of, before: line.goAhead, how, begun }, created: { goAhead: answer.id } };
  },
};
