/**
 * Money and part quantities: decimal strings in, decimal strings out, never through a binary float. Results are
 * canonical (no exponent, no trailing noughts, no `-0`), so that equal amounts are equal strings. Amounts of different
 * units or currencies are the caller's business: nothing here knows a unit. Refuses (RangeError) what is no finite
 * decimal number.
 */
import { Decimal } from 'decimal.js';

/** Wide enough that sums and differences of any `numeric` the store holds are exact. */
const Exact = Decimal.clone({ precision: 60 });

function read(amount: string): Decimal {
  if (!/^-?\d+(\.\d+)?$/.test(amount)) throw new RangeError(`"${amount}" is not a decimal amount.`);
  return new Exact(amount);
}

function write(value: Decimal): string {
  return value.isZero() ? '0' : value.toFixed();
}

/** The one way to write this amount: '02.50' becomes '2.5'. */
export function canonical(amount: string): string {
  return write(read(amount));
}

export function plus(a: string, b: string): string {
  return write(read(a).plus(read(b)));
}

export function minus(a: string, b: string): string {
  return write(read(a).minus(read(b)));
}

export function times(a: string, b: string): string {
  return write(read(a).times(read(b)));
}

/** The sum; '0' for none. */
export function sum(amounts: readonly string[]): string {
  return write(amounts.reduce((total, amount) => total.plus(read(amount)), new Exact(0)));
}

/** Below nought when `a` is less than `b`, nought when they are the same amount, above when it is more. */
export function compare(a: string, b: string): -1 | 0 | 1 {
  const by = read(a).comparedTo(read(b));
  return by < 0 ? -1 : by > 0 ? 1 : 0;
}

export function lesser(a: string, b: string): string {
  return canonical(compare(a, b) <= 0 ? a : b);
}
