import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, dateOfDayNumber } from './local-dates.js';
import { faultsInSeason, nextSeasonEnd, nextSeasonStart, seasonOn } from './seasons.js';

const salt = { name: 'salt', from: '11-01', to: '03-31' };
const summer = { name: 'summer', from: '06-15', to: '09-15' };
const leap = { name: 'leap', from: '02-29', to: '02-29' };

describe('seasons', () => {
  it('one that crosses New Year starts in one year and ends in the next', () => {
    expect(nextSeasonStart(salt, '2026-10-31')).toBe('2026-11-01');
    expect(nextSeasonStart(salt, '2026-11-01')).toBe('2027-11-01');
    expect(nextSeasonEnd(salt, '2026-11-01')).toBe('2027-03-31');
    expect(nextSeasonEnd(salt, '2027-03-31')).toBe('2028-03-31');
    expect(seasonOn(salt, '2027-01-15')).toEqual({ from: '2026-11-01', to: '2027-03-31' });
    expect(seasonOn(salt, '2026-11-01')).toEqual({ from: '2026-11-01', to: '2027-03-31' });
    expect(seasonOn(salt, '2026-10-31')).toBeNull();
    expect(seasonOn(salt, '2027-04-01')).toBeNull();
  });

  it('one within a year holds both its days', () => {
    expect(seasonOn(summer, '2026-06-15')).toEqual({ from: '2026-06-15', to: '2026-09-15' });
    expect(seasonOn(summer, '2026-09-15')).toEqual({ from: '2026-06-15', to: '2026-09-15' });
    expect(seasonOn(summer, '2026-09-16')).toBeNull();
  });

  it('29 February is 1 March as a first day and 28 February as a last one where there is none', () => {
    expect(nextSeasonStart(leap, '2025-01-01')).toBe('2025-03-01');
    expect(nextSeasonEnd(leap, '2025-01-01')).toBe('2025-02-28');
    expect(nextSeasonStart(leap, '2028-01-01')).toBe('2028-02-29');
  });

  it('a date is in the season exactly if its end comes before its next start', () => {
    fc.assert(
      fc.property(fc.constantFrom(salt, summer), fc.integer({ min: 15_000, max: 30_000 }), (season, day) => {
        const date = dateOfDayNumber(day);
        const eve = addDays(date, -1);
        const started = nextSeasonEnd(season, eve) < nextSeasonStart(season, date);
        expect(seasonOn(season, date) !== null).toBe(started);
      }),
    );
  });

  it('days that no year has, and a season without a name, are refused', () => {
    expect(faultsInSeason({ name: ' ', from: '13-01', to: '02-30' })).toHaveLength(3);
    expect(() => nextSeasonStart({ name: 'x', from: '1-1', to: '02-01' }, '2026-01-01')).toThrow(RangeError);
    expect(() => nextSeasonStart(salt, 'today')).toThrow(RangeError);
  });
});
