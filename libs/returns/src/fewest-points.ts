/**
 * The fewest points that meet every closed interval (touching counts), and which ones. Greedy by right end is the textbook
 * way (Erickson, Algorithms, exercises on greedy choice). The intervals that made it take a new point are disjoint, so no
 * fewer points can do: least points = greatest number of disjoint intervals.
 */
export interface ClosedInterval {
  readonly from: number;
  /** not less than `from` */
  readonly to: number;
}

export interface Points<I extends ClosedInterval> {
  /** in rising order */
  readonly points: readonly number[];
  /** one interval per point, pairwise disjoint: why there are no fewer */
  readonly disjoint: readonly I[];
}

function refuseEmpty(intervals: readonly ClosedInterval[]): void {
  const empty = intervals.find(({ from, to }) => !(from <= to));
  if (empty) throw new RangeError(`From ${empty.from} to ${empty.to} there is nothing.`);
}

/** The fewest points, each as late as can be. RangeError: an empty interval. n·log n. */
export function latestPoints<I extends ClosedInterval>(intervals: readonly I[]): Points<I> {
  refuseEmpty(intervals);
  const points: number[] = [];
  const disjoint: I[] = [];
  for (const interval of [...intervals].sort((a, b) => a.to - b.to)) {
    const last = points.at(-1);
    if (last !== undefined && interval.from <= last) continue;
    points.push(interval.to);
    disjoint.push(interval);
  }
  return { points, disjoint };
}

/**
 * The fewest points, each as early as can be: the same greedy choice from the other end. The first, second, … point is
 * not later than that of any other choice of as few points.
 */
export function earliestPoints<I extends ClosedInterval>(intervals: readonly I[]): Points<I> {
  refuseEmpty(intervals);
  const points: number[] = [];
  const disjoint: I[] = [];
  for (const interval of [...intervals].sort((a, b) => b.from - a.from)) {
    const last = points.at(-1);
    if (last !== undefined && interval.to >= last) continue;
    points.push(interval.from);
    disjoint.push(interval);
  }
  return { points: points.reverse(), disjoint: disjoint.reverse() };
}
