import { partStates } from '@holdfast/domain';
import { z } from 'zod';
import { format, instantCursor, limit, pageOf } from './paging.js';
import { isoInstant, rowSchema, rowShape } from './rows.js';

/** `GET /api/part-lines`: first recorded first. `open` is what is neither fitted nor cancelled. */
export const partLinesQuery = z.strictObject({
  state: z.enum(['open', 'all', ...partStates]).default('open'),
  limit,
  after: instantCursor,
  format,
});
export type PartLinesQuery = z.infer<typeof partLinesQuery>;

export const partLineItem = z.strictObject({
  ...rowShape('partLine'),
  plate: z.string(),
  vehicleDescription: z.string(),
  jobNumber: z.int().nullable(),
  lineTitle: z.string().nullable(),
  supplierName: z.string().nullable(),
  orderReference: z.string().nullable(),
  /** Every date a supplier named for it, in the order in which they were told. */
  dueIns: z.array(rowSchema('dueIn')),
  /** The open holds that wait for it, longest first. */
  holds: z.array(z.strictObject({ holdId: z.uuid(), jobId: z.uuid(), fromAt: isoInstant })),
});
export const partLinesPage = pageOf(partLineItem);
export type PartLinesPage = z.infer<typeof partLinesPage>;

/** `GET /api/orders`: newest first. */
export const ordersQuery = z.strictObject({ limit, after: instantCursor, format });
export type OrdersQuery = z.infer<typeof ordersQuery>;

export const ordersPage = pageOf(
  z.strictObject({
    ...rowShape('partsOrder'),
    supplierName: z.string(),
    partLines: z.array(
      z.strictObject({
        id: z.uuid(),
        vehicleId: z.uuid(),
        jobId: z.uuid().nullable(),
        plate: z.string(),
        jobNumber: z.int().nullable(),
        description: z.string(),
        quantity: z.string(),
        unit: z.string(),
        here: z.string(),
        state: z.enum(partStates),
        dueOn: z.iso.date().nullable(),
      }),
    ),
  }),
);
export type OrdersPage = z.infer<typeof ordersPage>;
