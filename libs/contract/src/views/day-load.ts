import { z } from 'zod';

/** `GET /api/day-load?from=&days=`: how full the coming days are, days of the shop's zone. */
export const dayLoadQuery = z.strictObject({
  from: z.iso.date().optional(),
  days: z
    .string()
    .regex(/^[1-9]\d?$/)
    .optional(),
});
export type DayLoadQuery = z.infer<typeof dayLoadQuery>;

export const dayLoadView = z.strictObject({
  days: z.array(
    z.strictObject({
      day: z.iso.date(),
      /** What the technicians of the shop are there for within its hours, less breaks, minutes; today only what is left. */
      peopleMinutes: z.int(),
      /** Book minutes with the go-ahead that fall to this day; see `spreadLoad` of the server for how. */
      loadMinutes: z.int(),
      /** Of these, the lines of visits that are booked for this day. */
      bookedMinutes: z.int(),
      bookedJobs: z.int(),
    }),
  ),
  /** Lines with the go-ahead and without book hours, which no day shows. */
  linesWithoutHours: z.int(),
});
export type DayLoadView = z.infer<typeof dayLoadView>;
