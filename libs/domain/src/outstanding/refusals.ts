/** Refusals of the family "outstanding": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const outstandingRefusals = [
  /** A temporary fix with this id is there already. Facts: temporaryFixId. */
  'fix.alreadyThere',
  /** A second check with this id is there already. Facts: secondCheckId. */
  'fix.checkAlreadyThere',
  /** A temporary fix needs at least one limit (rule 7). */
  'fix.limitMissing',
  /** The named season has ended. Facts: seasonId. */
  'fix.seasonEnded',
  /** The named line belongs to another job, or at its end to another vehicle. Facts: lineId. */
  'fix.lineElsewhere',
  /** The named follow-up belongs to another vehicle. Facts: followUpId. */
  'fix.followUpElsewhere',
  /** Only a fix that is still on can be checked. Facts: temporaryFixId, state. */
  'fix.notOn',
  /** The person has no valid skill to make second checks. Facts: personId. */
  'fix.checkSkillMissing',
  /** Who recorded the fix cannot check it. Facts: temporaryFixId, tier. */
  'fix.checkBySamePerson',
  /** The shop's interval before the same person may check again is not over. Facts: temporaryFixId, minutes (still to wait). */
  'fix.recheckTooEarly',
  /** It has ended already. Facts: temporaryFixId, endedHow. */
  'fix.endedAlready',
  /** It is recorded as failed, or as removed, already. Facts: temporaryFixId, state. */
  'fix.stateAlready',
  /** "Repaired for good" names the line that did it. Facts: temporaryFixId. */
  'fix.lineMissing',
  /** The line that is said to have repaired it is not done. Facts: lineId, progress. */
  'fix.lineNotDone',
  /** How it was learnt is missing or does not fit: mended elsewhere is told or seen, a refusal is told or signed. Facts: how. */
  'fix.toldHowMissing',
  /** Such an end needs words. Facts: how. */
  'fix.wordsMissing',
  /** A follow-up with this id is there already. Facts: followUpId. */
  'followUp.alreadyThere',
  /** The named season has ended. Facts: seasonId. */
  'followUp.seasonEnded',
  /** A job, line, part line, temporary fix or follow-up that it names belongs to another vehicle. Facts: table, id. */
  'followUp.ofOtherVehicle',
  /** A named part line is still wanted for a line that goes on. Facts: partLineId, lineId. */
  'followUp.partStillWanted',
  /** It has been closed already. Facts: followUpId, state. */
  'followUp.closedAlready',
  /** Its temporary fix is still on the vehicle, failed or removed, and has not ended. Facts: followUpId, temporaryFixId, state. */
  'followUp.fixStillOn',
  /** The line that is said to have done it is not done. Facts: lineId, progress. */
  'followUp.lineNotDone',
  /** Dropping it needs words. */
  'followUp.wordsMissing',
  /** A re-torque says within what distance, and in words where that comes from. */
  'outstanding.retorqueNeedsDistance',
] as const;
