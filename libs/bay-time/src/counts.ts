/** How many of something there are at each instant: bays open, people present, vehicles here. */
import type { Interval } from '@holdfast/shop-calendar';

/** So many from an instant to another (epoch milliseconds), at least one. */
export interface CountStretch extends Interval {
  readonly count: number;
}

/**
 * How many of the intervals, in any order, cover each instant: sorted, without overlap, the count of each stretch
 * another than that of its neighbour; where none does there is no stretch. Costs the sorting of the ends.
 */
export function countsOf(intervals: readonly Interval[]): CountStretch[] {
  const ends: { readonly at: number; readonly change: number }[] = [];
  for (const { from, to } of intervals) if (from < to) ends.push({ at: from, change: 1 }, { at: to, change: -1 });
  ends.sort((a, b) => a.at - b.at);
  const out: CountStretch[] = [];
  let [count, since] = [0, 0];
  for (let i = 0; i < ends.length;) {
    const at = ends[i]?.at ?? 0;
    const before = count;
    for (; ends[i]?.at === at; i += 1) count += ends[i]?.change ?? 0;
    if (count === before) continue;
    if (before > 0) out.push({ from: since, to: at, count: before });
    since = at;
  }
  return out;
}

/** The smaller of two counts at each instant; where one of them is nought there is no stretch. One pass over both. */
export function smallerOf(a: readonly CountStretch[], b: readonly CountStretch[]): CountStretch[] {
  const out: CountStretch[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const one = a[i];
    const other = b[j];
    if (one === undefined || other === undefined) return out;
    const from = Math.max(one.from, other.from);
    const to = Math.min(one.to, other.to);
    if (from < to) out.push({ from, to, count: Math.min(one.count, other.count) });
    if (one.to <= other.to) i += 1;
    else j += 1;
  }
}
