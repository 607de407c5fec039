import { canonical, compare, lesser, minus, plus } from '../kernel/amounts.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { stateOf } from './pieces.js';

/** What is lacking on the vehicle, as far as it is here; when nothing lacks, all that is here. */
function usualQuantity(part: Row<'partLine'>): string {
  const lacking = minus(part.quantity, part.fitted);
  return compare(lacking, '0') > 0 ? lesser(lacking, part.here) : part.here;
}

/** A turn: pieces that are here go onto the vehicle, in the unit of the part line. Refused are more than are here. */
export const fitPart: CommandRule<'fitPart'> = {
  needs: (input) => ({ partLines: [input.partLineId] }),
  decide: (rows, input, at) => {
    const part = live(rows, 'partLine', input.partLineId);
    if (!part) return notThere('partLine', input.partLineId);
    const { id: partLineId, here, state, jobId } = part;
    if (state === 'cancelled') return refuse('parts.cancelled', { partLineId });
    if (compare(here, '0') <= 0) return refuse('parts.noneHere', { partLineId, state });
    const quantity = canonical(input.quantity ?? usualQuantity(part));
    if (compare(quantity, here) > 0)
      return refuse('parts.moreThanHere', { partLineId, here: canonical(here), quantity });
    const pieces = { here: minus(here, quantity), fitted: plus(part.fitted, quantity) };
    const after = stateOf(part, pieces);
    rows.change('partLine', partLineId, {
      ...pieces,
      state: after,
      endedAt: after === 'fitted' ? (part.endedAt ?? at.effectiveAt) : null,
    });
    return { facts: { jobId, partLineId, quantity, state: after } };
  },
};
