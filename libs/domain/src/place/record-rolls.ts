/** Whether a vehicle rolls and whether it may be driven: two facts about it now; neither, one, or both. */
import type { CommandRule } from '../kernel/family.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';

export const recordRolls: CommandRule<'recordRolls'> = {
  needs: ({ vehicleId }) => ({ vehicles: [vehicleId] }),
  decide(rows, { vehicleId, rolls, mayBeDriven }) {
    if (!live(rows, 'vehicle', vehicleId)) return notThere('vehicle', vehicleId);
    rows.change('vehicle', vehicleId, { rolls, mayBeDriven });
    return { facts: { vehicleId, jobId: openJobOf(rows, vehicleId)?.id ?? null, rolls, mayBeDriven } };
  },
};
