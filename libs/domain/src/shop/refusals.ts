/** Refusals of the family "shop": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const shopRefusals = [
  /** There is a shop already. */
  'shop.alreadyThere',
  /** The time zone is not known. Facts: zone. */
  'shop.zoneUnknown',
  /** Another zone holds from today or a later day on. Facts: validFrom, today. */
  'shop.zoneInPast',
  /** The name is empty. */
  'shop.nameBlank',
  /** There are other hours with this id already. Facts: exceptionId. */
  'exception.alreadyThere',
  /** Something is wrong with hours, breaks, a season or delivery runs. Facts: fault (a sentence). */
  'shop.hoursFaulty',
  'shop.seasonFaulty',
  'shop.runsFaulty',
  /** A person with this id is there already. Facts: personId. */
  'person.alreadyThere',
  /** Another person who works here has that name, and signs in with it. Facts: personId. */
  'person.nameTaken',
  /** A wall screen has no other role. */
  'person.wallScreenAlone',
  /** The same skill is named twice. Facts: skill. */
  'person.skillTwice',
  /** The shop would be left without an owner. Facts: personId. */
  'person.lastOwner',
  /** The person's clock is running. Facts: personId, clockId. */
  'person.onClock',
  /** A bay with this id is there already. Facts: bayId. */
  'bay.alreadyThere',
  /** Another bay has that name. Facts: bayId. */
  'bay.nameTaken',
  /** A rated capacity is above nought. */
  'bay.capacityNotPositive',
  /** A vehicle stands in the bay. Facts: bayId, number (of the job). */
  'bay.occupied',
  /** Vehicles stand in more spots than the bay would have. Facts: bayId, spots, spot, number (of the job). */
  'bay.spotsInUse',
  /** The same season is named twice, or another with that name. Facts: seasonName. */
  'season.twice',
  /** A supplier with this id is there already. Facts: supplierId. */
  'supplier.alreadyThere',
  /** Another supplier has that name. Facts: supplierId. */
  'supplier.nameTaken',
] as const;
