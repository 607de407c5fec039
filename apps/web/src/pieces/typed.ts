/** What somebody typed, as the wire wants it: nothing typed is left out. */
export const said = (typed: string): string | undefined => {
  const words = typed.trim();
  return words === '' ? undefined : words;
};

/** A decimal with a point, whether it was typed with a point or a comma; undefined for nothing, null for what is none. */
export const decimalOf = (typed: string): string | undefined | null => {
  const words = typed.trim().replace(',', '.');
  if (words === '') return undefined;
  return /^\d{1,9}(\.\d{1,6})?$/.test(words) ? words : null;
};

/** A whole number of at most seven digits, blanks and thin spaces left out; undefined for nothing, null for what is none. */
export const wholeOf = (typed: string): number | undefined | null => {
  const words = typed.replace(/[\s\u00a0\u202f]/g, '');
  if (words === '') return undefined;
  return /^\d{1,7}$/.test(words) ? Number(words) : null;
};

/** Minutes from hours and minutes: "1.5", "1,5", "1:30" and "90 min" are all an hour and a half. */
export const minutesOf = (typed: string): number | undefined | null => {
  const words = typed.trim().toLowerCase().replace(',', '.');
  if (words === '') return undefined;
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(words);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const minutes = /^(\d{1,5})\s*min$/.exec(words);
  if (minutes) return Number(minutes[1]);
  return /^\d{1,3}(\.\d{1,2})?(\s*h)?$/.test(words) ? Math.round(Number.parseFloat(words) * 60) : null;
};

/** Epoch milliseconds as the wire writes an instant. */
export const isoOf = (at: number | null): string | undefined => (at === null ? undefined : new Date(at).toISOString());
