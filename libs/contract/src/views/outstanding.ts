import { z } from 'zod';
import { fixWithChecks } from './jobs.js';
import { cursor, customerName, format, limit, vehicleName } from './paging.js';
import { rowSchema } from './rows.js';

/** `GET /api/outstanding`: temporary fixes that have not ended and follow-ups that are open, of the shop or of a vehicle. */
export const outstandingQuery = z.strictObject({
  vehicle: z.uuid().optional(),
  limit,
  after: cursor('(?:\\d{4}-\\d\\d-\\d\\d|none)'),
  format,
});
export type OutstandingQuery = z.infer<typeof outstandingQuery>;

const aboutVehicle = {
  vehicle: vehicleName,
  customer: customerName,
  /** The visit the vehicle is here for. */
  openJobId: z.uuid().nullable(),
  /**
   * The earliest day that a limit can be given, in the zone of the shop: the day itself, so many days since, the first
   * day of a season (or of the next one, where it was recorded inside one). Null where none has a day.
   */
  firstLimit: z
    .strictObject({
      day: z.iso.date(),
      by: z.enum(['beforeDay', 'withinDays', 'season']),
      seasonId: z.uuid().nullable(),
    })
    .nullable(),
  /** Limits that only the odometer tells and that have no day here; one of them may be reached first. */
  undated: z.array(z.enum(['beforeOdometer', 'withinDistance'])),
};

export const outstandingItem = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('temporaryFix'), row: fixWithChecks, ...aboutVehicle }),
  z.strictObject({ kind: z.literal('followUp'), row: rowSchema('followUp'), ...aboutVehicle }),
]);
export type OutstandingItem = z.infer<typeof outstandingItem>;

/** By the day of the first limit, those without a day last; then by id. */
export const outstandingPage = z.strictObject({
  /** The shop's day: a limit before it has passed. */
  today: z.iso.date(),
  items: z.array(outstandingItem),
  next: z.string().nullable(),
});
export type OutstandingPage = z.infer<typeof outstandingPage>;
