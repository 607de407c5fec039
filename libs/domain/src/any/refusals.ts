/** Refusals of the family "any": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const anyRefusals = [
  /** Somebody else's change. Facts: seq. */
  'change.notYours',
  /** More than ten minutes old. Facts: seq, minutes. */
  'change.tooOld',
  /** Commands of this name have their own way back. Facts: command. */
  'change.hasOwnWayBack',
  /** Something was built on what it wrote. Facts: table, id. */
  'change.builtOn',
  /** A spot, a vehicle or a person is taken by what came later. Facts: table. */
  'change.clashes',
  /** The card is settled. Facts: state. */
  'card.settled',
  /** A technician settles the own cards. Facts: none. */
  'card.notYours',
  /** The vehicle has left; the report cannot be taken any more. Facts: jobNumber. */
  'card.jobEnded',
  /** The line has ended; the report cannot be taken any more. Facts: progress. */
  'card.lineEnded',
  /** By now the vehicle or the spot is known to have been elsewhere at that time. Facts: none. */
  'card.overtaken',
  /** Somebody has looked at it already. Facts: flagId. */
  'flag.clearedAlready',
] as const;
