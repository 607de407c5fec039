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
  /** A tag says not to move it, or not to start it where it would be driven. Facts: code. */
  'place.tagged',
  /** Heavier today than the lift is rated for; there is no override. Facts: massKg, capacityKg. */
  'place.aboveCapacity',
  /** Gross above the rating, or unknown: somebody has to answer at the bay. Facts: capacityKg. */
  'place.loadAsked',
  /** Loaded, and with a full load above the rating: the kilograms have to be said. Facts: grossKg, capacityKg. */
  'place.loadWeightAsked',
] as const;
