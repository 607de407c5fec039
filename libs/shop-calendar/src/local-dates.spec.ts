import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  addDays,
  dateOfDayNumber,
  dayNumberOf,
  daysBetween,
  firstOfMonth,
  isLocalDate,
  isTimeOfDay,
  minuteOfDay,
  mondayOf,
  timeOfMinute,
  weekdayOf,
} from './local-dates.js';

describe('dates and times of day', () => {
  it('a day number and its date are each other’s reverse', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (day) => dayNumberOf(dateOfDayNumber(day)) === day),
    );
  });

  it('weekdays are those of the calendar', () => {
    expect(weekdayOf('1970-01-01')).toBe('thu');
    expect(weekdayOf('1969-12-31')).toBe('wed');
    expect(weekdayOf('2024-02-29')).toBe('thu');
    expect(weekdayOf('2026-11-25')).toBe('wed');
  });

  it('the Monday of a week is a Monday at most six days back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 40_000 }), (day) => {
        const date = dateOfDayNumber(day);
        const back = daysBetween(mondayOf(date), date);
        expect(weekdayOf(mondayOf(date))).toBe('mon');
        expect(back >= 0 && back <= 6).toBe(true);
      }),
    );
    expect(firstOfMonth('2026-11-25')).toBe('2026-11-01');
  });

  it('a leap day is counted', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2025-02-28', 1)).toBe('2025-03-01');
    expect(addDays('2024-03-01', -1)).toBe('2024-02-29');
  });

  it.each(['2026-02-30', '2026-13-01', '2026-1-1', '26-01-01', '2026-01-01T00:00', '', '2025-02-29'])(
    'a date that does not exist is refused: "%s"',
    (text) => {
      expect(isLocalDate(text)).toBe(false);
      expect(() => dayNumberOf(text)).toThrow(RangeError);
    },
  );

  it.each(['24:01', '7:30', '12:60', '', '25:00', '12:00:00'])(
    'a time that no clock shows is refused: "%s"',
    (text) => {
      expect(isTimeOfDay(text)).toBe(false);
      expect(() => minuteOfDay(text)).toThrow(RangeError);
    },
  );

  it('minutes of a day run from 00:00 to 24:00 and back', () => {
    for (let minute = 0; minute <= 1440; minute += 1) expect(minuteOfDay(timeOfMinute(minute))).toBe(minute);
    expect(() => timeOfMinute(1441)).toThrow(RangeError);
    expect(() => timeOfMinute(0.5)).toThrow(RangeError);
  });
});
