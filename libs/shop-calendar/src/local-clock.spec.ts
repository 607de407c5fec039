import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { clockOfZones, dateOf, instantOf, localParts, partsAt, startOfDay, timesShown } from './local-clock.js';
import { dayNumberOf } from './local-dates.js';

const at = (text: string): number => Date.parse(text);
const zones = [
  'Europe/London',
  'America/Detroit',
  'Australia/Lord_Howe',
  'America/St_Johns',
  'Africa/Cairo',
  'Africa/Casablanca',
  'Asia/Kathmandu',
  'Pacific/Apia',
  'UTC',
];
const instants = fc.integer({ min: at('2005-01-01T00:00:00Z'), max: at('2033-01-01T00:00:00Z') });

describe('the wall clock of a zone', () => {
  it('reads the same date, time, weekday and offset as luxon at any instant', () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), instants, (zone, instant) => {
        const other = DateTime.fromMillis(instant, { zone });
        expect(localParts(instant, zone)).toEqual({
          date: other.toFormat('yyyy-MM-dd'),
          time: other.toFormat('HH:mm'),
          weekday: other.setLocale('en').toFormat('ccc').toLowerCase(),
          second: other.second,
          offsetMinutes: other.offset,
        });
      }),
      { numRuns: 500 },
    );
  });

  it('the instant of what the clock shows is that instant, unless the hour is shown twice', () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), instants, (zone, any) => {
        const instant = Math.floor(any / 60_000) * 60_000;
        const { date, time } = localParts(instant, zone);
        const [first, second] = [instantOf(date, time, zone, 'earlier'), instantOf(date, time, zone, 'later')];
        if (timesShown(date, time, zone) === 'once') expect([first, second]).toEqual([instant, instant]);
        else expect([first, second]).toContain(instant);
      }),
      { numRuns: 500 },
    );
  });

  // Temporal's rules (tc39 proposal-temporal, disambiguation); both Temporal polyfills give these instants.
  it.each([
    ['America/Detroit', '2026-03-08', '02:30', 'never', '2026-03-08T06:30Z', '2026-03-08T07:30Z', '2026-03-08T07:30Z'],
    ['America/Detroit', '2026-11-01', '01:30', 'twice', '2026-11-01T05:30Z', '2026-11-01T06:30Z', '2026-11-01T05:30Z'],
    [
      'Australia/Lord_Howe',
      '2026-10-04',
      '02:15',
      'never',
      '2026-10-03T15:15Z',
      '2026-10-03T15:45Z',
      '2026-10-03T15:45Z',
    ],
    [
      'Australia/Lord_Howe',
      '2026-04-05',
      '01:45',
      'twice',
      '2026-04-04T14:45Z',
      '2026-04-04T15:15Z',
      '2026-04-04T14:45Z',
    ],
  ] as const)(
    '%s %s %s, shown %s: earlier, later and compatible as Temporal has them',
    (zone, date, time, shown, earlier, later, compatible) => {
      expect(timesShown(date, time, zone)).toBe(shown);
      expect(instantOf(date, time, zone, 'earlier')).toBe(at(earlier));
      expect(instantOf(date, time, zone, 'later')).toBe(at(later));
      expect(instantOf(date, time, zone)).toBe(at(compatible));
    },
  );

  it('24:00 is the 00:00 of the next day', () => {
    expect(instantOf('2026-06-30', '24:00', 'Europe/London')).toBe(instantOf('2026-07-01', '00:00', 'Europe/London'));
  });

  it('a day that a place left out begins where the next one does', () => {
    // IANA tz, file australasia: Samoa went from 29 to 31 December 2011.
    const clock = clockOfZones([{ validFrom: '2000-01-01', zone: 'Pacific/Apia' }]);
    const [missing, next] = [dayNumberOf('2011-12-30'), dayNumberOf('2011-12-31')];
    expect(startOfDay(clock, missing)).toBe(startOfDay(clock, next));
    expect(dateOf(startOfDay(clock, missing) - 1, 'Pacific/Apia')).toBe('2011-12-29');
    expect(dateOf(startOfDay(clock, missing), 'Pacific/Apia')).toBe('2011-12-31');
  });

  it('a day whose midnight is skipped begins at 01:00', () => {
    // IANA tz, file africa: Egypt puts its clocks on at the midnight that begins the last Friday of April.
    const clock = clockOfZones([{ validFrom: '2000-01-01', zone: 'Africa/Cairo' }]);
    const start = startOfDay(clock, dayNumberOf('2026-04-24'));
    expect(partsAt(clock, start)).toMatchObject({ date: '2026-04-24', time: '01:00' });
    expect(partsAt(clock, start - 1)).toMatchObject({ date: '2026-04-23', time: '23:59' });
  });

  it('a shop that moves to another zone reads the old clock before the day and the new one from it', () => {
    const clock = clockOfZones([
      { validFrom: '2026-06-01', zone: 'America/Chicago' },
      { validFrom: '2020-01-01', zone: 'America/New_York' },
    ]);
    const move = at('2026-06-01T00:00:00-05:00');
    expect(partsAt(clock, move - 1)).toMatchObject({ date: '2026-06-01', time: '00:59', offsetMinutes: -240 });
    expect(partsAt(clock, move)).toMatchObject({ date: '2026-06-01', time: '00:00', offsetMinutes: -300 });
    expect(partsAt(clock, at('2019-07-01T12:00:00Z')).offsetMinutes).toBe(-240);
    // Westward, so the first hour of the day is shown twice, as when clocks go back: a day of 25 hours.
    const day = dayNumberOf('2026-06-01');
    expect(startOfDay(clock, day)).toBe(move - 3_600_000);
    expect(startOfDay(clock, day + 1) - startOfDay(clock, day)).toBe(25 * 3_600_000);
  });

  it('an unknown zone is refused', () => {
    expect(() => dateOf(0, 'Europe/Atlantis')).toThrow(RangeError);
    expect(() => clockOfZones([])).toThrow('A shop needs a time zone.');
  });
});
