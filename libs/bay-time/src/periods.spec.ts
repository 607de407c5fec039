import { describe, expect, it } from '@jest/globals';
import { calendarOf, sameHours, weekdays } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import { periodsOf } from './periods.js';

const shopIn = (zone: string, hours: [string, string] = ['08:00', '17:00']) =>
  calendarOf({
    zone,
    hours: [{ validFrom: '2020-01-01', week: sameHours([...weekdays], [hours]), breaks: sameHours([...weekdays], []) }],
    exceptions: [],
  });
const detroit = shopIn('America/Detroit');
const hoursLong = ({ from, to }: { from: number; to: number }): number => (to - from) / 3_600_000;

describe('days, weeks and months of the shop', () => {
  it('a day is as long as the clocks make it', () => {
    const march = periodsOf(detroit, '2026-03-07', '2026-03-09', 'day');
    expect(march.map(hoursLong)).toEqual([24, 23, 24]);
    expect(periodsOf(detroit, '2026-11-01', '2026-11-01', 'day').map(hoursLong)).toEqual([25]);
    expect(periodsOf(shopIn('Australia/Lord_Howe'), '2026-04-05', '2026-04-05', 'day').map(hoursLong)).toEqual([24.5]);
  });

  it('a month runs from its first to its last day by the wall clock, an hour short or long where clocks change', () => {
    const months = periodsOf(detroit, '2026-02-01', '2026-12-31', 'month');
    expect(months.map(({ first }) => first.slice(5))).toEqual(
      ['02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'].map((month) => `${month}-01`),
    );
    expect(months.map((one) => hoursLong(one) - 24 * Number(one.last.slice(8)))).toEqual([
      0, -1, 0, 0, 0, 0, 0, 0, 0, 1, 0,
    ]);
    expect(months.every(({ whole }) => whole)).toBe(true);
  });

  it('a month asked for in part is that part, and the next one whole', () => {
    expect(
      periodsOf(detroit, '2026-01-31', '2026-03-02', 'month').map((one) => [one.first, one.last, one.whole]),
    ).toEqual([
      ['2026-01-31', '2026-01-31', false],
      ['2026-02-01', '2026-02-28', true],
      ['2026-03-01', '2026-03-02', false],
    ]);
  });

  it('a week begins on Monday, also across the turn of the year', () => {
    expect(
      periodsOf(detroit, '2025-12-31', '2026-01-12', 'week').map((one) => [one.first, one.last, one.whole]),
    ).toEqual([
      ['2025-12-31', '2026-01-04', false],
      ['2026-01-05', '2026-01-11', true],
      ['2026-01-12', '2026-01-12', false],
    ]);
  });

  it('the night shift of the last day belongs to its month', () => {
    const nights = shopIn('Europe/London', ['22:00', '06:00']);
    const [january, february] = periodsOf(nights, '2026-01-01', '2026-02-28', 'month');
    expect(january?.to).toBe(nights.instantOf('2026-02-01', '06:00'));
    expect(february?.from).toBe(january?.to);
  });

  it('none where the last day lies before the first, and no date is refused', () => {
    expect(periodsOf(detroit, '2026-02-02', '2026-02-01', 'day')).toEqual([]);
    expect(() => periodsOf(detroit, '2026-02-30', '2026-03-01', 'month')).toThrow(RangeError);
  });

  it('cover the days asked for without gap or overlap, in every unit', () => {
    const zones = ['America/Detroit', 'Australia/Lord_Howe', 'America/St_Johns', 'Europe/London'].map((zone) =>
      shopIn(zone),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: 800 }),
        fc.integer({ min: 0, max: 100 }),
        fc.constantFrom('day' as const, 'week' as const, 'month' as const),
        (calendar, start, length, unit) => {
          const day = (n: number): string => new Date(Date.UTC(2025, 0, 1 + n)).toISOString().slice(0, 10);
          const [first, last] = [day(start), day(start + length)];
          const periods = periodsOf(calendar, first, last, unit);
          expect(periods[0]?.from).toBe(calendar.workingDayBounds(first).from);
          expect(periods.at(-1)?.to).toBe(calendar.workingDayBounds(last).to);
          for (let i = 1; i < periods.length; i += 1) expect(periods[i]?.from).toBe(periods[i - 1]?.to);
        },
      ),
      { numRuns: 200 },
    );
  });
});
