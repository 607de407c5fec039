/** What is known of when one line will come, and where it is known from. */
import type { LocalDate } from '@holdfast/shop-calendar';
import type { HeardWord, OrderedLine } from './history.js';
import type { Remaining } from './step-curve.js';
import type { Counted, Measure } from './strata.js';

export interface Basis {
  readonly measure: Measure | 'here';
  /** the finest group with anything finished in it; null: no history at all, the supplier's day or nothing stands alone */
  readonly own: Counted | null;
  /** the coarser group that is mixed in where the own one is thin */
  readonly pooledFrom: Counted | null;
  /** the day that the supplier named last, and the how-manieth it was (1, 2, …) */
  readonly named: { readonly dueOn: LocalDate; readonly ordinal: number } | null;
}

/** The law of one line: P(here by the instant of a coordinate) = 1 − survival. */
export interface LineLaw {
  readonly line: OrderedLine;
  /** the supplier's last word */
  readonly word: HeardWord;
  readonly basis: Basis;
  /** of what is still to come; null: nothing is known but `notBefore` */
  readonly remaining: Remaining | null;
  /**
   * how far the knowledge reaches (epoch ms): where the curve ends, or the earliest there can be, or the day named; null:
   * nothing is known at all, or everything
   */
  readonly notBefore: number | null;
  /** a step of the curve as a time after now at which somebody can receive it (epoch ms) */
  readonly stepInstant: (step: number) => number | null;
}
