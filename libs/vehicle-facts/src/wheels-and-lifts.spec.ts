import { describe, expect, it } from '@jest/globals';
import { exceedsRating, liftInspection, liftingPointsHold, retorqueReadingHolds } from './wheels-and-lifts.js';

describe('a lift', () => {
  it('is compared in the unit on its plate, and holds its rating exactly', () => {
    const rated = { value: 10_000, unit: 'lb' } as const;
    expect(exceedsRating({ value: 4536, unit: 'kg' }, rated)).toBe(true);
    expect(exceedsRating({ value: 4535, unit: 'kg' }, rated)).toBe(false);
    expect(exceedsRating({ value: 10_000, unit: 'lb' }, rated)).toBe(false);
    expect(() => exceedsRating({ value: 1, unit: 'kg' }, { value: 0, unit: 'kg' })).toThrow(RangeError);
  });

  it('is in date on the anniversary of its inspection and overdue the day after', () => {
    expect(liftInspection('2025-11-25', '2026-11-25')).toEqual({
      lastDay: '2026-11-25',
      overdue: false,
      inFuture: false,
    });
    expect(liftInspection('2025-11-25', '2026-11-26').overdue).toBe(true);
    expect(liftInspection('2026-12-01', '2026-11-25').inFuture).toBe(true);
    expect(liftInspection('2024-02-29', '2024-03-01').lastDay).toBe('2025-02-28');
    expect(liftInspection('2026-08-31', '2026-09-01', 6).lastDay).toBe('2027-02-28');
  });

  it('holds the job where lifting points are damaged or corroded', () => {
    expect(liftingPointsHold('corroded') && liftingPointsHold('damaged')).toBe(true);
    expect(liftingPointsHold('sound') || liftingPointsHold('notLookedAt')).toBe(false);
  });
});

describe('a re-torque', () => {
  it('is not read below the reading at which the wheel was fitted', () => {
    expect(retorqueReadingHolds({ value: 100_000, unit: 'km' }, { value: 62_138, unit: 'mi' })).toBe(true);
    expect(retorqueReadingHolds({ value: 100_000, unit: 'km' }, { value: 62_137, unit: 'mi' })).toBe(false);
  });
});
