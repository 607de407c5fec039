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
  /** A record is not merged with itself. Facts: none. */
  'merge.withItself',
  /** Both have a visit on the premises. Facts: number, otherNumber. */
  'merge.bothHere',
  /** At some time both were in a place at once. Facts: none. */
  'merge.placesOverlap',
  /** A visit of this customer, or of a vehicle of theirs, is on the premises. Facts: number. */
  'erase.visitHere',
  /** Somebody has looked at it already. Facts: flagId. */
  'flag.clearedAlready',
  /** Another row names the entry that is to be struck. Facts: table (of the entry), by (of the row that names it). */
  'entry.named',
  /** A vehicle is somewhere: its stay is corrected, not struck. Facts: none. */
  'entry.placeStays',
] as const;
