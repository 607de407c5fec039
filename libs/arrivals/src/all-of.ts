/** When the last of several things is here: laws of a maximum. */

/**
 * P(all by t) when the things come independently of each other: the product of the shares that each has come by then.
 */
export function allIndependent(shares: readonly number[]): number {
  return shares.reduce((product, one) => product * one, 1);
}

/**
 * The range of P(all by t) whatever hangs together with what: from max(0, ΣF − (n − 1)) to min F. Source: Fréchet 1935.
 */
export function frechetRange(shares: readonly number[]): { readonly low: number; readonly high: number } {
  const sum = shares.reduce((total, one) => total + one, 0);
  return { low: Math.max(0, sum - (shares.length - 1)), high: Math.min(1, ...shares) };
}
