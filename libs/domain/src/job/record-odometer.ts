import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { recordOdometer as keepReading } from './odometer.js';

/** A fact: what the odometer shows, in its own unit, on a visit or between visits. A falling one is kept and flagged. */
export const recordOdometer: CommandRule<'recordOdometer'> = {
  needs: ({ vehicleId, jobId }) => ({ vehicles: [vehicleId], ...(jobId === undefined ? {} : { jobs: [jobId] }) }),
  decide(rows, input, at) {
    const { vehicleId, unit, source, value = null } = input;
    if (!live(rows, 'vehicle', vehicleId)) return notThere('vehicle', vehicleId);
    const named = input.jobId === undefined ? openJobOf(rows, vehicleId) : live(rows, 'job', input.jobId);
    if (input.jobId !== undefined && named?.vehicleId !== vehicleId) return notThere('job', input.jobId);
    if (value === null && source !== 'notReadable') return refuse('odometer.valueMissing');
    const jobId = named?.id ?? null;
    keepReading(rows, at, { vehicleId, jobId }, { value, unit, source });
    return { facts: { vehicleId, jobId, source } };
  },
};
