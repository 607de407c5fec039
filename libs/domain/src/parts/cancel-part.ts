import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { PartState } from '../tables/words.js';

const cancellable: readonly PartState[] = ['wanted', 'ordered', 'partArrived'];

/** Ends a part line that nobody waits for any more. Pieces that are here or on the vehicle stay counted on it. */
export function cancelPartLine(rows: Rows, at: Circumstances, partLineId: string, words: string | null): void {
  rows.change('partLine', partLineId, { state: 'cancelled', endWords: words, endedAt: at.effectiveAt });
}

/** A turn: refused once all pieces are here, or when it is cancelled already. */
export const cancelPart: CommandRule<'cancelPart'> = {
  needs: (input) => ({ partLines: [input.partLineId] }),
  decide: (rows, input, at) => {
    const part = live(rows, 'partLine', input.partLineId);
    if (!part) return notThere('partLine', input.partLineId);
    const { id: partLineId, state, jobId } = part;
    if (!cancellable.includes(state)) return refuse('parts.notToCancel', { partLineId, state });
    cancelPartLine(rows, at, partLineId, input.words);
    return { facts: { jobId, partLineId, before: state } };
  },
};
