import { z } from 'zod';
import { jobItem } from './jobs.js';
import { vehicleName } from './paging.js';
import { rowSchema } from './rows.js';

/** `GET /api/customers/:id`: a customer with contacts, standing go-aheads, vehicles and the last visits. */
export const customerView = z.strictObject({
  customer: rowSchema('customer'),
  /** Those that are no longer contacts last. */
  contacts: z.array(rowSchema('contact')),
  /** Those that hold first. */
  standing: z.array(rowSchema('standingGoAhead')),
  vehicles: z.array(vehicleName),
  /** Newest first, at most fifty. */
  jobs: z.array(jobItem),
});
export type CustomerView = z.infer<typeof customerView>;
