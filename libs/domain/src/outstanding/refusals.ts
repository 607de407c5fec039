/** Refusals of the family "outstanding": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const outstandingRefusals = [] as const;
