import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';

/** A turn on the job: a few words beside the vehicle on every staff board and the wall, or none. */
export const setBoardNote: CommandRule<'setBoardNote'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: [] }),
  decide(rows, { jobId, note }) {
    const job = live(rows, 'job', jobId);
    if (!job) return notThere('job', jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    rows.change('job', jobId, { boardNote: note });
    return { facts: { jobId, hasNote: note !== null } };
  },
};
