import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type ClosedInterval, earliestPoints, latestPoints } from './fewest-points.js';

const intervals = (most: number) =>
  fc.array(
    fc.tuple(fc.nat(12), fc.nat(6)).map(([from, length]): ClosedInterval => ({ from, to: from + length })),
    { maxLength: most },
  );
const meets = (points: readonly number[], { from, to }: ClosedInterval): boolean =>
  points.some((point) => from <= point && point <= to);

/** Fewest points by trying every set of right ends: an optimum exists among those. */
function fewestByTrying(given: readonly ClosedInterval[]): number {
  const ends = [...new Set(given.map(({ to }) => to))];
  let fewest = ends.length;
  for (let set = 0; set < 2 ** ends.length; set += 1) {
    const points = ends.filter((_, at) => (set >> at) % 2 === 1);
    if (points.length < fewest && given.every((one) => meets(points, one))) fewest = points.length;
  }
  return fewest;
}

describe('points that meet every interval', () => {
  it('are as few as trying every set of right ends finds', () => {
    fc.assert(
      fc.property(intervals(8), (given) => {
        for (const { points } of [latestPoints(given), earliestPoints(given)]) {
          expect(given.every((one) => meets(points, one))).toBe(true);
          expect(points).toHaveLength(fewestByTrying(given));
        }
      }),
    );
  });

  it('are as many as the disjoint intervals beside them (duality)', () => {
    fc.assert(
      fc.property(intervals(40), (given) => {
        for (const { points, disjoint } of [latestPoints(given), earliestPoints(given)]) {
          expect(disjoint).toHaveLength(points.length);
          disjoint.slice(1).forEach((one, at) => expect(one.from).toBeGreaterThan(disjoint[at]?.to ?? Number.NaN));
          for (const one of disjoint) expect(given).toContain(one);
        }
      }),
    );
  });

  it('are each the earliest of any choice of as few, and each the latest', () => {
    fc.assert(
      fc.property(intervals(20), (given) => {
        const early = earliestPoints(given).points;
        const late = latestPoints(given).points;
        early.forEach((point, at) => expect(point).toBeLessThanOrEqual(late[at] ?? Number.NaN));
      }),
    );
  });

  it('do not exist for an empty interval', () => {
    expect(() => latestPoints([{ from: 2, to: 1 }])).toThrow(RangeError);
    expect(() => earliestPoints([{ from: 2, to: 1 }])).toThrow(RangeError);
    expect(latestPoints([]).points).toEqual([]);
  });
});
