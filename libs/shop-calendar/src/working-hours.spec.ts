import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { calendarOf } from './calendar.js';
import { type HourRange, sameHours } from './calendar-rules.js';
import { intersect, totalMs } from './intervals.js';
import { timeOfMinute, weekdays } from './local-dates.js';
import { usableIntervals, workingIntervals } from './working-hours.js';

const calendar = (hours: readonly HourRange[], breaks: readonly HourRange[]) =>
  calendarOf({
    zone: 'Europe/London',
    hours: [{ validFrom: '2000-01-01', week: sameHours(weekdays, hours), breaks: sameHours(weekdays, breaks) }],
    exceptions: [],
  });
const shop = calendar([['08:00', '17:00']], [['12:00', '12:30']]);
const day = shop.dayBounds('2026-07-03');
const local = (from: string, to: string) => ({
  from: shop.instantOf('2026-07-03', from),
  to: shop.instantOf('2026-07-03', to),
});

describe('hours of people and of bays', () => {
  it('a person works within their own hours and the shop’s, less the breaks of both and times away', () => {
    const person = calendar([['06:00', '15:00']], [['10:00', '10:15']]);
    expect(workingIntervals(shop, person, day, [local('14:00', '20:00')])).toEqual([
      local('08:00', '10:00'),
      local('10:15', '12:00'),
      local('12:30', '14:00'),
    ]);
  });

  it('a bay can be used while the shop is open and it is not out of use; a break takes nothing from it', () => {
    expect(usableIntervals(shop, day, [local('07:00', '09:00')])).toEqual([local('09:00', '17:00')]);
  });

  it('nobody works more than the shop is open, or during a time away', () => {
    const range: fc.Arbitrary<HourRange> = fc
      .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 1, max: 24 }))
      .map(([from, to]) => [timeOfMinute(from * 60), timeOfMinute(to * 60)]);
    fc.assert(
      fc.property(range, range, fc.integer({ min: 0, max: 23 }), (hours, breaks, away) => {
        const gone = [{ from: day.from + away * 3_600_000, to: day.from + (away + 2) * 3_600_000 }];
        const works = workingIntervals(shop, calendar([hours], [breaks]), day, gone);
        expect(totalMs(intersect(works, shop.openIntervals(day.from, day.to)))).toBe(totalMs(works));
        expect(totalMs(intersect(works, gone))).toBe(0);
      }),
    );
  });
});
