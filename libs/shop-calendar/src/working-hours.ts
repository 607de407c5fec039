import type { Calendar } from './calendar.js';
import { type Interval, intersect, subtract, union } from './intervals.js';

/**
 * When a person is there to work inside [from, to) (epoch milliseconds): within their own hours and the shop's, less
 * the breaks of both and the times away that are given (leave, illness), which may be in any order.
 */
export function workingIntervals(
  shop: Calendar,
  person: Calendar,
  window: Interval,
  away: readonly Interval[] = [],
): readonly Interval[] {
  const { from, to } = window;
  const present = intersect(shop.openIntervals(from, to), person.openIntervals(from, to));
  return subtract(present, union(shop.breakIntervals(from, to), person.breakIntervals(from, to), away));
}

/** When a bay or a piece of equipment can be used inside [from, to): the shop is open and it is not out of use. */
export function usableIntervals(shop: Calendar, window: Interval, outOfUse: readonly Interval[]): readonly Interval[] {
  return subtract(shop.openIntervals(window.from, window.to), outOfUse);
}
