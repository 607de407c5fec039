/** The fields that commands are made of. Wire shapes only: no transforms, so that OpenAPI says what is checked. */
import { z } from 'zod';

/** No control characters but line breaks and tabs: PostgreSQL refuses NUL, people never type the others. */
const plainText = /^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ud800-\udfff]*$/u;

export const uuid = z.uuid().meta({ description: 'UUID; UUIDv7 for new rows' });
export const shortText = (max: number) => z.string().min(1).max(max).regex(plainText).regex(/\S/u);
export const name = shortText(120);
export const words = shortText(2000);
export const title = shortText(200);
export const instant = z.iso.datetime({ offset: true }).meta({ description: 'ISO 8601 instant with offset' });
export const day = z.iso.date().meta({ description: 'Calendar day in the zone of the shop, YYYY-MM-DD' });
export const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/)
  .meta({ description: 'Local time HH:MM' });
export const monthDay = z
  .string()
  .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/)
  .meta({ description: 'MM-DD' });
export const month = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])$/)
  .meta({ description: 'Month in the zone of the shop, YYYY-MM' });
export const money = z
  .string()
  .regex(/^\d{1,9}(\.\d{1,4})?$/)
  .meta({ description: 'Decimal, currency of the shop' });
export const quantity = z
  .string()
  .regex(/^(?!0+(\.0+)?$)\d{1,6}(\.\d{1,3})?$/)
  .meta({ description: 'Decimal above nought, in the unit of the part line' });
export const measure = z
  .string()
  .regex(/^-?\d{1,9}(\.\d{1,6})?$/)
  .meta({ description: 'Decimal in the unit beside it' });
export const minutes = z.int().min(0).max(60_000);
export const kilograms = z.int().min(1).max(100_000);
export const distance = z.int().min(0).max(9_999_999);
export const password = z.string().min(1).max(256);

export const hoursOfDay = z.array(z.tuple([clockTime, clockTime])).max(6);
export const week = z.strictObject({
  mon: hoursOfDay,
  tue: hoursOfDay,
  wed: hoursOfDay,
  thu: hoursOfDay,
  fri: hoursOfDay,
  sat: hoursOfDay,
  sun: hoursOfDay,
});

/** A turn carries the version of its row, or the key of one's own earlier command that last changed it. */
export const turn = { version: z.int().min(1).optional(), afterKey: uuid.optional() };
/** When it happened, for what is reported after the fact; never later than now. */
export const at = { at: instant.optional() };
