import { z } from 'zod';
import { format } from './paging.js';
import { isoInstant } from './rows.js';

const dayMs = 86_400_000;
const longestDays = 400;
const longestWithSegmentsDays = 31;

/** Days that a shop can have had, well inside what a calendar knows. */
const day = z.iso.date().regex(/^(19[7-9]|20\d|21\d)\d-/);

const daysIn = ({ from, to }: { readonly from: string; readonly to: string }): number =>
  (Date.parse(to) - Date.parse(from)) / dayMs + 1;

/** `GET /api/bay-time`: working days of the shop, both included. */
export const bayTimeQuery = z
  .strictObject({ from: day, to: day, segments: z.enum(['true', 'false']).default('false'), format })
  .refine((query) => daysIn(query) >= 1, { path: ['to'], message: 'The last day lies before the first.' })
  .refine((query) => daysIn(query) <= longestDays, { path: ['to'], message: 'At most 400 days at once.' })
  .refine((query) => query.segments === 'false' || daysIn(query) <= longestWithSegmentsDays, {
    path: ['segments'],
    message: 'Segments are given for at most 31 days.',
  });
export type BayTimeQuery = z.infer<typeof bayTimeQuery>;

const ms = z.int().min(0);
const share = z.number().min(0).max(1).nullable();
const classes = z.enum(['outOfUse', 'worked', 'stored', 'held', 'noReason', 'break', 'empty']);

/** Whole milliseconds. The classes add up to `openMs` exactly; technicians' time is another measure and never in them. */
const totals = z.strictObject({
  classMs: z.record(classes, ms),
  heldMs: z.record(z.string(), ms),
  openMs: ms,
  availableMs: ms,
  occupiedMs: ms,
  /** occupied / available. */
  occupancy: share,
  /** worked / available, shown as bay use. */
  utilisation: share,
  technicianMs: ms,
  technicianOvertimeMs: ms,
});

const segment = z.strictObject({
  from: isoInstant,
  to: isoInstant,
  class: classes,
  reason: z.string().nullable(),
  holdId: z.uuid().nullable(),
  jobId: z.uuid().nullable(),
});

export const bayTimeView = z.strictObject({
  from: z.iso.date(),
  to: z.iso.date(),
  zone: z.string(),
  /** The shop's time: what lies after it has not happened and is in no class; what is running ends here. */
  now: isoInstant,
  /** Opening time of the days asked for, breaks included, up to their end even where that is still to come. */
  open: z.array(z.tuple([isoInstant, isoInstant])),
  totals,
  /** In the order of the building. */
  bays: z.array(
    z.strictObject({
      bayId: z.uuid(),
      name: z.string(),
      totals,
      spots: z.array(z.strictObject({ spot: z.int(), totals, segments: z.array(segment).optional() })),
    }),
  ),
});
export type BayTimeView = z.infer<typeof bayTimeView>;
