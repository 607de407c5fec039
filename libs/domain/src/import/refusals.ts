/** Refusals of the family "import": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const importRefusals = [
  /** Its columns are not named yet, or its rows are still being looked at. Facts: state. */
  'import.notChecked',
  /** It was accepted or put aside already. Facts: state. */
  'import.ended',
  /** Not one of its rows is good. Facts: bad. */
  'import.nothingGood',
  /** What was recorded since it was checked stands against some of its rows. Facts: rows. */
  'import.overtaken',
] as const;
