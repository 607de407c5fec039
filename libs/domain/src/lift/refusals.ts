/** Refusals of the family "lift": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const liftRefusals = [
  /** The id that the client made is in use. Facts: id. */
  'lift.alreadyRecorded',
  /** Nothing in the bay lifts. Facts: bayId. */
  'lift.noneInBay',
  /** The inspection would lie after today. Facts: inspectedOn, today. */
  'lift.inspectedInFuture',
  /** The last inspection failed: a decision does not help, and the lift is not used before one has passed. Facts: inspectedOn. */
  'lift.failed',
  /** The last inspection still counts, or the shop follows no interval. Facts: dueOn (or null). */
  'lift.notOverdue',
  /** There was a decision on this overdue inspection. Facts: untilDay. */
  'lift.decidedAlready',
  /** The end lies before today or too far on. Facts: today, latest. */
  'lift.endOutside',
  /** It is out of use already. Facts: outageId, equipment (null: the whole bay). */
  'outage.already',
  /** No such equipment stands in the bay. Facts: equipment. */
  'outage.noSuchEquipment',
  /** It is in use again already. Facts: outageId. */
  'outage.over',
  /** The inspection of the lift is overdue, and no decision covers today. Facts: dueOn. */
  'lift.overdue',
  /** A caution speaks of lifting points, and nobody named those that are used on this visit. Facts: cautionId, code, act. */
  'lift.pointsNotNamed',
  /** No caution about lifting points stands on the vehicle. Facts: none. */
  'lift.noPointCaution',
] as const;
