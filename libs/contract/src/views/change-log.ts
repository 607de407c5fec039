import { z } from 'zod';
import { instantCursor, limit, numberCursor, pageOf } from './paging.js';
import { isoInstant } from './rows.js';

const day = z.iso.date().regex(/^(19[7-9]|20\d|21\d)\d-/);

/**
 * `GET /api/change-log`: accepted commands, newest first; of one person, visit, vehicle, bay or command where it is named,
 * and of working days of the shop, both included, by when they were recorded. `csv` and `jsonl`: all of them as a file.
 */
export const changeLogQuery = z
  .strictObject({
    limit,
    after: numberCursor,
    job: z.uuid().optional(),
    vehicle: z.uuid().optional(),
    bay: z.uuid().optional(),
    person: z.uuid().optional(),
    command: z
      .string()
      .regex(/^[a-z][A-Za-z]{1,40}$/)
      .optional(),
    from: day.optional(),
    to: day.optional(),
    format: z.enum(['json', 'csv', 'jsonl']).optional(),
  })
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    path: ['to'],
    message: 'The last day lies before the first.',
  });
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

const subjects = z.strictObject({
  job: z.array(z.uuid()),
  vehicle: z.array(z.uuid()),
  bay: z.array(z.uuid()),
  hints: z.array(z.string()),
});

/** What an entry is about, by the words people know it by: numbers of visits, plates, names of bays. */
const about = z.strictObject({
  jobs: z.array(z.strictObject({ id: z.uuid(), number: z.int() })),
  vehicles: z.array(z.strictObject({ id: z.uuid(), plate: z.string() })),
  bays: z.array(z.strictObject({ id: z.uuid(), name: z.string() })),
});

export const changeLogItem = z.strictObject({ ...logEntry.shape, subjects, about });
export type ChangeLogItem = z.infer<typeof changeLogItem>;
export const changeLogPage = pageOf(changeLogItem);
export type ChangeLogPage = z.infer<typeof changeLogPage>;

/** `GET /api/change-log/reads`: who read the log, newest first. */
export const logReadsQuery = z.strictObject({ limit, after: instantCursor });
export type LogReadsQuery = z.infer<typeof logReadsQuery>;

export const logReadsPage = pageOf(
  z.strictObject({
    id: z.uuid(),
    readAt: isoInstant,
    personId: z.uuid(),
    filter: z.record(z.string(), z.string()),
    form: z.enum(['page', 'csv', 'jsonl']),
    /** Entries that were given. */
    entries: z.int(),
  }),
);
export type LogReadsPage = z.infer<typeof logReadsPage>;
