/**
 * Calendars as the solver asks them: when can work go on, and when is so much work done. Times are milliseconds after
 * `now`. Calendars that are alike are one, and the one that two have in common is made once. Calendar 0 is always open.
 */
import { type Interval, intersect } from '@holdfast/shop-calendar';

interface Laid {
  readonly intervals: readonly Interval[];
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** open milliseconds before each interval */
  readonly before: Float64Array;
}

export const alwaysOpen = 0;
const pairBase = 65_536;

export class WorkCalendars {
  private readonly laid: Laid[] = [];
  private readonly byContent = new Map<string, number>();
  private readonly byPair = new Map<number, number>();

  /** Past `horizonMs` every calendar is open without end, so that whatever does not fit has a place to overflow to. */
  constructor(private readonly horizonMs: number) {
    this.lay([{ from: -Infinity, to: Infinity }]);
  }

  /** The calendar of these intervals (tidy, milliseconds after `now`); null: always open. */
  add(open: readonly Interval[] | null): number {
    if (open === null) return alwaysOpen;
    const within = intersect(open, [{ from: 0, to: this.horizonMs }]);
    return this.lay([...within, { from: this.horizonMs, to: Infinity }]);
  }

  both(a: number, b: number): number {
    if (a === b || b === alwaysOpen) return a;
    if (a === alwaysOpen) return b;
    const key = a * pairBase + b;
    let found = this.byPair.get(key);
    if (found === undefined) {
      found = this.lay(intersect(this.of(a).intervals, this.of(b).intervals));
      this.byPair.set(key, found);
    }
    return found;
  }

  /** The first instant from `t` on at which it is open. */
  next(id: number, t: number): number {
    if (id === alwaysOpen) return t;
    const one = this.of(id);
    return Math.max(t, one.from[index(one.to, t)] as number);
  }

  /** The instant at which `durationMs` (above 0) of open time from `t` on have passed. */
  finish(id: number, t: number, durationMs: number): number {
    if (id === alwaysOpen) return t + durationMs;
    const { from, to, before } = this.of(id);
    let i = index(to, t);
    const start = Math.max(t, from[i] as number);
    if (start + durationMs <= (to[i] as number)) return start + durationMs;
    const target = (before[i] as number) + (start - (from[i] as number)) + durationMs;
    do i += 1;
    while ((before[i] as number) + ((to[i] as number) - (from[i] as number)) < target);
    return (from[i] as number) + (target - (before[i] as number));
  }

  /** Open milliseconds in [a, b). */
  openMs(id: number, a: number, b: number): number {
    let sum = 0;
    for (const { from, to } of this.of(id).intervals) sum += Math.max(0, Math.min(to, b) - Math.max(from, a));
    return sum;
  }

  private of(id: number): Laid {
    return this.laid[id] as Laid;
  }

  private lay(intervals: readonly Interval[]): number {
    const key = intervals.map((one) => `${one.from}-${one.to}`).join();
    const known = this.byContent.get(key);
    if (known !== undefined) return known;
    const before = new Float64Array(intervals.length);
    let sum = 0;
    intervals.forEach((one, i) => {
      before[i] = sum;
      sum += one.to - one.from;
    });
    this.laid.push({
      intervals,
      from: Float64Array.from(intervals, (one) => one.from),
      to: Float64Array.from(intervals, (one) => one.to),
      before,
    });
    this.byContent.set(key, this.laid.length - 1);
    return this.laid.length - 1;
  }
}

/** Index of the first interval that ends after `t`; the last one never ends. */
function index(to: Float64Array, t: number): number {
  let low = 0;
  let high = to.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((to[middle] as number) > t) high = middle;
    else low = middle + 1;
  }
  return low;
}
