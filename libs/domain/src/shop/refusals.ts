/** Refusals of the family "shop": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const shopRefusals = [] as const;
