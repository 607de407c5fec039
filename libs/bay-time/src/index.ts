/**
 * Bay time: what became of every opening millisecond of a bay.
 *
 * Hidden here: how stays, clocks, holds, go-aheads, breaks and opening time are laid over each other. Guaranteed: each
 * opening millisecond falls in exactly one class, so that the classes add up to opening time exactly, whatever the
 * input; bay-hours (clocks united) and technician-hours (clocks added up) are never mixed; work outside opening time
 * is in no class. It knows no rows of the domain, only ids and intervals.
 */
export { isOutsider, outsiderId, usualGraceMs } from './account-input.js';
export type {
  GoAheadAnswer,
  JobClock,
  JobHold,
  JobLine,
  Span,
  SpotInput,
  SpotStay,
  StoredMark,
} from './account-input.js';
export { waitsOfJob } from './job-waits.js';
export type { JobRows, Wait } from './job-waits.js';
export { bayTimeClasses, partition } from './partition.js';
export type { BayTimeClass, PersonStretch, Segment, SpotAccount } from './partition.js';
export { sumTotals, totalsOfAccount, totalsPer } from './totals.js';
export type { BayTimeTotals } from './totals.js';
