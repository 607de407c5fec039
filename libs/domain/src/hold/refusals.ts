/** Refusals of the family "hold": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const holdRefusals = [
  /** A hold with this id is there already. Facts: holdId. */
  'hold.alreadyThere',
  /** A parts clerk alone opens holds for parts and for information only. Facts: reason. */
  'hold.mayNotOpen',
  /** A hold for parts names at least one part line (rule 6). */
  'hold.partsNeeded',
  /** Only a hold for parts names parts. Facts: reason. */
  'hold.partsElsewhere',
  /** A named part line belongs to another vehicle. Facts: partLineId. */
  'hold.partOfOtherVehicle',
  /** A named line belongs to another job. Facts: lineId. */
  'hold.lineOfOtherJob',
  /** A hold for setting, charging or cooling says when that will be over. */
  'hold.endMissing',
  /** The said end is not after the start. Facts: endsAt, fromAt (ISO). */
  'hold.endBeforeStart',
  /** The reason "other" needs words. */
  'hold.wordsMissing',
  /** It has ended already. Facts: holdId, endedHow. */
  'hold.endedAlready',
  /** None of the person's roles may end this hold by hand. Facts: holdId, reason. */
  'hold.mayNotEnd',
  /** A parts hold ended by hand, before its parts are here, needs words. Facts: holdId, missing (part lines). */
  'hold.endWordsMissing',
  /** The person named as having the move no longer works here. Facts: none. */
  'hold.personLeft',
  /** Only what sets, charges or cools has an end that is said beforehand. Facts: reason. */
  'hold.endNotSaid',
  /** A question with this id is there already. Facts: questionId. */
  'question.alreadyThere',
  /** The person who is asked no longer works here. Facts: none. */
  'question.personLeft',
  /** Somebody else was asked. Facts: questionId. */
  'question.notYours',
  /** It has its answer. Facts: questionId. */
  'question.answeredAlready',
] as const;
