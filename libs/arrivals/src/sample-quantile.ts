/** Quantiles of a finished sample, and the loss by which dates are judged. */

/** The nine definitions of Hyndman & Fan, Sample Quantiles in Statistical Packages, The American Statistician 1996. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** For the types that interpolate: the position of p among n values is n·p + m, with m by type. */
const shift: Readonly<Record<4 | 5 | 6 | 7 | 8 | 9, (p: number) => number>> = {
  4: () => 0,
  5: () => 0.5,
  6: (p) => p,
  7: (p) => 1 - p,
  8: (p) => (p + 1) / 3,
  9: (p) => p / 4 + 3 / 8,
};
/** n·p is taken as whole when it is this near to it: 5 · 0.4 must be 2. */
const whole = 1e-12;

/**
 * The quantile of a sample in any order, in its own unit, for 0 ≤ p ≤ 1; type 7 is what most programs mean. Null for
 * an empty sample; a share outside 0 to 1 is refused with a RangeError.
 */
export function sampleQuantile(values: readonly number[], p: number, type: QuantileType = 7): number | null {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${p} is not a share from 0 to 1.`);
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  const value = (rank: number): number => sorted[Math.min(n, Math.max(1, rank)) - 1] ?? Number.NaN;
  if (type !== 1 && type !== 2 && type !== 3) {
    const position = n * p + shift[type](p);
    const rank = Math.floor(position + whole);
    const part = Math.max(0, position - rank);
    return value(rank) + part * (value(rank + 1) - value(rank));
  }
  const position = type === 3 ? n * p - 0.5 : n * p;
  const rank = Math.floor(position + whole);
  const exact = Math.abs(position - rank) <= whole;
  if (type === 2 && exact) return (value(rank) + value(rank + 1)) / 2;
  // Type 3 takes the nearest rank, the even one where two are equally near.
  const stays = type === 3 ? exact && rank % 2 === 0 : exact;
  return value(stays ? rank : rank + 1);
}

/**
 * Pinball loss of saying that the share `p` has come by `said`, when it came at `came` (same unit): smallest on average
 * for the true quantile. Source: Koenker & Bassett 1978.
 */
export function pinballLoss(p: number, said: number, came: number): number {
  return came >= said ? p * (came - said) : (1 - p) * (said - came);
}
