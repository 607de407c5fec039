import { z } from 'zod';
import { jobItem } from './jobs.js';
import { cursor, format, limit, pageOf, vehicleName } from './paging.js';
import { rowSchema } from './rows.js';

/** `GET /api/customers`: in the order of their folded names; those that turned out to be another one are left out. */
export const customersQuery = z.strictObject({ limit, after: cursor('[^\\u0000-\\u001f\\u007f]{1,300}'), format });
export type CustomersQuery = z.infer<typeof customersQuery>;

export const customersPage = pageOf(
  z.strictObject({
    id: z.uuid(),
    name: z.string(),
    fleet: z.string().nullable(),
    contacts: z.array(z.strictObject({ name: z.string(), phone: z.string().nullable(), mail: z.string().nullable() })),
    /** How many are theirs. */
    vehicles: z.int(),
  }),
);
export type CustomersPage = z.infer<typeof customersPage>;

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
