/** Shapes that inputs of several families share. */
import type * as w from '../tables/words.js';

export type Word<L extends readonly string[]> = L[number];
export type Opt<T> = T | undefined;

/** A turn carries the version of the row it acts on, or the key of one's own earlier command that last changed it. */
export interface Turn {
  version?: Opt<number>;
  afterKey?: Opt<string>;
}
export interface Limits {
  beforeDay?: Opt<string>;
  beforeOdometer?: Opt<number>;
  withinDistance?: Opt<number>;
  withinDays?: Opt<number>;
  seasonId?: Opt<string>;
  distanceUnit?: Opt<Word<typeof w.distanceUnits>>;
}
