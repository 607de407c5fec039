import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { type Calendar, calendarOf } from './calendar.js';
import type { CalendarRules, HourRange, WeekHours } from './calendar-rules.js';
import { timeOfMinute, weekdays } from './local-dates.js';

const zones = [
  'Europe/London',
  'America/Detroit',
  'Australia/Lord_Howe',
  'America/St_Johns',
  'Africa/Cairo',
  'America/Santiago',
];
const day = 86_400_000;
const minute = 60_000;

const range: fc.Arbitrary<HourRange> = fc
  .tuple(fc.integer({ min: 0, max: 95 }), fc.integer({ min: 1, max: 96 }))
  .map(([from, to]) => [timeOfMinute(from * 15), timeOfMinute(to * 15)]);
const week: fc.Arbitrary<WeekHours> = fc.record({
  mon: fc.array(range, { maxLength: 2 }),
  tue: fc.array(range, { maxLength: 2 }),
  wed: fc.array(range, { maxLength: 2 }),
  thu: fc.array(range, { maxLength: 2 }),
  fri: fc.array(range, { maxLength: 2 }),
  sat: fc.array(range, { maxLength: 2 }),
  sun: fc.array(range, { maxLength: 2 }),
});
const rules: fc.Arbitrary<CalendarRules> = fc.record({
  zone: fc.constantFrom(...zones),
  hours: fc.record({ validFrom: fc.constant('2000-01-01'), week, breaks: week }).map((one) => [one]),
  exceptions: fc.array(
    fc.record({
      date: fc.constantFrom('2026-03-08', '2026-03-29', '2026-10-25', '2026-11-01'),
      hours: fc.array(range, { maxLength: 1 }),
    }),
    { maxLength: 2 },
  ),
});
const changes = ['03-08', '03-29', '04-05', '04-24', '07-01', '09-06', '10-04', '10-25', '11-01'].map(
  (d) => `2026-${d}`,
);
const within2Days = (dates: readonly string[]) =>
  fc
    .tuple(fc.constantFrom(...dates), fc.integer({ min: -2 * day, max: 2 * day }))
    .map(([date, away]) => Date.parse(`${date}T00:00:00Z`) + away);
/** around changes of the clock in the zones above, and elsewhere in the year */
const someInstant = within2Days(changes);
/** also around a change just after midnight, in St. John's */
const oddInstant = within2Days([...changes, '2010-11-07']);

/** Opening time read off luxon's wall clock minute by minute; right for doubled hours, as it asks instants only. */
function minutesByLuxon(given: CalendarRules, from: number, minutes: number): number {
  const { zone } = given;
  if (typeof zone !== 'string') throw new Error('these rules have one zone');
  const { week: hours } = given.hours[0] ?? { week: null };
  const exceptions = new Map(given.exceptions.map((one) => [one.date, one.hours]));
  const rangesOn = (date: DateTime): readonly HourRange[] =>
    exceptions.get(date.toFormat('yyyy-MM-dd')) ?? hours?.[weekdays[date.weekday - 1] ?? 'mon'] ?? [];
  const kept = new Map<string, readonly [readonly HourRange[], readonly HourRange[]]>();
  let count = 0;
  for (let i = 0; i < minutes; i += 1) {
    const wall = DateTime.fromMillis(from + i * minute, { zone });
    const key = `${wall.year}-${wall.month}-${wall.day}`;
    let ranges = kept.get(key);
    if (ranges === undefined) {
      const date = DateTime.utc(wall.year, wall.month, wall.day);
      ranges = [rangesOn(date), rangesOn(date.minus({ days: 1 }))];
      kept.set(key, ranges);
    }
    const time = timeOfMinute(wall.hour * 60 + wall.minute);
    const today = ranges[0].some(([begin, end]) => begin <= time && (time < end || end <= begin));
    const fromBefore = ranges[1].some(([begin, end]) => end <= begin && time < end);
    if (today || fromBefore) count += 1;
  }
  return count;
}

const lengthOf = (calendar: Calendar, from: number, to: number): number =>
  calendar.openIntervals(from, to).reduce((sum, one) => sum + one.to - one.from, 0);

describe('a calendar, for any rules', () => {
  it('opening time adds up: from a to b and from b to c is from a to c', () => {
    fc.assert(
      fc.property(rules, fc.tuple(someInstant, someInstant, someInstant), (given, three) => {
        const calendar = calendarOf(given);
        const [a = 0, b = 0, c = 0] = [...three].sort((x, y) => x - y);
        expect(calendar.openMs(a, b) + calendar.openMs(b, c)).toBe(calendar.openMs(a, c));
        expect(lengthOf(calendar, a, c)).toBe(calendar.openMs(a, c));
      }),
    );
  });

  it('the instant after n open minutes has n open minutes before it, and no earlier one has', () => {
    fc.assert(
      fc.property(rules, someInstant, fc.integer({ min: 1, max: 4000 }), (given, from, n) => {
        const calendar = calendarOf(given);
        const after = calendar.instantAfter(from, n);
        if (after === null) return expect(calendar.nextWorkingDay(calendar.dateOf(from), 20)).toBeNull();
        expect(calendar.openMinutes(from, after)).toBe(n);
        expect(calendar.openMs(from, after)).toBe(n * minute);
        return expect(calendar.openMs(from, after - 1)).toBe(n * minute - 1);
      }),
    );
  });

  it('is open exactly when luxon’s wall clock reads a time within the hours, across every change of clocks', () => {
    fc.assert(
      fc.property(rules, oddInstant, (given, any) => {
        const from = Math.floor(any / minute) * minute;
        const minutes = 1500;
        expect(calendarOf(given).openMinutes(from, from + minutes * minute)).toBe(minutesByLuxon(given, from, minutes));
      }),
      { numRuns: 40 },
    );
  });

  it('working days follow each other without gap or overlap, and hold the instants that name them', () => {
    fc.assert(
      fc.property(rules, oddInstant, (given, instant) => {
        const calendar = calendarOf(given);
        const date = calendar.workingDayOf(instant);
        const bounds = calendar.workingDayBounds(date);
        expect(bounds.from <= instant && instant < bounds.to).toBe(true);
        expect(calendar.workingDayOf(bounds.from)).toBe(date);
        expect(calendar.workingDayOf(bounds.to - 1)).toBe(date);
        expect(calendar.workingDayOf(bounds.to)).not.toBe(date);
      }),
    );
  });

  it('breaks lie inside opening time', () => {
    fc.assert(
      fc.property(rules, someInstant, (given, from) => {
        const calendar = calendarOf(given);
        for (const one of calendar.breakIntervals(from, from + 3 * day)) {
          expect(calendar.openMs(one.from, one.to)).toBe(one.to - one.from);
        }
      }),
    );
  });

  it('days are as long as luxon says', () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), fc.integer({ min: 0, max: 3000 }), (zone, n) => {
        const calendar = calendarOf({ zone, hours: [], exceptions: [] });
        const start = DateTime.fromISO('2024-01-01T12:00', { zone }).plus({ days: n }).startOf('day');
        const { from, to } = calendar.dayBounds(start.toFormat('yyyy-MM-dd'));
        expect([from, to]).toEqual([start.toMillis(), start.plus({ days: 1 }).startOf('day').toMillis()]);
      }),
      { numRuns: 300 },
    );
  });
});
