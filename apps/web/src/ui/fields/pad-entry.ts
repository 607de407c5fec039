export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | 'back';

/** The longest number that can be keyed in: an odometer in metres, and more than any torque or pressure. */
const mostDigits = 9;

/** What stands in the window after a key: at most one point, `places` decimals, no leading zeros. */
export const pressPad = (value: string, key: PadKey, places: number): string => {
  if (key === 'back') return value.slice(0, -1);
  if (key === '.') {
    if (places === 0 || value.includes('.')) return value;
    return value === '' ? '0.' : `${value}.`;
  }
  const decimals = value.split('.')[1];
  if (decimals !== undefined && decimals.length >= places) return value;
  if (value.replace('.', '').length >= mostDigits) return value;
  return value === '0' ? key : value + key;
};

/** The value one more or one less, keeping its decimals; never below 0. */
export const stepPad = (value: string, step: 1 | -1): string => {
  const [whole = '', decimals] = value.split('.');
  const next = Number(whole === '' ? '0' : whole) + step;
  if (next < 0) return value;
  return decimals === undefined || decimals === '' ? String(next) : `${String(next)}.${decimals}`;
};
