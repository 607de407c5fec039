import { z } from 'zod';
import { fixWithChecks, jobItem } from './jobs.js';
import { cursor, customerName, limit, pageOf } from './paging.js';
import { rowSchema } from './rows.js';

/** `GET /api/vehicles`: in the order of their folded plates. */
export const vehiclesQuery = z.strictObject({ limit, after: cursor('[^\\u0000-\\u001f\\u007f]{1,200}') });
export type VehiclesQuery = z.infer<typeof vehiclesQuery>;

export const vehiclesPage = pageOf(
  z.strictObject({
    id: z.uuid(),
    plate: z.string(),
    description: z.string(),
    vin: z.string().nullable(),
    customer: customerName,
    /** The visit it is here for. */
    openJobId: z.uuid().nullable(),
    /** Temporary fixes that have not ended, and follow-ups that are open. */
    fixesOn: z.int(),
    followUpsOpen: z.int(),
  }),
);
export type VehiclesPage = z.infer<typeof vehiclesPage>;

/** `GET /api/vehicles/:id`: the vehicle with its history. */
export const vehicleView = z.strictObject({
  vehicle: rowSchema('vehicle'),
  customer: rowSchema('customer').nullable(),
  contacts: z.array(rowSchema('contact')),
  /** Open ones first, then those that ended, newest first. */
  cautions: z.array(rowSchema('caution')),
  odometerReadings: z.array(rowSchema('odometerReading')),
  /** Newest first. */
  jobs: z.array(jobItem),
  /** By place on the vehicle, newest first at each. */
  findings: z.array(rowSchema('finding')),
  photos: z.array(rowSchema('photo')),
  temporaryFixes: z.array(fixWithChecks),
  followUps: z.array(rowSchema('followUp')),
  /** Neither fitted nor cancelled. */
  partLines: z.array(rowSchema('partLine')),
  sheets: z.array(rowSchema('sheet')),
});
export type VehicleView = z.infer<typeof vehicleView>;
