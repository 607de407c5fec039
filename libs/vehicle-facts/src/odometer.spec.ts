import { describe, expect, it } from '@jest/globals';
import { addDays } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import { leastSquares, theilSen } from './lines-through-points.js';
import { mileagePrior, priorFor } from './mileage-priors.js';
import { type OdometerReading, judgeReadings } from './odometer-readings.js';
import { dayOfReading, drivenRate, projectedReading } from './odometer.js';

const km = (day: string, value: number): OdometerReading => ({ day, value, unit: 'km' });
const steady = [
  km('2025-01-01', 60_000),
  km('2025-05-01', 65_000),
  km('2025-09-01', 70_000),
  km('2026-01-01', 75_000),
  km('2026-05-01', 80_000),
];
const doubtsOf = (readings: readonly OdometerReading[]) =>
  judgeReadings(readings).map(({ kept, doubts }) => (kept ? 'kept' : doubts.join(' ')));

describe('odometer readings', () => {
  it('that fit together are all kept, in either unit', () => {
    expect(doubtsOf(steady)).toEqual(['kept', 'kept', 'kept', 'kept', 'kept']);
    expect(doubtsOf([km('2025-01-01', 60_000), { day: '2025-05-01', value: 40_000, unit: 'mi' }])).toEqual([
      'kept',
      'kept',
    ]);
  });

  it('that do not are named with what may have happened, and the others stay', () => {
    const with3rd = (value: number): OdometerReading[] => steady.map((one, at) => (at === 2 ? { ...one, value } : one));
    expect(doubtsOf(with3rd(7000))[2]).toBe('lowerThanBefore');
    // 70,000 km written as miles, entered as km
    expect(doubtsOf(with3rd(43_496)).at(2)).toContain('lowerThanBefore');
    expect(doubtsOf(with3rd(700_000))[2]).toContain('tooFast higherThanAfter');
    expect(doubtsOf([km('2026-01-01', 70_000), km('2026-03-01', 43_600)])[1]).toBe('lowerThanBefore perhapsOtherUnit');
    expect(doubtsOf([km('2026-01-01', 98_000), km('2026-05-01', 1500)])[1]).toBe('lowerThanBefore perhapsRolledOver');
    expect(doubtsOf([km('2026-01-01', -5)])).toEqual(['negative']);
  });

  it('of one day may differ by a road test, not by more', () => {
    expect(doubtsOf([km('2026-01-01', 70_000), km('2026-01-01', 70_012)])).toEqual(['kept', 'kept']);
    expect(doubtsOf([km('2026-01-01', 70_000), km('2026-01-01', 71_000)])[1]).toContain('sameDayTwoValues');
  });

  it('are never refused, lost or changed', () => {
    const any = fc.record({
      day: fc.nat(2000).map((days) => addDays('2020-01-01', days)),
      value: fc.integer({ min: -10, max: 400_000 }),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 12 }), (rows) => {
        const judged = judgeReadings(rows.map(({ day, value }) => km(day, value)));
        expect(judged.map(({ day, value }) => `${day} ${value}`).sort()).toEqual(
          rows.map(({ day, value }) => `${day} ${value}`).sort(),
        );
        const kept = judged.filter((one) => one.kept).map((one) => one.km);
        expect(kept).toEqual([...kept].sort((a, b) => a - b));
        for (const one of judged) expect(one.doubts.length > 0).toBe(!one.kept);
      }),
    );
  });
});

describe('a projection', () => {
  it('is made by the vehicle’s own rate from two readings on, by a mean in print from one, marked as a guess', () => {
    const prior = mileagePrior('us2017');
    expect(drivenRate(steady, prior)).toMatchObject({ basis: 'readings', guess: false, source: null });
    expect(drivenRate([km('2026-05-01', 45_000)], prior)).toMatchObject({
      basis: 'prior',
      guess: true,
      source: prior.source,
    });
    expect(drivenRate([km('2026-05-01', 45_000)], null)).toBeNull();
    expect(drivenRate([], prior)).toBeNull();
  });

  it('does not move for one slip among its readings', () => {
    const slipped = [...steady, km('2025-11-01', 720_000)];
    expect(drivenRate(slipped, null)?.kmPerDay).toBe(drivenRate(steady, null)?.kmPerDay);
  });

  it('reaches a limit on the fast side first, and is carried on from the last reading', () => {
    const rate = drivenRate(steady, null);
    if (rate === null) throw new Error('No rate.');
    const day = dayOfReading(rate, 85_000, 'km');
    expect(day.earliest !== null && day.likely !== null && day.latest !== null).toBe(true);
    expect([day.earliest, day.likely, day.latest]).toEqual([day.earliest, day.likely, day.latest].sort());
    expect(day.earliest).not.toBe(day.likely);
    expect(dayOfReading(rate, 80_000, 'km')).toMatchObject({ reached: true, earliest: '2026-05-01' });
    expect(() => projectedReading(rate, '2026-04-30')).toThrow(RangeError);
  });

  it('and the day of a reading undo each other to the day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1000, max: 60_000 }), (days, driven) => {
        const rate = drivenRate([km('2025-01-01', 10_000), km('2026-01-01', 10_000 + driven)], null);
        if (rate === null) throw new Error('No rate.');
        const value = projectedReading(rate, addDays('2026-01-01', days)).likely;
        expect(dayOfReading(rate, value, 'km').likely).toBe(addDays('2026-01-01', days));
      }),
    );
  });

  it('of a vehicle that stood still counts on its being driven again', () => {
    const rate = drivenRate([km('2025-01-01', 10_000), km('2026-01-01', 10_000)], mileagePrior('gb2017'));
    if (rate === null) throw new Error('No rate.');
    expect(dayOfReading(rate, 12_000, 'km').likely).toBeNull();
    expect(dayOfReading(rate, 12_000, 'km').earliest).toBe('2026-03-05');
  });

  it('takes its mean by kind and age, and has none for a trailer', () => {
    expect(priorFor('light', 12)?.name).toBe('usOver9');
    expect(priorFor('light', 3)).toMatchObject({ name: 'usAge1to5', atLeast: true });
    expect(priorFor('light', null)?.name).toBe('us2017');
    expect(priorFor('motorcycle', 3)?.kmPerYear).toBe(4221);
    expect(priorFor('trailer', 3)).toBeNull();
  });
});

describe('lines', () => {
  it('of both kinds run through points that lie on one', () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -1000, max: 1000 }), (slope, intercept) => {
        const points = [0, 3, 7, 11].map((x) => ({ x, y: slope * x + intercept }));
        expect(theilSen(points)).toEqual({ slope, intercept });
        const line = leastSquares(points);
        expect(line.slope).toBeCloseTo(slope, 9);
        expect(line.intercept).toBeCloseTo(intercept, 8);
      }),
    );
  });

  it('of the robust kind stay where they are when one point of seven is anywhere', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), fc.nat(6), (anywhere, at) => {
        const points = [0, 1, 2, 3, 4, 5, 6].map((x) => ({ x, y: x === at ? anywhere : 2 * x }));
        // 15 of the 21 slopes are exact, the median is one of them.
        expect(theilSen(points)?.slope).toBe(2);
      }),
    );
    expect(
      theilSen([
        { x: 1, y: 1 },
        { x: 1, y: 5 },
      ]),
    ).toBeNull();
    expect(() =>
      leastSquares([
        { x: 1, y: 1 },
        { x: 2, y: 5 },
      ]),
    ).toThrow(RangeError);
  });
});
