import { z } from 'zod';
import { limit, numberCursor, pageOf } from './paging.js';
import { isoInstant } from './rows.js';

/** `GET /api/log`: accepted commands, newest first; of one job where it is named. */
export const changeLogQuery = z.strictObject({ limit, after: numberCursor, job: z.uuid().optional() });
export type ChangeLogQuery = z.infer<typeof changeLogQuery>;

/** One accepted command: ids, numbers and words of closed lists; no names and no free text. */
export const logEntry = z.strictObject({
  seq: z.int(),
  /** When it was recorded, and when it happened. */
  at: isoInstant,
  effectiveAt: isoInstant,
  command: z.string(),
  personId: z.uuid().nullable(),
  device: z.string().nullable(),
  facts: z.record(z.string(), z.unknown()),
});
export type LogEntryView = z.infer<typeof logEntry>;

export const changeLogPage = pageOf(
  z.strictObject({
    ...logEntry.shape,
    subjects: z.strictObject({
      job: z.array(z.uuid()),
      vehicle: z.array(z.uuid()),
      bay: z.array(z.uuid()),
      hints: z.array(z.string()),
    }),
  }),
);
export type ChangeLogPage = z.infer<typeof changeLogPage>;
