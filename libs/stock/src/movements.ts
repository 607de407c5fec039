/**
 * What went into a bin and out of it. The count is the sum of the movements and nothing else; it never goes below zero:
 * who takes from a bin that the book has empty has found something, and the find is written down with it.
 */
import { Decimal } from 'decimal.js';

/** `found` and `missing` are what a count, or a hand in the bin, showed against the book. */
export const movementKinds = ['received', 'took', 'putBack', 'found', 'missing', 'sentBack'] as const;
export type MovementKind = (typeof movementKinds)[number];

export interface Movement {
  /** epoch ms */
  readonly at: number;
  readonly kind: MovementKind;
  /** decimal, above 0, in the unit of the item */
  readonly quantity: string;
}

/** A movement to be written down: the time is the caller's. */
export type Step = Pick<Movement, 'kind' | 'quantity'>;

export type MovementFault = 'notAboveZero' | 'belowZero';

export interface Tally {
  /** decimal, 0 or more */
  readonly count: string;
  /** movements that cannot be: what is not a quantity is left out, what takes more than there is takes what there is */
  readonly faults: readonly { readonly index: number; readonly fault: MovementFault }[];
}

const adds: Readonly<Record<MovementKind, boolean>> = {
  received: true,
  putBack: true,
  found: true,
  took: false,
  missing: false,
  sentBack: false,
};

function quantityOf(text: string): Decimal | null {
  if (!/^\d+(\.\d+)?$/.test(text)) return null;
  const value = new Decimal(text);
  return value.gt(0) ? value : null;
}

function amount(text: string, mayBeZero: boolean): Decimal {
  const value = quantityOf(text);
  if (value !== null) return value;
  if (mayBeZero && /^0+(\.0+)?$/.test(text)) return new Decimal(0);
  throw new RangeError(`"${text}" is not a quantity such as 4 or 0.5.`);
}

/** The count after movements in the order in which they were written down. */
export function tallyOf(movements: readonly Step[]): Tally {
  let count = new Decimal(0);
  const faults: { index: number; fault: MovementFault }[] = [];
  movements.forEach(({ kind, quantity }, index) => {
    const value = quantityOf(quantity);
    if (value === null) {
      faults.push({ index, fault: 'notAboveZero' });
      return;
    }
    const after = adds[kind] ? count.plus(value) : count.minus(value);
    if (after.lt(0)) faults.push({ index, fault: 'belowZero' });
    count = Decimal.max(0, after);
  });
  return { count: count.toFixed(), faults };
}

/** What to write down when somebody takes a quantity from a bin of this count. Refuses what is no quantity (RangeError). */
export function taking(count: string, quantity: string): Step[] {
  const wanted = amount(quantity, false);
  const short = wanted.minus(amount(count, true));
  const took: Step = { kind: 'took', quantity: wanted.toFixed() };
  return short.gt(0) ? [{ kind: 'found', quantity: short.toFixed() }, took] : [took];
}

/** The same when it was the last there was: whatever the book still has is missing. */
export function takingTheLast(count: string, quantity: string): Step[] {
  const left = amount(count, true).minus(amount(quantity, false));
  const steps = taking(count, quantity);
  return left.gt(0) ? [...steps, { kind: 'missing', quantity: left.toFixed() }] : steps;
}

/** What to write down when somebody has counted the bin; nothing if the book was right. */
export function counting(count: string, counted: string): Step[] {
  const more = amount(counted, true).minus(amount(count, true));
  if (more.isZero()) return [];
  return [{ kind: more.gt(0) ? 'found' : 'missing', quantity: more.abs().toFixed() }];
}
