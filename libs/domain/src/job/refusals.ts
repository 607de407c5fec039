/** Refusals of the family "job": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const jobRefusals = [] as const;
