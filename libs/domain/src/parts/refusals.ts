/** Refusals of the family "parts": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const partsRefusals = [
  /** A part line, an order or a delivery with this id is there already. Facts: table, id. */
  'parts.alreadyThere',
  /** A part is wanted for exactly one purpose: a work line or a follow-up. */
  'parts.purposeNotOne',
  /** The same part line is named twice. Facts: partLineId. */
  'parts.namedTwice',
  /** Only a part that is wanted and not yet ordered can be ordered. Facts: partLineId, state. */
  'parts.notToOrder',
  /** "Backordered with a date" needs the day. */
  'parts.dueDayMissing',
  /** "Backordered without a date" has no day. Facts: dueOn. */
  'parts.dueDayTooMuch',
  /** A cancelled part is not fitted. Facts: partLineId. */
  'parts.cancelled',
  /** No piece of it is here to be fitted. Facts: partLineId, state. */
  'parts.noneHere',
  /** More pieces are to be fitted than are here. Facts: partLineId, here, quantity. */
  'parts.moreThanHere',
  /** All pieces are here or on the vehicle, or it is cancelled already. Facts: partLineId, state. */
  'parts.notToCancel',
] as const;
