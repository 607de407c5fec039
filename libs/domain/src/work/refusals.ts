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
  /** A line cannot come after itself, nor after one that waits for it. Facts: lineId (the one named as coming first). */
  'work.afterItself',
  /** Only the owner takes away or changes a skill that guards its line: rule 5. Facts: skill. */
  'work.skillGuarded',
  /** A choice is between two lines at least. Facts: none. */
  'work.choiceOfOne',
  /** The line is one of another choice. Facts: lineId. */
  'work.inOtherChoice',
  /** Two lines of a choice would have the go-ahead. Facts: lineId (the second one). */
  'work.choiceGivenTwice',
  /** A standing go-ahead is not named where the line is to rest on one, or is named where it does not. Facts: none. */
  'work.standingMissing',
  /** The standing go-ahead does not cover this visit today. Facts: none. */
  'work.standingNotForThis',
  /** A line without a price rests on no standing go-ahead. Facts: none. */
  'work.standingNeedsPrice',
  /** Not enough is left under the standing go-ahead. Facts: left, price. */
  'work.standingUsedUp',
  /** This contact of the customer may not agree to so much. Facts: limit ("0": to nothing), amount. */
  'work.contactMayNotAgree',
  /** There is no go-ahead to withdraw. Facts: goAhead. */
  'work.notGiven',
  /** The go-ahead was withdrawn: what was done is put back and charged, the line is dropped. Facts: none. */
  'work.goAheadWithdrawn',
  /** Dropping what was begun and withdrawn says what is charged. Facts: none. */
  'work.chargeMissing',
  /** A charge is for what was begun and withdrawn only. Facts: none. */
  'work.chargeNotDue',
  /** Only a line that has ended is reopened. Facts: none. */
  'work.lineOpen',
  /** Something has come of the follow-up that the line was carried over to. Facts: none. */
  'work.followUpGoesOn',
  /** No vehicle has a wheel at that place. Facts: position. */
  'wheel.positionUnknown',
  /** A torque is more than nought. Facts: torque. */
  'wheel.torqueNotPositive',
  /** A torque from another source says from which. Facts: none. */
  'wheel.sourceMissing',
  /** The follow-up is not about tightening wheels again. Facts: followUpId. */
  'wheel.notRetorque',
] as const;
