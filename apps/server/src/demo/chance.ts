/** A seeded source of chance, so that one seed and one day make one and the same demo everywhere. */
export interface Chance {
  /** A whole number from 0 up to, not including, `end`. */
  below(end: number): number;
  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number;
  /** True in about that share of all cases, 0 to 1. */
  odds(share: number): boolean;
  of<T>(list: readonly T[]): T;
  /** A UUIDv7 (RFC 9562, 5.7) of that epoch millisecond, all of it seeded; not for secrets. */
  id(at: number): string;
}

/** Marsaglia's xorshift with 32 bits of state (Xorshift RNGs, 2003): short, quick, and even enough to invent a shop. */
export function chanceFrom(seed: number): Chance {
  let state = seed | 0 || 1;
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  const below = (end: number) => Math.floor((next() / 2 ** 32) * end);
  const hex = (digits: number) =>
    Math.floor((next() / 2 ** 32) * 16 ** digits)
      .toString(16)
      .padStart(digits, '0');
  return {
    below,
    between: (least, most) => least + below(most - least + 1),
    odds: (share) => next() / 2 ** 32 < share,
    of: <T>(list: readonly T[]): T => {
      const one = list[below(list.length)];
      if (one === undefined) throw new RangeError('Nothing can be chosen from an empty list.');
      return one;
    },
    id(at) {
      const ms = at.toString(16).padStart(12, '0');
      const variant = (8 + below(4)).toString(16);
      return `${ms.slice(0, 8)}-${ms.slice(8)}-7${hex(3)}-${variant}${hex(3)}-${hex(6)}${hex(6)}`;
    },
  };
}
