import { describe, expect, it } from '@jest/globals';
import { calendarOf } from './calendar.js';
import { type CalendarRules, type HourRange, faultsInRules, sameHours } from './calendar-rules.js';
import { weekdays } from './local-dates.js';

const london = 'Europe/London';
const at = (text: string): number => Date.parse(text);
const hour = 3_600_000;
const daily = (hours: readonly HourRange[], zone = london, rest: Partial<CalendarRules> = {}) =>
  calendarOf({
    zone,
    hours: [{ validFrom: '2000-01-01', week: sameHours(weekdays, hours), breaks: sameHours([], []) }],
    exceptions: [],
    ...rest,
  });
const weekdaysOnly = sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['08:00', '17:00']]);
const noon = sameHours(weekdays, [['12:00', '12:30']]);
const shop = calendarOf({
  zone: london,
  hours: [{ validFrom: '2000-01-01', week: weekdaysOnly, breaks: noon }],
  exceptions: [],
});

describe('open intervals', () => {
  it('are the hours of each weekday in the shop’s zone, cut at the window', () => {
    // 3 July 2026 is a Friday, in British Summer Time.
    expect(shop.openIntervals(at('2026-07-03T12:00:00+01:00'), at('2026-07-06T09:00:00+01:00'))).toEqual([
      { from: at('2026-07-03T12:00:00+01:00'), to: at('2026-07-03T17:00:00+01:00') },
      { from: at('2026-07-06T08:00:00+01:00'), to: at('2026-07-06T09:00:00+01:00') },
    ]);
  });

  it('hours that overlap or touch count once', () => {
    const calendar = daily([
      ['08:00', '12:00'],
      ['11:00', '13:00'],
      ['13:00', '14:00'],
    ]);
    const day = calendar.dayBounds('2026-07-03');
    expect(calendar.openIntervals(day.from, day.to)).toEqual([{ from: day.from + 8 * hour, to: day.from + 14 * hour }]);
  });

  it('a shift past midnight belongs to the evening it began on, and to one stretch', () => {
    const night = calendarOf({
      zone: london,
      hours: [{ validFrom: '2000-01-01', week: sameHours(['fri'], [['22:00', '06:00']]), breaks: sameHours([], []) }],
      exceptions: [],
    });
    const shift = { from: at('2026-07-03T22:00:00+01:00'), to: at('2026-07-04T06:00:00+01:00') };
    expect(night.openIntervals(at('2026-07-01T00:00:00Z'), at('2026-07-09T00:00:00Z'))).toEqual([shift]);
    expect(night.workingDayOf(at('2026-07-04T03:00:00+01:00'))).toBe('2026-07-03');
    expect(night.workingDayOf(shift.to)).toBe('2026-07-04');
    expect(night.workingDayBounds('2026-07-03').to).toBe(shift.to);
    expect(night.dayBounds('2026-07-03').to).toBe(at('2026-07-04T00:00:00+01:00'));
    expect(night.isWorkingDay('2026-07-04')).toBe(false);
  });

  it('a day round the clock may be written 00:00 to 24:00 or from a time to itself', () => {
    const week = [at('2026-07-03T00:00:00+01:00'), at('2026-07-10T00:00:00+01:00')] as const;
    expect(daily([['00:00', '24:00']]).openIntervals(...week)).toEqual([{ from: week[0], to: week[1] }]);
    expect(daily([['06:00', '06:00']]).openMs(...week)).toBe(7 * 24 * hour);
  });

  it('other hours on one date replace the week’s, the last listed counts, and the night before ends as it would', () => {
    const calendar = daily([['22:00', '06:00']], london, {
      exceptions: [
        { date: '2026-07-04', hours: [['10:00', '11:00']] },
        { date: '2026-07-04', hours: [], words: 'Closed for the harbour feast' },
      ],
    });
    expect(calendar.openIntervals(at('2026-07-04T00:00:00+01:00'), at('2026-07-05T23:00:00+01:00'))).toEqual([
      { from: at('2026-07-04T00:00:00+01:00'), to: at('2026-07-04T06:00:00+01:00') },
      { from: at('2026-07-05T22:00:00+01:00'), to: at('2026-07-05T23:00:00+01:00') },
    ]);
  });

  it('other breaks on one date replace those of its weekday; without them they stay', () => {
    const other = { date: '2026-07-03', hours: [['09:00', '15:00']] as const };
    const ofFriday = (exceptions: CalendarRules['exceptions']) => {
      const calendar = daily([['08:00', '17:00']], london, {
        hours: [{ validFrom: '2000-01-01', week: weekdaysOnly, breaks: noon }],
        exceptions,
      });
      const { from, to } = calendar.dayBounds('2026-07-03');
      return calendar.breakIntervals(from, to).map((one) => (one.from - from) / hour);
    };
    expect(ofFriday([other])).toEqual([12]);
    expect(ofFriday([{ ...other, breaks: [['10:00', '10:15']] }])).toEqual([10]);
    expect(ofFriday([{ ...other, breaks: [] }])).toEqual([]);
  });

  it('a shop that moves to another zone on a day when clocks change opens by each clock on its own days', () => {
    // Both go to summer time at 01:00 UTC on 29 March 2026 (IANA tz, file europe); the shop moves to Berlin that day.
    const moved = calendarOf({
      zone: [
        { validFrom: '1970-01-01', zone: london },
        { validFrom: '2026-03-29', zone: 'Europe/Berlin' },
      ],
      hours: [{ validFrom: '2000-01-01', week: sameHours(weekdays, [['08:00', '17:00']]), breaks: sameHours([], []) }],
      exceptions: [{ date: '2026-03-30', hours: [['10:00', '12:00']] }],
    });
    expect(moved.openIntervals(at('2026-03-28T00:00:00Z'), at('2026-03-31T00:00:00Z'))).toEqual([
      { from: at('2026-03-28T08:00:00Z'), to: at('2026-03-28T17:00:00Z') },
      { from: at('2026-03-29T06:00:00Z'), to: at('2026-03-29T15:00:00Z') },
      { from: at('2026-03-30T08:00:00Z'), to: at('2026-03-30T10:00:00Z') },
    ]);
    const length = (date: string) => (moved.dayBounds(date).to - moved.dayBounds(date).from) / hour;
    expect(['2026-03-27', '2026-03-28', '2026-03-29', '2026-03-30'].map(length)).toEqual([24, 23, 23, 24]);
    expect(moved.dateOf(at('2026-03-28T22:59:59Z'))).toBe('2026-03-28');
    expect(moved.dateOf(at('2026-03-28T23:00:00Z'))).toBe('2026-03-29');
  });

  it('hours hold from their date on: an edit does not change last year', () => {
    const breaks = sameHours([], []);
    const rules = { zone: london, hours: [{ validFrom: '2025-01-01', week: weekdaysOnly, breaks }], exceptions: [] };
    const longer = { validFrom: '2026-01-01', week: sameHours(weekdays, [['07:00', '19:00']]), breaks };
    const [before, after] = [calendarOf(rules), calendarOf({ ...rules, hours: [longer, ...rules.hours] })];
    const lastYear = [at('2025-01-01T00:00:00Z'), at('2026-01-01T00:00:00Z')] as const;
    expect(after.openIntervals(...lastYear)).toEqual(before.openIntervals(...lastYear));
    expect(after.openMs(at('2026-01-03T00:00:00Z'), at('2026-01-04T00:00:00Z'))).toBe(12 * hour);
    expect(before.openMs(at('2024-01-01T00:00:00Z'), at('2025-01-01T00:00:00Z'))).toBe(0);
  });

  it('breaks count only where the shop is open, and are not cut out of opening time', () => {
    const friday = shop.dayBounds('2026-07-03');
    expect(shop.breakIntervals(friday.from, friday.to + 24 * hour)).toEqual([
      { from: at('2026-07-03T12:00:00+01:00'), to: at('2026-07-03T12:30:00+01:00') },
    ]);
    expect(shop.openMs(friday.from, friday.to)).toBe(9 * hour);
  });
});

