import type { RecordConcernOutcome } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/**
 * What each outcome has to say: gone is gone under the conditions that had shown it (the customer's own where nobody
 * says others); still there under which, or in words; not tried says why. What could not be made to appear needs nothing.
 */
function unsaid(input: RecordConcernOutcome, concern: Row<'concern'>, conditions: string | null): Refused | null {
  const { outcome, words } = input;
  switch (outcome) {
    case 'gone':
      return conditions === null ? refuse('concern.conditionsMissing', { concernId: concern.id }) : null;
    case 'stillThere':
      return conditions === null && words === undefined
        ? refuse('concern.wordsMissing', { concernId: concern.id, outcome })
        : null;
    case 'notTried':
      return words === undefined ? refuse('concern.wordsMissing', { concernId: concern.id, outcome }) : null;
    case 'couldNotAppear':
      return null;
  }
}

/** A turn on the concern; a later word replaces the earlier one while the vehicle is here. */
export const recordConcernOutcome: CommandRule<'recordConcernOutcome'> = {
  needs: (input) => ({ concerns: [input.concernId], tables: ['concern'] }),
  decide: (rows, input, at) => {
    const concern = live(rows, 'concern', input.concernId);
    const job = concern && live(rows, 'job', concern.jobId);
    if (!concern || !job) return notThere('concern', input.concernId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    const conditions = input.conditions ?? (input.outcome === 'notTried' ? null : concern.conditions);
    const refused = unsaid(input, concern, conditions);
    if (refused) return refused;
    rows.change('concern', concern.id, {
      outcome: input.outcome,
      outcomeConditions: conditions,
      outcomeWords: input.words ?? null,
      outcomeAt: at.effectiveAt,
      outcomeById: at.by.personId,
    });
    return { facts: { jobId: job.id, concernId: concern.id, position: concern.position, outcome: input.outcome } };
  },
};
