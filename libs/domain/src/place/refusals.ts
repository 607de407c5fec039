/** Refusals of the family "place": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const placeRefusals = [
  /** The visit has ended; the vehicle is no longer here. Facts: jobNumber. */
  'place.jobEnded',
  /** The id that the client made for the place is in use. Facts: id. */
  'place.alreadyRecorded',
  /** The bay has no spot of this number. Facts: spot, spots. */
  'place.noSuchSpot',
  /** The bay is no more. Facts: none. */
  'place.bayEnded',
  /** The bay, or everything in it, is out of use. Facts: none. */
  'place.bayOutOfUse',
  /** Another vehicle stands there, or its spot is kept. Facts: spot, jobNumber, since (ISO). */
  'place.spotTaken',
  /** The vehicle stands in this very spot. Facts: spot. */
  'place.thisSpot',
  /** It does not roll, and nobody is named who moved it on dollies or towed it. Facts: none. */
  'place.doesNotRoll',
  /** A caution that stands on the vehicle forbids it (see cautions/). Facts: cautionId, code, act. */
  'caution.forbids',
  /** Hot work and open fuel in the same or a neighbouring bay. Facts: cautionId, code (of the other side), jobNumber. */
  'caution.hotWorkNear',
  /** A wheel is off. Facts: wheelRecordId, position. */
  'wheel.stillOff',
  /** A wheel that was off is on again, and no torque is recorded. Facts: wheelRecordId, position. */
  'wheel.notTorqued',
  /** Heavier today than the lift is rated for; there is no override. Facts: massKg, capacityKg. */
  'place.aboveCapacity',
  /** Gross above the rating, or unknown: somebody has to answer at the bay. Facts: capacityKg. */
  'place.loadAsked',
  /** Loaded, and with a full load above the rating: the kilograms have to be said. Facts: grossKg, capacityKg. */
  'place.loadWeightAsked',
  /** By road, but the vehicle may not be driven. Facts: none. */
  'place.mayNotBeDriven',
  /** The driver no longer works here. Facts: none. */
  'place.driverLeft',
  /** It stands neither in the yard nor in a bay: on a road test, away, or nowhere. Facts: kind (null: nowhere). */
  'place.notHere',
  /** No spot was kept for it; it can stand in the yard. Facts: none. */
  'place.spotNotKept',
  /** Only vehicles that stand in bays change them with each other. Facts: jobNumber. */
  'place.notInBay',
  /** One vehicle twice. Facts: none. */
  'place.swapWithItself',
  /** A sublet with this id is there already. Facts: subletId. */
  'sublet.alreadyThere',
  /** The line is of another visit. Facts: lineId. */
  'sublet.lineOfOtherJob',
  /** What goes out is not said. Facts: none. */
  'sublet.componentMissing',
  /** It was arranged in another form. Facts: form. */
  'sublet.otherForm',
  /** It is under way, over or called off. Facts: state. */
  'sublet.notArranged',
  /** It has not begun, or is over. Facts: state. */
  'sublet.notUnderWay',
  /** It is over or called off. Facts: state. */
  'sublet.over',
] as const;
