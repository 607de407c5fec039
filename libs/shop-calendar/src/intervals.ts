/**
 * Interval algebra. This is its one place: the calendar, bay time and the plan build on it.
 *
 * An interval is half-open, [from, to), in epoch milliseconds (no zone: these are instants). A **tidy** list is sorted,
 * its intervals are not empty and neither touch nor overlap. Every function here gives a tidy list; those that take
 * one in any order say so.
 */
export interface Interval {
  /** first instant inside, epoch milliseconds */
  readonly from: number;
  /** first instant after it, epoch milliseconds */
  readonly to: number;
}

function isTidy(list: readonly Interval[]): boolean {
  let end = -Infinity;
  for (const { from, to } of list) {
    if (!(from > end && to > from)) return false;
    end = to;
  }
  return true;
}

/** The same instants as a tidy list. Intervals that end at or before their start hold nothing and are left out. */
export function tidy(list: readonly Interval[]): readonly Interval[] {
  if (isTidy(list)) return list;
  const sorted = list.filter((one) => one.from < one.to).sort((a, b) => a.from - b.from);
  const out: Interval[] = [];
  for (const next of sorted) {
    const last = out.at(-1);
    if (last === undefined || next.from > last.to) out.push({ from: next.from, to: next.to });
    else if (next.to > last.to) out[out.length - 1] = { from: last.from, to: next.to };
  }
  return out;
}

/** Instants in at least one of the lists, which may be in any order and overlap. */
export function union(...lists: readonly (readonly Interval[])[]): readonly Interval[] {
  if (lists.length === 1 && lists[0] !== undefined) return tidy(lists[0]);
  return tidy(lists.flat());
}

/** Instants in both lists, which may be in any order and overlap. */
export function intersect(a: readonly Interval[], b: readonly Interval[]): readonly Interval[] {
  const left = tidy(a);
  const right = tidy(b);
  const out: Interval[] = [];
  let i = 0;
  let j = 0;
  for (;;) {
    const one = left[i];
    const other = right[j];
    if (one === undefined || other === undefined) return out;
    const from = Math.max(one.from, other.from);
    const to = Math.min(one.to, other.to);
    if (from < to) out.push({ from, to });
    if (one.to <= other.to) i += 1;
    else j += 1;
  }
}

/** Instants in `a` and not in `b`; both may be in any order and overlap. */
export function subtract(a: readonly Interval[], b: readonly Interval[]): readonly Interval[] {
  const right = tidy(b);
  if (right.length === 0) return tidy(a);
  const out: Interval[] = [];
  let j = 0;
  for (const one of tidy(a)) {
    let from = one.from;
    for (;;) {
      const hole = right[j];
      if (hole === undefined || hole.from >= one.to) break;
      if (hole.from > from) out.push({ from, to: hole.from });
      from = Math.max(from, hole.to);
      if (hole.to > one.to) break;
      j += 1;
    }
    if (from < one.to) out.push({ from, to: one.to });
  }
  return out;
}

/** How many instants the list covers, in milliseconds; what is covered twice counts once. */
export function totalMs(list: readonly Interval[]): number {
  return summedMs(tidy(list));
}

/** The lengths added up, in milliseconds; what is covered twice counts twice (hours of several people, for one). */
export function summedMs(list: readonly Interval[]): number {
  let sum = 0;
  for (const { from, to } of list) if (to > from) sum += to - from;
  return sum;
}

/** Index of the first interval of a **tidy** list that ends after the instant (its length if there is none). */
export function firstEndingAfter(list: readonly Interval[], instant: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const one = list[middle];
    if (one !== undefined && one.to > instant) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The part of a **tidy** list inside [from, to); costs a binary search and the length of the answer. */
export function clip(list: readonly Interval[], from: number, to: number): readonly Interval[] {
  const out: Interval[] = [];
  if (!(from < to)) return out;
  for (let i = firstEndingAfter(list, from); i < list.length; i += 1) {
    const one = list[i];
    if (one === undefined || one.from >= to) break;
    if (one.from >= from && one.to <= to) out.push(one);
    else out.push({ from: Math.max(one.from, from), to: Math.min(one.to, to) });
  }
  return out;
}

/** Whether a **tidy** list covers the instant. */
export function covers(list: readonly Interval[], instant: number): boolean {
  const one = list[firstEndingAfter(list, instant)];
  return one !== undefined && one.from <= instant;
}
