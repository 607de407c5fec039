import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

function notReady({ state, goodCount, badCount }: Row<'importBatch'>): Refused | null {
  if (state === 'accepted' || state === 'discarded') return refuse('import.ended', { state });
  if (state !== 'checked') return refuse('import.notChecked', { state });
  return goodCount === 0 ? refuse('import.nothingGood', { bad: badCount }) : null;
}

/**
 * All good rows or none: what was recorded since the file was checked and stands against one of them refuses the whole,
 * and checking it again says which. Follow-ups of vehicles that a board shows are made here, so that the change tells of
 * them; the others, which nobody sees live and which may be many, the store lays down as one set.
 */
export const acceptImport: CommandRule<'acceptImport'> = {
  needs: ({ importId }) => ({ importId }),
  decide(rows, { importId }, at) {
    const batch = live(rows, 'importBatch', importId);
    if (!batch || at.staged?.importId !== importId) return notThere('importBatch', importId);
    const refused = notReady(batch);
    if (refused) return refused;
    const { overtaken, onBoard } = at.staged;
    if (overtaken > 0) return refuse('import.overtaken', { rows: overtaken });
    for (const followUp of onBoard) rows.add('followUp', { ...recordedBy(at), ...followUp });
    rows.change('importBatch', importId, { state: 'accepted', acceptedAt: at.now, acceptedById: at.by.personId });
    const { kind, goodCount, badCount } = batch;
    return { facts: { importId, how: kind, good: goodCount, bad: badCount } };
  },
};
