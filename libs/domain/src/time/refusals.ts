/** Refusals of the family "time": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const timeRefusals = [
  /** Only manager or owner says for somebody else that they are here or not. Facts: none. */
  'time.othersAttendance',
  /** Shop time says what it is for. Facts: none. */
  'time.wordMissing',
  /** The id that the client made for the row is in use. Facts: table, id. */
  'time.alreadyRecorded',
  /** Somebody else's time: manager or owner corrects it. Facts: none. */
  'time.notYours',
  /** Own times are corrected on the working day they are of. Facts: none. */
  'time.dayIsOver',
  /** The end is not after the beginning. Facts: fromAt, toAt (ISO). */
  'time.endBeforeStart',
  /** Nothing would be other than it is. Facts: none. */
  'time.nothingChanged',
  /** What is over does not run again: its visit or its line has ended. Facts: none. */
  'time.cannotRun',
  /** The person was on another clock. Facts: jobNumber, fromAt, toAt (ISO), runs (no end). */
  'time.onAnotherClock',
  /** Something else is recorded of the person's presence then. Facts: kind, fromAt, toAt (ISO), runs. */
  'time.otherPresence',
  /** Another vehicle had that spot. Facts: jobNumber, spot, fromAt, toAt (ISO), runs. */
  'time.spotTaken',
  /** Before the vehicle arrived or after it left. Facts: jobNumber, fromAt, toAt (ISO), runs (it is here). */
  'time.outsideVisit',
  /** Nothing says where the vehicle was instead. Facts: fromAt, toAt (ISO), runs. */
  'time.nowhere',
  /** The vehicle has not arrived. Facts: jobNumber. */
  'time.notArrived',
  /** The new times have nothing in common with the old ones. Facts: none. */
  'time.otherStay',
  /** On a road test or away: what is corrected is the stay before or after it. Facts: kind. */
  'time.notAStay',
  /** Only a stay in a bay has a bay and a spot. Facts: none. */
  'time.notInBay',
  /** A stay in a bay names its bay. Facts: none. */
  'time.bayMissing',
  /** The month is closed against correction. Facts: month. */
  'time.monthClosed',
  /** The month is not over in the zone of the shop. Facts: month. */
  'time.monthNotOver',
  /** It is closed already. Facts: month. */
  'time.monthClosedAlready',
  /** It is not closed. Facts: month. */
  'time.monthNotClosed',
] as const;
