import { holdReasons, jobEnds, jobKinds, leavesBy } from '@holdfast/domain';
import { z } from 'zod';
import { logEntry } from './change-log.js';
import { customerName, format, limit, numberCursor, pageOf, vehicleName } from './paging.js';
import { isoInstant, rowSchema, rowShape } from './rows.js';

/** `GET /api/jobs`: visits, newest number first. `open` are on the premises, `expected` are booked and not here yet. */
export const jobsQuery = z.strictObject({
  state: z.enum(['open', 'expected', 'ended']).default('open'),
  limit,
  after: numberCursor,
  format,
});
export type JobsQuery = z.infer<typeof jobsQuery>;

export const jobItem = z.strictObject({
  id: z.uuid(),
  number: z.int(),
  kind: z.enum(jobKinds),
  /** The line that a comeback came back for. */
  comebackOfLineId: z.uuid().nullable(),
  expectedAt: isoInstant.nullable(),
  arrivedAt: isoInstant.nullable(),
  checkedInAt: isoInstant.nullable(),
  promisedAt: isoInstant.nullable(),
  endedAt: isoInstant.nullable(),
  endedHow: z.enum(jobEnds).nullable(),
  leftBy: z.enum(leavesBy).nullable(),
  waitsHere: z.boolean(),
  vehicle: vehicleName,
  customer: customerName,
  /** Work lines that were not taken back. */
  lines: z.int(),
  /** Reasons of the holds that are open, first opened first. */
  openHolds: z.array(z.enum(holdReasons)),
});
export type JobItem = z.infer<typeof jobItem>;
export const jobsPage = pageOf(jobItem);
export type JobsPage = z.infer<typeof jobsPage>;

/** A reason why a hand-back would be refused now, with the row where the way out is. */
const blocker = z.strictObject({
  code: z.string(),
  facts: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
  sentence: z.string(),
  way: z.strictObject({ table: z.string(), id: z.string() }).nullable(),
});

const line = z.strictObject({ ...rowShape('workLine'), goAheads: z.array(rowSchema('goAhead')) });
const cause = z.strictObject({ ...rowShape('cause'), concernIds: z.array(z.uuid()) });
/** With the one before it at the same place on the vehicle, from whichever visit. */
const finding = z.strictObject({ ...rowShape('finding'), earlier: rowSchema('finding').nullable() });
/** `used`: the prices of this visit's lines that rest on it, in the shop's currency. */
const standingWithUse = z.strictObject({ ...rowShape('standingGoAhead'), used: z.string() });
const hold = z.strictObject({ ...rowShape('hold'), lineIds: z.array(z.uuid()), partLineIds: z.array(z.uuid()) });
const partLine = z.strictObject({
  ...rowShape('partLine'),
  dueIns: z.array(rowSchema('dueIn')),
  arrivals: z.array(rowSchema('arrival')),
});
export const fixWithChecks = z.strictObject({
  ...rowShape('temporaryFix'),
  secondChecks: z.array(rowSchema('secondCheck')),
});

/** `GET /api/jobs/:id`: one visit with everything that belongs to it, each list in the order in which it happened. */
export const jobView = z.strictObject({
  job: rowSchema('job'),
  vehicle: rowSchema('vehicle'),
  customer: rowSchema('customer').nullable(),
  contacts: z.array(rowSchema('contact')),
  cautions: z.array(rowSchema('caution')),
  odometerReadings: z.array(rowSchema('odometerReading')),
  concerns: z.array(rowSchema('concern')),
  attempts: z.array(rowSchema('attempt')),
  causes: z.array(cause),
  findings: z.array(finding),
  photos: z.array(rowSchema('photo')),
  lines: z.array(line),
  clocks: z.array(rowSchema('clock')),
  wheels: z.array(rowSchema('wheelRecord')),
  places: z.array(rowSchema('place')),
  spotUses: z.array(rowSchema('spotUse')),
  sublets: z.array(rowSchema('sublet')),
  holds: z.array(hold),
  questions: z.array(rowSchema('question')),
  /** Standing go-aheads that cover this visit, the ended ones that its lines rest on too. */
  standing: z.array(standingWithUse),
  partLines: z.array(partLine),
  orders: z.array(rowSchema('partsOrder')),
  /** Those of this visit, and what is still on from earlier ones. */
  temporaryFixes: z.array(fixWithChecks),
  /** Those that this visit made, and what is open on the vehicle. */
  followUps: z.array(rowSchema('followUp')),
  flags: z.array(rowSchema('flag')),
  reports: z.array(rowSchema('report')),
  sheets: z.array(rowSchema('sheet')),
  calls: z.array(rowSchema('call')),
  contactEntries: z.array(rowSchema('contactEntry')),
  /** What stands against a hand-back by road and on a transporter; null once the visit ended. Empty: ready for it. */
  blockers: z.strictObject({ road: z.array(blocker), transporter: z.array(blocker) }).nullable(),
  /** The changes of this visit, newest first, at most 200. */
  log: z.array(logEntry),
});
export type JobView = z.infer<typeof jobView>;
