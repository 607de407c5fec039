/**
 * Returns: when vehicles come back, and for what together.
 *
 * Hidden here: how needs and limits make windows, how links tighten them, and how the fewest days are found that meet them
 * all. Guaranteed: what is urgent is never put off to be bundled; nothing is proposed outside its window, before what it
 * waits for, on a day that does not suit the customer or has no room; a window without a day comes first, with the days
 * missing; every follow-up comes out exactly once. Days are dates of the shop's zone; the clock is the caller's.
 */
export { firstNotBefore, lastNotAfter } from './day-room.js';
export type { CustomersDays } from './day-room.js';
export { earliestPoints, latestPoints } from './fewest-points.js';
export type { ClosedInterval, Points } from './fewest-points.js';
export { firstLimit, inOrder } from './follow-up-windows.js';
export type {
  FirstDay,
  FirstDayReason,
  FollowUpLimit,
  NeededPart,
  OpenFollowUp,
  Ordered,
} from './follow-up-windows.js';
export { chanceAllHere, proposeReturns } from './propose.js';
export type {
  BookedReturn,
  EmptyWindow,
  NotPlanned,
  ProposedReturn,
  ReturnsInput,
  ReturnsProposal,
  WhatCanBeDone,
} from './proposal.js';
