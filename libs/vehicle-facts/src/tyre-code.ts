/**
 * The date code of a tyre: four symbols, week and year, at the end of the tyre identification number. Tyres sold in the
 * United States count weeks by 49 CFR 574.5(b)(3); UN Regulation 54 does not define week 1, so others may count by ISO
 * 8601. Both readings are kept where they differ, and age counts from the earliest first day. Until mid-2000 the code had
 * three symbols, which leave the decade open. A retread's code dates the retreading.
 */
import { type LocalDate, dayNumberOf } from '@holdfast/shop-calendar';
import { type WeekRange, type WeekRule, weekOf, weekRange, weekRules } from './week.js';

export interface TyreCodeReading extends WeekRange {
  readonly rule: WeekRule;
  readonly year: number;
  readonly week: number;
  /** the week has not begun yet on the day it was read */
  readonly inFuture: boolean;
}

export type TyreCodeFault = 'notFourDigits' | 'noSuchWeek' | 'yearAhead' | 'inFuture';

export type TyreCode =
  | {
      readonly kind: 'fourDigits';
      readonly code: string;
      /** one or two; those in the future only if another is not */
      readonly readings: readonly TyreCodeReading[];
      /** the earliest first day of those not in the future: the cautious one for age */
      readonly madeFrom: LocalDate;
      readonly madeTo: LocalDate;
    }
  /** made before mid-2000: a person says which decade */
  | {
      readonly kind: 'threeDigits';
      readonly code: string;
      readonly week: number;
      /** years that the arithmetic allows, in rising order */
      readonly years: readonly number[];
      /** the earliest day by any of the years */
      readonly madeFrom: LocalDate;
      readonly madeTo: LocalDate;
    }
  | { readonly kind: 'refused'; readonly code: string; readonly fault: TyreCodeFault };

/** Three symbols: from the first tyre identification numbers (1971, from memory) to the change "before July 2000". */
const threeDigitYears: { readonly first: number; readonly last: number } = { first: 1971, last: 2000 };
const lastThreeDigitDay: LocalDate = '2000-06-30';

function readingsOf(year: number, week: number, onDay: LocalDate): TyreCodeReading[] {
  return weekRules.flatMap((rule) => {
    const range = weekRange(year, week, rule);
    return range === null ? [] : [{ rule, year, week, ...range, inFuture: range.from > onDay }];
  });
}

const earliest = (ranges: readonly WeekRange[]): LocalDate => ranges.map(({ from }) => from).sort()[0] ?? '';
const latest = (ranges: readonly WeekRange[]): LocalDate =>
  ranges
    .map(({ to }) => to)
    .sort()
    .at(-1) ?? '';

function readThree(code: string, onDay: LocalDate): TyreCode {
  const week = Number(code.slice(0, 2));
  const years: number[] = [];
  for (let year = threeDigitYears.first; year <= threeDigitYears.last; year += 1) {
    if (year % 10 !== Number(code.charAt(2))) continue;
    const begun = readingsOf(year, week, onDay).some(({ from }) => from <= lastThreeDigitDay);
    if (begun) years.push(year);
  }
  const ranges = years.flatMap((year) => readingsOf(year, week, onDay));
  if (ranges.length === 0) return { kind: 'refused', code, fault: 'noSuchWeek' };
  return { kind: 'threeDigits', code, week, years, madeFrom: earliest(ranges), madeTo: latest(ranges) };
}

/**
 * The code as it was read off the sidewall on `onDay`, a date of the shop. Refused: anything but three or four ASCII
 * digits, a week that exists under neither rule, a year after this one ("3197" is week 31 of 2097, not of 1997), a week
 * that has not begun under either.
 */
export function readTyreCode(code: string, onDay: LocalDate): TyreCode {
  dayNumberOf(onDay);
  if (/^[0-9]{3}$/.test(code)) return readThree(code, onDay);
  if (!/^[0-9]{4}$/.test(code)) return { kind: 'refused', code, fault: 'notFourDigits' };
  const week = Number(code.slice(0, 2));
  const year = 2000 + Number(code.slice(2));
  if (year > Number(onDay.slice(0, 4))) return { kind: 'refused', code, fault: 'yearAhead' };
  const readings = readingsOf(year, week, onDay);
  if (readings.length === 0) return { kind: 'refused', code, fault: 'noSuchWeek' };
  const begun = readings.filter(({ inFuture }) => !inFuture);
  if (begun.length === 0) return { kind: 'refused', code, fault: 'inFuture' };
  return { kind: 'fourDigits', code, readings, madeFrom: earliest(begun), madeTo: latest(begun) };
}

/** The code that a tyre made on that day carries. */
export function tyreCodeOf(date: LocalDate, rule: WeekRule): string {
  const { year, week } = weekOf(date, rule);
  return String(week).padStart(2, '0') + String(year % 100).padStart(2, '0');
}

/** Whole years from one date to another, by anniversaries: of 29 February it is 1 March in common years. */
export function wholeYears(from: LocalDate, to: LocalDate): number {
  if (dayNumberOf(to) < dayNumberOf(from)) throw new RangeError(`${to} is before ${from}.`);
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4));
  return to.slice(5) < from.slice(5) ? years - 1 : years;
}
