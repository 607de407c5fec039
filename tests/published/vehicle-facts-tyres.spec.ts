/**
 * Tyre codes and ages against 49 CFR 574.5(b)(3), ISO 8601, manuals and notices, each with its source; luxon is the second
 * opinion on ISO weeks, and a walk over its calendar that on the rule of the CFR. Case numbers: the project's reference.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import {
  prohibitedByAgeInGreatBritain,
  readTyreCode,
  tyreAge,
  tyreAgeAdvice,
  tyreCodeOf,
  weekOf,
  weekRange,
  weeksInYear,
  wholeYears,
} from '@holdfast/vehicle-facts';
import { DateTime } from 'luxon';

const today = '2026-11-25';
type Range = readonly [string, string] | null;
const both = (code: string): readonly [cfr: Range, iso: Range] => {
  const range = (rule: 'cfr' | 'iso'): Range => {
    const found = weekRange(2000 + Number(code.slice(2)), Number(code.slice(0, 2)), rule);
    return found === null ? null : [found.from, found.to];
  };
  return [range('cfr'), range('iso')];
};

describe('32–41: weeks', () => {
  const ranges: [code: string, cfr: Range, iso: Range, source: string][] = [
    ['0109', ['2009-01-04', '2009-01-10'], ['2008-12-29', '2009-01-04'], '49 CFR 574.5(b)(3), its own example'],
    ['0301', ['2001-01-21', '2001-01-27'], ['2001-01-15', '2001-01-21'], '2006 Sprinter manual: 3rd week of 2001'],
    ['2501', ['2001-06-24', '2001-06-30'], ['2001-06-18', '2001-06-24'], 'Lincoln manual: 25th week of 2001'],
    ['2216', ['2016-05-29', '2016-06-04'], ['2016-05-30', '2016-06-05'], '574.5; ISO 8601'],
    ['0100', ['2000-01-02', '2000-01-08'], ['2000-01-03', '2000-01-09'], '574.5; ISO 8601'],
    ['4726', ['2026-11-22', '2026-11-28'], ['2026-11-16', '2026-11-22'], '574.5; ISO 8601'],
    ['4826', ['2026-11-29', '2026-12-05'], ['2026-11-23', '2026-11-29'], '574.5; ISO 8601'],
    ['5300', ['2000-12-31', '2001-01-06'], null, '574.5; ISO 8601'],
    ['5326', null, ['2026-12-28', '2027-01-03'], '574.5; ISO 8601'],
  ];
  it.each(ranges)('%s: CFR %j, ISO %j (%s)', (code, cfr, iso) => {
    expect(both(code)).toEqual([cfr, iso]);
  });

  it.each([
    ['5317', '2017-12-31'],
    ['5306', '2006-12-31'],
    ['5312', '2012-12-30'],
    ['5323', '2023-12-31'],
    ['5300', '2000-12-31'],
  ])('36: %s is a week of the CFR from %s, and none of ISO', (code, from) => {
    expect(readTyreCode(code, today)).toMatchObject({
      kind: 'fourDigits',
      madeFrom: from,
      readings: [{ rule: 'cfr' }],
    });
  });
  it.each(['5315', '5304', '5309', '5320'])('37: %s is a week of ISO and none of the CFR', (code) => {
    const read = readTyreCode(code, today);
    expect(read.kind === 'fourDigits' ? read.readings.map(({ rule }) => rule) : []).toEqual(['iso']);
  });
  it('37: 5326 is a week of ISO only, and in the future on 2026-11-25', () => {
    expect(readTyreCode('5326', today)).toMatchObject({ kind: 'refused', fault: 'inFuture' });
    expect(readTyreCode('5326', '2027-01-01')).toMatchObject({ kind: 'fourDigits', readings: [{ rule: 'iso' }] });
  });
  it.each(['0016', '0000', '5416', '9926'])('38: %s is no week', (code) => {
    expect(readTyreCode(code, today)).toMatchObject({ kind: 'refused', fault: 'noSuchWeek' });
  });
  it('39: 4826 on 2026-11-25 lies ahead by the CFR and is this week by ISO', () => {
    expect(readTyreCode('4826', today)).toMatchObject({
      readings: [
        { rule: 'cfr', inFuture: true },
        { rule: 'iso', inFuture: false },
      ],
      madeFrom: '2026-11-23',
    });
  });
  it('40: 2009 has 52 weeks of the CFR, 2017 has 53', () => {
    expect([weeksInYear(2009, 'cfr'), weeksInYear(2017, 'cfr')]).toEqual([52, 53]);
  });
  it('40: no year from 2000 to 2040 has 53 weeks under both; which have is as listed', () => {
    const long = (rule: 'cfr' | 'iso'): number[] =>
      Array.from({ length: 41 }, (_, at) => 2000 + at).filter((year) => weeksInYear(year, rule) === 53);
    expect(long('cfr')).toEqual([2000, 2006, 2012, 2017, 2023, 2028, 2034, 2040]);
    expect(long('iso')).toEqual([2004, 2009, 2015, 2020, 2026, 2032, 2037]);
  });
  it.each([
    ['2009-01-01', '5208'],
    ['2009-01-03', '5208'],
    ['2016-12-31', '5216'],
    ['2017-01-01', '0117'],
    ['2017-12-31', '5317'],
    ['2018-01-06', '5317'],
    ['2018-01-07', '0118'],
    ['2016-01-02', '5215'],
  ])('41: %s is coded %s by the CFR', (date, code) => {
    expect(tyreCodeOf(date, 'cfr')).toBe(code);
  });
});

describe('42–44: three symbols, and a trap in print', () => {
  it('42: 031 is week 3 of 1981 or 1991 (2006 Sprinter manual); arithmetic alone adds 1971', () => {
    expect(readTyreCode('031', today)).toMatchObject({ kind: 'threeDigits', week: 3, years: [1971, 1981, 1991] });
  });
  it('43: 317 is week 31 of 1997 (Lincoln manual), and the decade is open', () => {
    expect(readTyreCode('317', today)).toMatchObject({ kind: 'threeDigits', week: 31, years: [1977, 1987, 1997] });
  });
  it('44: 3197 is not week 31 of 1997, as a trailer maker prints, but of 2097: refused', () => {
    expect(readTyreCode('3197', today)).toMatchObject({ kind: 'refused', fault: 'yearAhead' });
  });
  it.each(['', '22', '22166', '2 16', 'W216', '-116', '22.6', '２２１６', '2216\n'])('%j is no code', (code) => {
    expect(readTyreCode(code, today)).toMatchObject({ kind: 'refused', fault: 'notFourDigits' });
  });
});

describe('45: ISO 8601', () => {
  it.each([
    ['2005-01-01', 2004, 53, 'PostgreSQL documentation'],
    ['2006-01-01', 2005, 52, 'PostgreSQL documentation'],
    ['2012-12-31', 2013, 1, 'PostgreSQL documentation'],
    ['1996-12-31', 1997, 1, 'public documentation'],
    ['2020-12-31', 2020, 53, 'Kusto documentation'],
    ['2020-06-15', 2020, 25, 'public documentation'],
    ['1970-01-01', 1970, 1, 'public documentation'],
    ['2000-01-01', 1999, 52, 'public documentation'],
    ['2008-03-17', 2008, 12, 'public documentation'],
    ['2010-01-01', 2009, 53, 'public documentation'],
    ['2010-01-03', 2009, 53, 'public documentation'],
  ])('%s is %d-W%d (%s)', (date, year, week) => {
    expect(weekOf(date, 'iso')).toEqual({ year, week });
  });

  it('luxon gives the same ISO week on every day from 2000 to 2040, and the CFR week by its own calendar', () => {
    let sundays = 0;
    for (let day = DateTime.utc(2000, 1, 2); day.year <= 2040; day = day.plus({ days: 1 })) {
      const date = day.toISODate() ?? '';
      const iso = weekOf(date, 'iso');
      if (iso.year !== day.weekYear || iso.week !== day.weekNumber) throw new Error(`ISO week of ${date}`);
      // First full week, Sunday to Saturday: the count of Sundays of a year up to and with the day, else the year before.
      sundays = day.weekday === 7 ? (day.day <= 7 && day.month === 1 ? 1 : sundays + 1) : sundays;
      const cfr = weekOf(date, 'cfr');
      const year = day.month === 1 && sundays > 50 ? day.year - 1 : day.year;
      if (cfr.year !== year || cfr.week !== sundays) throw new Error(`CFR week of ${date}: ${cfr.year}-${cfr.week}`);
    }
    expect(sundays).toBe(53);
  });
});

describe('46–51: age', () => {
  it('46: 2216 is not ten years old on 2026-05-27 and is on 2026-05-29 (Bridgestone, Michelin, Honda: ten years)', () => {
    const made = readTyreCode('2216', '2026-05-27');
    const from = made.kind === 'fourDigits' ? made.madeFrom : '';
    for (const adviser of ['bridgestone', 'michelin', 'honda'] as const) {
      expect(tyreAge(from, '2026-05-27', adviser)).toMatchObject({ years: 9, says: 'inspectEveryYear' });
      expect(tyreAge(from, '2026-05-29', adviser)).toMatchObject({ years: 10, says: 'replace' });
    }
  });
  it('46: on 2026-11-25, 4720 is just over six years by the CFR and 4820 just under', () => {
    expect(wholeYears(weekRange(2020, 47, 'cfr')?.from ?? '', today)).toBe(6);
    expect(wholeYears(weekRange(2020, 48, 'cfr')?.from ?? '', today)).toBe(5);
  });
  it('47, 48: six years by Lincoln, Mazda, Jaguar; ten by Bridgestone, Michelin, Honda, BRMA 2001', () => {
    const ages = (...advisers: Parameters<typeof tyreAgeAdvice>[0][]) =>
      advisers.map((one) => tyreAgeAdvice(one).replaceAtYears);
    expect(ages('lincoln', 'mazda', 'jaguar2018')).toEqual([6, 6, 6]);
    expect(ages('bridgestone', 'michelin', 'honda', 'brma2001')).toEqual([10, 10, 10, 10]);
    expect(tyreAgeAdvice('brma2001').notNewOverYears).toBe(6);
  });
  it('49, 50: an 11-year-old tyre on the front axle of a lorry is prohibited in Great Britain, on a private car not spoken of (DVSA)', () => {
    expect(prohibitedByAgeInGreatBritain({ vehicle: 'lorry', axle: 'front' }, '2015-11-01', today)?.prohibited).toBe(
      true,
    );
    expect(prohibitedByAgeInGreatBritain({ vehicle: 'lorry', axle: 'front' }, '2009-01-04', '2021-01-31')).toBeNull();
    expect(prohibitedByAgeInGreatBritain({ vehicle: 'privateCar' }, '2015-11-01', today)).toBeNull();
  });
  it('51: NHTSA names no age (advisory 2008, summary 2014)', () => {
    for (const adviser of ['nhtsa2008', 'nhtsa2014'] as const) {
      expect(tyreAge('2009-01-04', today, adviser).says).toBe('noFigure');
    }
  });
});

interface TyreData {
  readonly years: Readonly<
    Record<
      string,
      Readonly<Record<'cfrWeek1Starts' | 'isoWeek1Starts', string> & Record<'cfrWeeks' | 'isoWeeks', number>>
    >
  >;
  readonly cases: readonly { readonly code: string; readonly cfr: Range; readonly iso8601: Range }[];
}

it('the whole list: 33 codes, 33 years', () => {
  const file = fileURLToPath(new URL('../../../shared/reference/data/vehicle/tyre-date-codes.json', import.meta.url));
  if (!existsSync(file)) {
    console.log('tyre-date-codes.json is absent; the cases above are all that is checked.');
    return;
  }
  const data = JSON.parse(readFileSync(file, 'utf8')) as TyreData;
  expect([data.cases.length, Object.keys(data.years).length]).toEqual([33, 33]);
  for (const { code, cfr, iso8601 } of data.cases) expect([code, ...both(code)]).toEqual([code, cfr, iso8601]);
  for (const [year, row] of Object.entries(data.years)) {
    const first = (rule: 'cfr' | 'iso') => [weekRange(Number(year), 1, rule)?.from, weeksInYear(Number(year), rule)];
    expect(first('cfr')).toEqual([row.cfrWeek1Starts, row.cfrWeeks]);
    expect(first('iso')).toEqual([row.isoWeek1Starts, row.isoWeeks]);
  }
});
