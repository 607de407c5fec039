import { describe, expect, it } from '@jest/globals';

import { formatsFor } from './format.js';
import { fromZonedInput, toZonedInput } from './zoned-input.js';

const harbour = { locale: 'en-GB', zone: 'Europe/London', currency: 'GBP', distanceUnit: 'mi' } as const;
const gb = formatsFor(harbour);
const us = formatsFor({ locale: 'en-US', zone: 'America/New_York', currency: 'USD', distanceUnit: 'mi' });
const at = Date.UTC(2026, 10, 25, 15, 4, 10);
const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

describe('formats', () => {
  it('write times in 24 hours for en-GB and 12 for en-US, each in the zone of the shop', () => {
    expect(gb.time(at)).toBe('15:04');
    expect(gb.timeToSecond(at)).toBe('15:04:10');
    expect(plain(us.time(at))).toBe('10:04 AM');
  });

  it('write midnight as 00:00, never as 24:00', () => {
    expect(gb.time(Date.UTC(2026, 10, 25))).toBe('00:00');
  });

  it('leave the date away only on the same day of the shop', () => {
    expect(gb.moment(at, at + 3_600_000)).toBe('15:04');
    expect(gb.moment(at, at + 86_400_000)).toBe('Wed 25 Nov, 15:04');
    const lateInLondon = Date.UTC(2026, 10, 25, 23, 30);
    expect(plain(us.moment(lateInLondon, lateInLondon + 3_600_000))).toBe('6:30 PM');
  });

  it('write durations as hours and minutes', () => {
    expect([0, 48, 60, 192, 6000].map((minutes) => plain(gb.duration(minutes)))).toEqual([
      '0 min',
      '48 min',
      '1 h 00',
      '3 h 12',
      '100 h',
    ]);
  });

  it('write money and decimals exactly from their strings', () => {
    expect(gb.money('12345678901234567.89')).toBe('£12,345,678,901,234,567.89');
    expect(gb.decimal('0.50')).toBe('0.50');
    expect(() => gb.money('1,5')).toThrow(RangeError);
  });

  it('keep an odometer in the unit it was read in', () => {
    expect(plain(gb.distance(42_350, 'km'))).toBe('42,350 km');
    expect(plain(gb.distance(42_350))).toBe('42,350 mi');
  });

  it('write a day without a time the same in every zone', () => {
    expect(gb.day('2026-11-25')).toBe('Wed, 25 Nov 2026');
    expect(plain(us.day('2026-11-25'))).toBe('Wed, Nov 25, 2026');
    expect(() => gb.day('25/11/2026')).toThrow(RangeError);
  });
});

describe('a time typed into a field', () => {
  it.each(['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu'])(
    'comes back as the same minute in %s through a whole year',
    (zone) => {
      for (let hour = 0; hour < 365 * 24; hour += 7) {
        const instant = Date.UTC(2026, 0, 1) + hour * 3_600_000;
        const typed = toZonedInput(instant, zone);
        const read = fromZonedInput(typed, zone);
        expect(read).not.toBeNull();
        expect(toZonedInput(read ?? 0, zone)).toBe(typed);
      }
    },
  );

  it('means the earlier instant where clocks go back', () => {
    expect(fromZonedInput('2026-10-25T01:30', 'Europe/London')).toBe(Date.UTC(2026, 9, 25, 0, 30));
  });

  it('moves on by the skipped hour where clocks go forward', () => {
    expect(fromZonedInput('2026-03-29T01:30', 'Europe/London')).toBe(Date.UTC(2026, 2, 29, 1, 30));
  });

  it('is nothing when it is no date and time', () => {
    expect(fromZonedInput('tomorrow', 'Europe/London')).toBeNull();
    expect(fromZonedInput('2026-13-40T99:99', 'Europe/London')).toBeNull();
  });
});
