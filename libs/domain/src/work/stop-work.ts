/** A clock stops, with what is loose, open or next for whoever starts after. */
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import { isLead } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { applyEdits } from '../timeline/lanes.js';
import { close, isRunning } from '../timeline/timeline.js';
import { lineOfVisit, noteClocksOf } from './line-of-visit.js';
import { settledTables } from '../settle/settled-tables.js';

export const stopWork: CommandRule<'stopWork'> = {
  needs: ({ clockId }) => ({ clocks: [clockId], tables: [...settledTables, 'clock', 'report'] }),
  decide(rows, input, at) {
    const clock = live(rows, 'clock', input.clockId);
    if (!clock) return notThere('clock', input.clockId);
    const found = lineOfVisit(rows, clock.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    if (clock.personId !== at.by.personId && !isLead(at.by)) return refuse('work.othersClock');
    if (!isRunning(clock)) {
      return refuse('work.clockStopped', { since: new Date(clock.toAt ?? clock.fromAt).toISOString() });
    }
    applyEdits(rows, at, 'clock', [close(clock, at.effectiveAt)]);
    noteClocksOf(rows, line.id);
    // What was left loose stays said until somebody says something newer.
    if (input.handover !== undefined) rows.change('workLine', line.id, { handover: input.handover });
    const { toAt } = rows.get('clock', clock.id);
    return {
      facts: { jobId: job.id, lineId: line.id, personId: clock.personId, workedMs: (toAt ?? 0) - clock.fromAt },
    };
  },
};
