/** The options of a list of words for Choice and Select. */
export const optionsOf = <V extends string>(
  values: readonly V[],
  label: (value: V) => string,
): { value: V; label: string }[] => values.map((value) => ({ value, label: label(value) }));
