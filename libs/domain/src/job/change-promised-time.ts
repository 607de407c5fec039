import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { promisedTooEarly } from './promised-time.js';

/** A turn on the job: another promised time (epoch ms), or none. Refused for a time before now and on an ended job. */
export const changePromisedTime: CommandRule<'changePromisedTime'> = {
  needs: (input) => ({ jobs: [input.jobId], tables: [] }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    const refused = promisedTooEarly(input.promisedAt, at);
    if (refused) return refused;
    rows.change('job', job.id, { promisedAt: input.promisedAt });
    const iso = (instant: number | null): string | null => (instant === null ? null : new Date(instant).toISOString());
    return { facts: { jobId: job.id, before: iso(job.promisedAt), promisedAt: iso(input.promisedAt) } };
  },
};
