import { describe, expect, it } from '@jest/globals';
import { addDays, dayNumberOf } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import { leadingTyreFact, prohibitedByAgeInGreatBritain, tyreAge } from './tyre-age.js';
import { readTyreCode, tyreCodeOf, wholeYears } from './tyre-code.js';
import { weekOf, weekRange, weekRules } from './week.js';

const today = '2026-11-25';
const anyDay = fc
  .integer({ min: dayNumberOf('2000-01-03'), max: dayNumberOf(today) })
  .map((day) => addDays('1970-01-01', day));

describe('weeks', () => {
  it('of a day hold that day, under both rules', () => {
    fc.assert(
      fc.property(anyDay, fc.constantFrom(...weekRules), (day, rule) => {
        const { year, week } = weekOf(day, rule);
        const range = weekRange(year, week, rule);
        expect(range !== null && range.from <= day && day <= range.to).toBe(true);
      }),
    );
  });
});

describe('a tyre code', () => {
  it('of any day is read back to a range with that day in it', () => {
    fc.assert(
      fc.property(anyDay, fc.constantFrom(...weekRules), (day, rule) => {
        const read = readTyreCode(tyreCodeOf(day, rule), today);
        if (read.kind !== 'fourDigits') throw new Error(read.kind);
        expect(read.madeFrom <= day && day <= read.madeTo).toBe(true);
      }),
    );
  });

  it('keeps both readings where they differ, and counts age from the earlier', () => {
    expect(readTyreCode('2216', today)).toEqual({
      kind: 'fourDigits',
      code: '2216',
      readings: [
        { rule: 'cfr', year: 2016, week: 22, from: '2016-05-29', to: '2016-06-04', inFuture: false },
        { rule: 'iso', year: 2016, week: 22, from: '2016-05-30', to: '2016-06-05', inFuture: false },
      ],
      madeFrom: '2016-05-29',
      madeTo: '2016-06-05',
    });
  });

  it('of a week that has not begun is refused, of one begun under one rule kept by that rule', () => {
    expect(readTyreCode('4926', today)).toMatchObject({ kind: 'refused', fault: 'inFuture' });
    expect(readTyreCode('4826', today)).toMatchObject({ kind: 'fourDigits', madeFrom: '2026-11-23' });
  });

  it('of three symbols leaves the decade open, and none is later than the change of 2000', () => {
    expect(readTyreCode('317', today)).toMatchObject({ kind: 'threeDigits', week: 31, years: [1977, 1987, 1997] });
    expect(readTyreCode('200', today)).toMatchObject({ years: [1980, 1990, 2000] });
    expect(readTyreCode('400', today)).toMatchObject({ years: [1980, 1990] });
    expect(readTyreCode('007', today)).toMatchObject({ kind: 'refused', fault: 'noSuchWeek' });
  });
});

describe('the age of a tyre', () => {
  it('in whole years grows by one a year', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(30), fc.nat(364), (day, years, more) => {
        const anniversary = `${Number(day.slice(0, 4)) + years}${day.slice(4)}`;
        fc.pre(!day.endsWith('02-29'));
        expect(wholeYears(day, anniversary)).toBe(years);
        expect(wholeYears(day, addDays(anniversary, more))).toBe(years);
      }),
    );
    expect(wholeYears('2016-02-29', '2017-02-28')).toBe(0);
    expect(wholeYears('2016-02-29', '2017-03-01')).toBe(1);
    expect(() => wholeYears('2016-02-29', '2016-02-28')).toThrow(RangeError);
  });

  it('is quoted by the adviser whom the shop chose', () => {
    expect(tyreAge('2020-01-05', today, 'honda')).toMatchObject({ years: 6, says: 'inspectEveryYear' });
    expect(tyreAge('2020-01-05', today, 'mazda')).toMatchObject({ years: 6, says: 'replace' });
    expect(tyreAge('2020-01-05', today, 'rma')).toMatchObject({ years: 6, says: 'noFigure' });
    expect(tyreAge('2022-01-02', today, 'honda')).toMatchObject({ years: 4, says: 'nothingYet' });
  });

  it('of over ten years begins the day after the tenth anniversary', () => {
    const lorry = { vehicle: 'lorry', axle: 'front' } as const;
    expect(prohibitedByAgeInGreatBritain(lorry, '2016-05-29', '2026-05-29')?.prohibited).toBe(false);
    expect(prohibitedByAgeInGreatBritain(lorry, '2016-05-29', '2026-05-30')?.prohibited).toBe(true);
    expect(prohibitedByAgeInGreatBritain({ vehicle: 'lorry', axle: 'other' }, '2010-01-03', today)).toBeNull();
    expect(prohibitedByAgeInGreatBritain({ vehicle: 'minibus', wheels: 'twin' }, '2010-01-03', today)).toBeNull();
  });

  it('stands below what is seen on the tyre and below its depth', () => {
    const old = tyreAge('2010-01-03', today, 'mazda');
    expect(leadingTyreFact({ conditions: ['bulge'], treadFails: true, age: old })).toBe('condition');
    expect(leadingTyreFact({ conditions: [], treadFails: true, age: old })).toBe('tread');
    expect(leadingTyreFact({ conditions: [], treadFails: false, age: old })).toBe('age');
    expect(leadingTyreFact({ conditions: [], treadFails: null, age: null })).toBe('nothing');
  });
});
