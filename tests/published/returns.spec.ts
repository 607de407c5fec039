/**
 * The fewest points that meet every interval against published examples, each with its source, and the duality that is
 * true of every input. Touching end points count as met.
 */
import { describe, expect, it } from '@jest/globals';
import { type ClosedInterval, earliestPoints, latestPoints } from '@holdfast/returns';
import fc from 'fast-check';

const intervals = (...pairs: readonly (readonly [number, number])[]): ClosedInterval[] =>
  pairs.map(([from, to]) => ({ from, to }));

describe('published cases', () => {
  it('IV-1: [1,3][2,5][3,6]: one point, 3 (Algorithmic Toolbox, Covering Segments by Points)', () => {
    expect(latestPoints(intervals([1, 3], [2, 5], [3, 6])).points).toEqual([3]);
  });
  it('IV-2: [4,7][1,3][2,5][5,6]: two points, 3 and 6 (same; Stack Overflow 37936571)', () => {
    expect(latestPoints(intervals([4, 7], [1, 3], [2, 5], [5, 6])).points).toEqual([3, 6]);
  });
  it('IV-3: [0,3][2,6][3,4][6,9]: two points, in print 3 and 6, and the latest are 3 and 9 (k5kc.com)', () => {
    const given = intervals([0, 3], [2, 6], [3, 4], [6, 9]);
    expect(latestPoints(given).points).toEqual([3, 9]);
    expect(earliestPoints(given).points).toEqual([3, 6]);
  });
  it('IV-4: LeetCode 452: 2, 4 and 2 points (algoaxiom.io)', () => {
    const counts = [
      intervals([10, 16], [2, 8], [1, 6], [7, 12]),
      intervals([1, 2], [3, 4], [5, 6], [7, 8]),
      intervals([1, 2], [2, 3], [3, 4], [4, 5]),
    ].map((given) => [latestPoints(given).points.length, earliestPoints(given).points.length]);
    expect(counts).toEqual([
      [2, 2],
      [4, 4],
      [2, 2],
    ]);
  });
});

/** Greatest number of pairwise disjoint intervals by the recursion over intervals sorted by right end: no greedy choice. */
function mostDisjoint(given: readonly ClosedInterval[]): number {
  const sorted = [...given].sort((a, b) => a.to - b.to);
  const best: number[] = [];
  sorted.forEach(({ from }, at) => {
    const before = sorted
      .slice(0, at)
      .reduce((most, one, index) => (one.to < from ? Math.max(most, best[index] ?? 0) : most), 0);
    best.push(before + 1);
  });
  return Math.max(0, ...best);
}

it('IV-5: least points = greatest number of disjoint intervals, on every input', () => {
  const interval = fc
    .tuple(fc.integer({ min: -30, max: 30 }), fc.nat(15))
    .map(([from, length]) => ({ from, to: from + length }));
  fc.assert(
    fc.property(fc.array(interval, { maxLength: 60 }), (given) => {
      expect(latestPoints(given).points).toHaveLength(mostDisjoint(given));
      expect(earliestPoints(given).points).toHaveLength(mostDisjoint(given));
    }),
    { numRuns: 300 },
  );
});
