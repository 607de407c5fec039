import { drives, vehicleKinds } from '@holdfast/domain';
import { z } from 'zod';
import { fixWithChecks, jobItem } from './jobs.js';
import { cursor, customerName, format, limit, pageOf } from './paging.js';
import { isoInstant, rowSchema } from './rows.js';

/** `GET /api/vehicles`: in the order of their folded plates. */
export const vehiclesQuery = z.strictObject({ limit, after: cursor('[^\\u0000-\\u001f\\u007f]{1,200}'), format });
export type VehiclesQuery = z.infer<typeof vehiclesQuery>;

export const vehiclesPage = pageOf(
  z.strictObject({
    id: z.uuid(),
    plate: z.string(),
    description: z.string(),
    vin: z.string().nullable(),
    kind: z.enum(vehicleKinds),
    drive: z.enum(drives),
    curbKg: z.int().nullable(),
    grossKg: z.int().nullable(),
    customer: customerName,
    /** Of the first contact of the customer that has one. */
    phone: z.string().nullable(),
    /** The visit it is here for. */
    openJobId: z.uuid().nullable(),
    /** Temporary fixes that have not ended, and follow-ups that are open. */
    fixesOn: z.int(),
    followUpsOpen: z.int(),
  }),
);
export type VehiclesPage = z.infer<typeof vehiclesPage>;

const workDone = z.strictObject({
  lineId: z.uuid(),
  jobId: z.uuid(),
  jobNumber: z.int(),
  title: z.string(),
  endedAt: isoInstant,
  guaranteeUntil: z.iso.date().nullable(),
});
const partFitted = z.strictObject({
  partLineId: z.uuid(),
  jobId: z.uuid().nullable(),
  number: z.string().nullable(),
  description: z.string(),
  endedAt: isoInstant.nullable(),
  guaranteeUntil: z.iso.date().nullable(),
});

/** `GET /api/vehicles/:id`: the vehicle with its history. */
export const vehicleView = z.strictObject({
  vehicle: rowSchema('vehicle'),
  customer: rowSchema('customer').nullable(),
  contacts: z.array(rowSchema('contact')),
  /** Open ones first, then those that ended, newest first. */
  cautions: z.array(rowSchema('caution')),
  odometerReadings: z.array(rowSchema('odometerReading')),
  /** Newest first; those that are expected too. */
  jobs: z.array(jobItem),
  /** Lines done and parts fitted, newest first, with the last day of the guarantee that the shop gives on them. */
  workDone: z.array(workDone),
  partsFitted: z.array(partFitted),
  corrections: z.array(rowSchema('vehicleCorrection')),
  contactEntries: z.array(rowSchema('contactEntry')),
  standing: z.array(rowSchema('standingGoAhead')),
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
