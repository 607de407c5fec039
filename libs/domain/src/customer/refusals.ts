/** Refusals of the family "customer": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const customerRefusals = [
  /** A customer without a name. */
  'customer.nameBlank',
  /** A contact without a name. */
  'contact.nameBlank',
  /** The customer's personal data was erased on request. Facts: customerId. */
  'customer.erased',
  /** A standing go-ahead with this id is there already. Facts: standingGoAheadId. */
  'standing.alreadyThere',
  /** The vehicle or the visit named with it is another customer's. Facts: table, id. */
  'standing.ofOtherCustomer',
  /** The visit that it is to cover is of another vehicle than the one named with it. Facts: number. */
  'standing.jobOfOtherVehicle',
  /** Its last day is over already. Facts: untilDay. */
  'standing.dayPast',
  /** A fleet limit comes with its order number. */
  'standing.orderNumberMissing',
  /** It has ended already. Facts: standingGoAheadId. */
  'standing.ended',
  /** An entry of the contact log with this id is there already. Facts: contactEntryId. */
  'contactEntry.alreadyThere',
  /** What it names belongs to another vehicle. Facts: table, id. */
  'contactEntry.ofOtherVehicle',
  /** Who was reached said something. */
  'contactEntry.answerMissing',
  /** The next try lies before now. Facts: nextTryAt (ISO). */
  'contactEntry.nextTryPast',
  /** In this shop the desk keeps the contact log. */
  'contactEntry.notYours',
] as const;
