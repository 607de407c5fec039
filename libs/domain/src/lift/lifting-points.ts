/** Which points of a vehicle are used on this visit, where a caution says that not all of them may be. */
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import { openCautions } from '../questions/place-and-work.js';
import { visitOf } from '../questions/visit.js';

/** A claim, by owner or manager. Said anew it replaces what was said; a caution that is added later asks for it again. */
export const nameLiftingPoints: CommandRule<'nameLiftingPoints'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: ['caution', 'liftingPoints'] }),
  decide: (rows, { jobId, words }, at) => {
    const visit = visitOf(rows, jobId);
    if (visit instanceof Refused) return visit;
    const { job, vehicle } = visit;
    if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
    if (!openCautions(rows, vehicle.id).some(({ code }) => code === 'liftingPoint'))
      return refuse('lift.noPointCaution');
    const of = { jobId, vehicleId: vehicle.id };
    const { id } = rows.add('liftingPoints', { id: at.newId(), ...recordedBy(at), ...of, words });
    return { facts: { ...of, jobNumber: job.number }, created: { liftingPoints: id } };
  },
};
