import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { closeFollowUpRow, unendedFixesOf } from './follow-up-rows.js';

function refusedLine(rows: Rows, lineId: string, vehicleId: string): Refused | null {
  const line = live(rows, 'workLine', lineId);
  if (!line) return notThere('workLine', lineId);
  if (line.vehicleId !== vehicleId) return refuse('followUp.ofOtherVehicle', { table: 'workLine', id: lineId });
  return line.progress === 'done' ? null : refuse('followUp.lineNotDone', { lineId, progress: line.progress });
}

/** A turn: done, by a done line where one is named, or dropped with words; never before its temporary fix has ended. */
export const closeFollowUp: CommandRule<'closeFollowUp'> = {
  needs: (input) => ({
    followUps: [input.followUpId],
    ...(input.lineId === undefined ? {} : { lines: [input.lineId] }),
  }),
  decide: (rows, input, at) => {
    const followUp = live(rows, 'followUp', input.followUpId);
    if (!followUp) return notThere('followUp', input.followUpId);
    const { id: followUpId, state, vehicleId } = followUp;
    if (state !== 'open') return refuse('followUp.closedAlready', { followUpId, state });
    const fix = unendedFixesOf(rows, followUpId)[0];
    if (fix) {
      const facts = { followUpId, temporaryFixId: fix.id, state: fix.state };
      return refuse('followUp.fixStillOn', facts, { table: 'temporaryFix', id: fix.id });
    }
    if (input.how === 'dropped' && input.words === undefined) return refuse('followUp.wordsMissing');
    const refused = input.lineId === undefined ? null : refusedLine(rows, input.lineId, vehicleId);
    if (refused) return refused;
    const lineId = input.how === 'done' ? (input.lineId ?? null) : null;
    closeFollowUpRow(rows, at, followUpId, { state: input.how, words: input.words ?? null, lineId });
    return { facts: { vehicleId, followUpId, how: input.how } };
  },
};
