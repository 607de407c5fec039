/** Refusals of the family "work": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const workRefusals = [
  /** The visit has ended. Facts: jobNumber. */
  'work.jobEnded',
  /** The id that the client made for the line, the clock or the follow-up is in use. Facts: table, id. */
  'work.alreadyRecorded',
  /** A concern, finding or earlier line of another visit was named. Facts: table, id. */
  'work.otherJob',
  /** The follow-up is closed, or a line of this visit was made from it before. Facts: none. */
  'work.followUpTaken',
  /** The line is done, carried over or dropped. Facts: progress. */
  'work.lineEnded',
  /** The customer has not given the go-ahead (rule 5). Facts: goAhead. */
  'work.noGoAhead',
  /** The person lacks the skill that the line needs. Facts: skill. */
  'work.skillMissing',
  /** The line that comes first is not done. Facts: beforeLineId. */
  'work.afterUnfinished',
  /** The person is on a clock already. Facts: lineId, since (ISO). */
  'work.onAnotherClock',
  /** The person no longer works here. Facts: none. */
  'work.personLeft',
  /** Only manager or owner starts and stops the clocks of others. Facts: none. */
  'work.othersClock',
  /** The clock has stopped. Facts: since (ISO). */
  'work.clockStopped',
  /** A clock runs on the line. Facts: none. */
  'work.clockRuns',
  /** Nobody was ever on this line's clock, and no words say what was done. Facts: none. */
  'work.neverStarted',
  /** What was never started is dropped or deferred, not carried over. Facts: none. */
  'work.notStarted',
  /** This shop's floor does not record go-aheads. Facts: none. */
  'work.goAheadNotYours',
  /** A given go-ahead needs a name and a way. Facts: none. */
  'work.goAheadByWhom',
  /** The shop's own go-ahead: by manager or owner, for what the shop or a guarantee pays or for a comeback. Facts: none. */
  'work.goAheadOfShop',
  /** The amount does not cover the price. Facts: price, upTo, tolerancePercent. */
  'work.amountBelowPrice',
  /** Another line of the choice has the go-ahead. Facts: lineId. */
  'work.choiceTaken',
  /** A change of mind on a started line: stop, put back, charge what was done. Facts: none. */
  'work.startedAlready',
] as const;
