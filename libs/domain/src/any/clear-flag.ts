import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';

/** What was flagged has been looked at, by owner or manager, with words; the flag stays and says so. */
export const clearFlag: CommandRule<'clearFlag'> = {
  needs: ({ flagId }) => ({ flags: [flagId], tables: ['flag'] }),
  decide(rows, { flagId, words }, at) {
    const flag = live(rows, 'flag', flagId);
    if (!flag) return notThere('flag', flagId);
    if (flag.clearedAt !== null) return refuse('flag.clearedAlready', { flagId });
    rows.change('flag', flagId, { clearedAt: at.effectiveAt, clearedById: at.by.personId, clearWords: words });
    const { jobId, vehicleId, bayId, rule } = flag;
    return { facts: { jobId, vehicleId, bayId, flagId, rule } };
  },
};
