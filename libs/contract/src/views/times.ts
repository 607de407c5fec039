import { z } from 'zod';
import { format } from './paging.js';
import { isoInstant, rowSchema } from './rows.js';

const dayMs = 86_400_000;
const longestDays = 31;
const day = z.iso.date().regex(/^(19[7-9]|20\d|21\d)\d-/);

/** `GET /api/times`: the entries behind the figures, of working days of the shop (both included) or of one visit. */
export const timesQuery = z
  .strictObject({
    from: day.optional(),
    to: day.optional(),
    job: z.uuid().optional(),
    person: z.uuid().optional(),
    format,
  })
  .refine(({ from, to, job }) => job !== undefined || (from !== undefined && to !== undefined), {
    path: ['from'],
    message: 'Name the days, or the job.',
  })
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    path: ['to'],
    message: 'The last day lies before the first.',
  })
  .refine(
    ({ from, to }) =>
      from === undefined || to === undefined || (Date.parse(to) - Date.parse(from)) / dayMs < longestDays,
    { path: ['to'], message: 'At most 31 days at once.' },
  );
export type TimesQuery = z.infer<typeof timesQuery>;

/** A stretch that ended is left to the past: `to` is where it ends inside what was asked for, or null while it runs. */
const times = {
  /** Whose clocks and presence: everybody's for owner and manager, else one's own. */
  clocks: z.array(rowSchema('clock')),
  attendance: z.array(rowSchema('attendance')),
  stays: z.array(rowSchema('place')),
  holds: z.array(rowSchema('hold')),
  /** What was put right among them: the entry as it stood before, the one that stands, who, when and why. */
  corrections: z.array(rowSchema('correction')),
  /** Names for the entries above. */
  jobs: z.array(
    z.strictObject({ id: z.uuid(), number: z.int(), plate: z.string(), description: z.string(), ended: z.boolean() }),
  ),
  lines: z.array(z.strictObject({ id: z.uuid(), jobId: z.uuid(), title: z.string() })),
};

export const timesView = z.strictObject({
  from: isoInstant.nullable(),
  to: isoInstant.nullable(),
  /** Months `YYYY-MM` that are closed against correction. */
  closedMonths: z.array(z.string()),
  ...times,
});
export type TimesView = z.infer<typeof timesView>;
