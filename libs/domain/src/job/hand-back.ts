import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { handBackBlockers } from './hand-back-blockers.js';
import { closeVisit, handOnParts, keepAllowances } from './leaving.js';

/**
 * A turn on the job: the vehicle goes to its owner, by road or on a transporter, and somebody acknowledges it by name.
 * Refused with every reason of rule 9 at once. Open holds end with it (see ../settle). The sheet is frozen as it is then.
 */
export const handBack: CommandRule<'handBack'> = {
  needs: (input) => ({ jobs: [input.jobId] }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    if (job.arrivedAt === null) return refuse('handBack.notArrived', { number: job.number });
    const blockers = handBackBlockers(rows, input, at.by);
    if (blockers.length > 0) return new Refused(blockers);
    const allowed = keepAllowances(rows, input, at, job.vehicleId);
    handOnParts(rows, job.id);
    const sheet = closeVisit(rows, at, job, input, { endedHow: 'handedBack', words: null });
    const { leavesBy, receivedHow } = input;
    return {
      facts: { jobId: job.id, vehicleId: job.vehicleId, number: job.number, leavesBy, receivedHow, allowed },
      created: { sheet },
    };
  },
};
