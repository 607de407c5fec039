/** The visit that a command names: its job and its vehicle, where both are there. */
import type { Refused } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from './place-and-work.js';
import { notThere } from './references.js';
import type { Row } from '../tables/tables.js';

export interface Visit {
  readonly job: Row<'job'>;
  readonly vehicle: Row<'vehicle'>;
}

export function visitOf(rows: Rows, jobId: string): Visit | Refused {
  const job = live(rows, 'job', jobId);
  const vehicle = job && live(rows, 'vehicle', job.vehicleId);
  return job && vehicle ? { job, vehicle } : notThere('job', jobId);
}