describe('clock changes', () => {
  it('opening inside the gap begins at its end; hours wholly inside it do not happen', () => {
    // Detroit skips 02:00 to 03:00 on 8 March 2026 (IANA tz: the change is at 07:00 UTC).
    const day = [at('2026-03-08T05:00:00Z'), at('2026-03-09T04:00:00Z')] as const;
    expect(daily([['02:30', '05:00']], 'America/Detroit').openIntervals(...day)).toEqual([
      { from: at('2026-03-08T07:00:00Z'), to: at('2026-03-08T09:00:00Z') },
    ]);
    expect(daily([['02:15', '02:45']], 'America/Detroit').openMs(...day)).toBe(0);
  });

  it('an hour shown twice counts twice', () => {
    // Detroit shows 01:00 to 02:00 twice on 1 November 2026 (IANA tz: back at 06:00 UTC).
    const day = [at('2026-11-01T04:00:00Z'), at('2026-11-02T05:00:00Z')] as const;
    expect(daily([['01:00', '02:00']], 'America/Detroit').openMs(...day)).toBe(2 * hour);
    expect(daily([['00:30', '01:30']], 'America/Detroit').openIntervals(...day)).toEqual([
      { from: at('2026-11-01T04:30:00Z'), to: at('2026-11-01T05:30:00Z') },
      { from: at('2026-11-01T06:00:00Z'), to: at('2026-11-01T06:30:00Z') },
    ]);
  });
});

