import type { RecordConcernOutcome } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/**
 * What each outcome has to say: gone is gone under the conditions that had shown it (the customer's own where nobody
 * says others); still there under which, or in words; not tried says why. What could not be made to appear was tried: where
 * no attempt stands in the record it is kept all the same, and flagged.
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

function attemptsAt(rows: Rows, concernId: string): Row<'attempt'>[] {
  return rows.list('attempt', (one) => one.concernId === concernId);
}

/** Attempts that showed it, under conditions under which nobody has tried since and found that it stays away. */
function notRetried(rows: Rows, concernId: string): Row<'attempt'>[] {
  const attempts = attemptsAt(rows, concernId);
  return attempts.filter((shown) => {
    const key = foldKey(shown.conditions);
    const isAfter = ({ effectiveAt, recordedAt }: Row<'attempt'>) =>
      effectiveAt > shown.effectiveAt || (effectiveAt === shown.effectiveAt && recordedAt > shown.recordedAt);
    const same = attempts.filter((one) => isAfter(one) && foldKey(one.conditions) === key);
    // The last word under these conditions counts, so of several that showed it only the last one is named.
    return shown.appeared && same.length === 0;
  });
}

/** A turn on the concern; a later word replaces the earlier one while the vehicle is here. */
export const recordConcernOutcome: CommandRule<'recordConcernOutcome'> = {
  needs: (input) => ({ concerns: [input.concernId] }),
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
    if (input.outcome === 'couldNotAppear' && attemptsAt(rows, concern.id).length === 0) {
      const facts = { concernId: concern.id, position: concern.position };
      flag(rows, at, 'concern.noAttempt', { jobId: job.id, vehicleId: job.vehicleId }, facts);
    }
    const untried = input.outcome === 'gone' ? notRetried(rows, concern.id) : [];
    if (untried.length > 0) {
      const facts = { concernId: concern.id, position: concern.position, conditions: untried.length };
      flag(rows, at, 'concern.goneNotRetried', { jobId: job.id, vehicleId: job.vehicleId }, facts);
    }
    return { facts: { jobId: job.id, concernId: concern.id, position: concern.position, outcome: input.outcome } };
  },
};
