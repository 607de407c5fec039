import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  type Interval,
  clip,
  covers,
  firstEndingAfter,
  intersect,
  subtract,
  summedMs,
  tidy,
  totalMs,
  union,
} from './intervals.js';

const spans = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -2, max: 12 }))
    .map(([from, length]) => ({ from, to: from + length })),
  { maxLength: 8 },
);
const points = Array.from({ length: 60 }, (_, i) => i - 4);
const holds = (list: readonly Interval[], t: number): boolean => list.some((one) => one.from <= t && t < one.to);
const isTidy = (list: readonly Interval[]): boolean =>
  list.every((one, i) => one.from < one.to && (i === 0 || (list[i - 1]?.to ?? Infinity) < one.from));

describe('interval algebra', () => {
  it('union, intersection and difference hold exactly the instants that membership says, and come tidy', () => {
    fc.assert(
      fc.property(spans, spans, (a, b) => {
        const [both, common, less] = [union(a, b), intersect(a, b), subtract(a, b)];
        for (const list of [both, common, less]) expect(isTidy(list)).toBe(true);
        for (const t of points) {
          expect(holds(both, t)).toBe(holds(a, t) || holds(b, t));
          expect(holds(common, t)).toBe(holds(a, t) && holds(b, t));
          expect(holds(less, t)).toBe(holds(a, t) && !holds(b, t));
        }
      }),
    );
  });

  it('what is shared and what is left add up to the whole', () => {
    fc.assert(
      fc.property(spans, spans, (a, b) => {
        expect(totalMs(intersect(a, b)) + totalMs(subtract(a, b))).toBe(totalMs(a));
      }),
    );
  });

  it('clipping a tidy list is the same as intersecting it with the window', () => {
    fc.assert(
      fc.property(spans, fc.integer({ min: -3, max: 50 }), fc.integer({ min: -3, max: 50 }), (a, from, to) => {
        expect(clip(tidy(a), from, to)).toEqual(intersect(a, [{ from, to }]));
      }),
    );
  });

  it('finds the interval that covers an instant, its end not included', () => {
    fc.assert(
      fc.property(spans, (a) => {
        const list = tidy(a);
        for (const t of points) {
          expect(covers(list, t)).toBe(holds(list, t));
          expect(firstEndingAfter(list, t)).toBe(list.filter((one) => one.to <= t).length);
        }
      }),
    );
  });

  it('what two people do at once counts once united and twice added up', () => {
    const twoPeople = [
      { from: 0, to: 10 },
      { from: 5, to: 15 },
    ];
    expect(totalMs(twoPeople)).toBe(15);
    expect(summedMs(twoPeople)).toBe(20);
  });

  it('intervals that touch become one, those turned round or empty hold nothing', () => {
    const list = [
      { from: 5, to: 9 },
      { from: 0, to: 5 },
      { from: 20, to: 20 },
      { from: 30, to: 25 },
    ];
    expect(union(list)).toEqual([{ from: 0, to: 9 }]);
  });

  it('the input is never changed', () => {
    const a = Object.freeze([Object.freeze({ from: 3, to: 9 }), Object.freeze({ from: 0, to: 4 })]);
    expect(union(a, [{ from: 9, to: 10 }])).toEqual([{ from: 0, to: 10 }]);
    expect(a).toEqual([
      { from: 3, to: 9 },
      { from: 0, to: 4 },
    ]);
  });
});