describe('a clock set back just after midnight', () => {
  // St. John's went back from 00:01 to 23:01 on 7 November 2010 (IANA tz, file northamerica), so that the day before
  // shows its last 59 minutes twice, the second time after the new day's first minute.
  const zone = 'America/St_Johns';
  const back = at('2010-11-07T02:31:00Z');
  const breaks = sameHours([], []);
  const only = (day: 'fri' | 'sat', hours: readonly HourRange[]) =>
    calendarOf({ zone, hours: [{ validFrom: '2000-01-01', week: sameHours([day], hours), breaks }], exceptions: [] });
  const night = [at('2010-11-06T12:00:00Z'), at('2010-11-08T12:00:00Z')] as const;

  it('shows the evening of Saturday again, and its hours count again', () => {
    expect(only('sat', [['23:30', '24:00']]).openIntervals(...night)).toEqual([
      { from: back - 31 * 60_000, to: back - 60_000 },
      { from: back + 29 * 60_000, to: back + 59 * 60_000 },
    ]);
  });

  it('also those of a shift that began on Friday and lasts to 23:30 the next day', () => {
    expect(only('fri', [['23:30', '23:30']]).openIntervals(back - 60_000, night[1])).toEqual([
      { from: back, to: back + 29 * 60_000 },
    ]);
  });
});

describe('working days', () => {
  it('the n-th working day steps over weekends and closed dates, both ways', () => {
    expect(shop.nextWorkingDay('2026-07-03', 1)).toBe('2026-07-06');
    expect(shop.nextWorkingDay('2026-07-03', 6)).toBe('2026-07-13');
    expect(shop.nextWorkingDay('2026-07-06', -1)).toBe('2026-07-03');
    expect(shop.nextWorkingDay('2026-07-03', 0)).toBe('2026-07-03');
    expect(shop.nextWorkingDay('2026-07-04', 0)).toBe('2026-07-06');
  });

  it('the next opening is the instant itself while open, else the next start', () => {
    expect(shop.nextOpen(at('2026-07-03T16:59:00+01:00'))).toBe(at('2026-07-03T16:59:00+01:00'));
    expect(shop.nextOpen(at('2026-07-03T17:00:00+01:00'))).toBe(at('2026-07-06T08:00:00+01:00'));
    expect(shop.isOpen(at('2026-07-03T17:00:00+01:00'))).toBe(false);
    expect(shop.isOpen(at('2026-07-03T08:00:00+01:00'))).toBe(true);
  });

  it('work that does not fit today goes on at the next opening', () => {
    expect(shop.instantAfter(at('2026-07-03T16:00:00+01:00'), 90)).toBe(at('2026-07-06T08:30:00+01:00'));
    expect(shop.instantAfter(at('2026-07-03T16:00:00+01:00'), 60)).toBe(at('2026-07-03T17:00:00+01:00'));
  });

  it('a calendar that never opens answers null instead of searching for ever', () => {
    const closed = daily([]);
    expect(closed.nextOpen(0)).toBeNull();
    expect(closed.instantAfter(0, 1)).toBeNull();
    expect(closed.nextWorkingDay('2026-07-03', 1)).toBeNull();
    expect(closed.openMs(0, at('2026-01-01T00:00:00Z'))).toBe(0);
  });

  it('the date and the instant of a wall-clock time are those of the shop’s zone', () => {
    expect(shop.dateOf(at('2026-07-03T23:30:00Z'))).toBe('2026-07-04');
    expect(shop.instantOf('2026-07-04', '08:00')).toBe(at('2026-07-04T07:00:00Z'));
  });
});

describe('refusals', () => {
  it('names every fault of the rules in a sentence', () => {
    const rules = {
      zone: 'Europe/Atlantis',
      hours: [{ validFrom: '2026-02-30', week: sameHours(['mon'], [['24:00', '25:00']]), breaks: sameHours([], []) }],
      exceptions: [{ date: 'Monday', hours: [] }],
    };
    expect(faultsInRules(rules)).toEqual([
      'Time zone: "Europe/Atlantis" is not known here; a name such as Europe/London is.',
      'Hours: "2026-02-30" is not a date such as 2026-03-08.',
      'Hours from 2026-02-30, mon: "24:00" is not a time such as 07:30.',
      'Hours from 2026-02-30, mon: "25:00" is not a time such as 17:00 or 24:00.',
      'Other hours: "Monday" is not a date such as 2026-03-08.',
    ]);
    expect(() => calendarOf(rules)).toThrow(RangeError);
  });

  it('instants and counts that are not whole are refused', () => {
    expect(() => shop.openMs(0.5, 10)).toThrow(RangeError);
    expect(() => shop.openIntervals(0, NaN)).toThrow(RangeError);
    expect(() => shop.instantAfter(0, -1)).toThrow(RangeError);
    expect(() => shop.instantAfter(0, 1.5)).toThrow(RangeError);
  });
});
