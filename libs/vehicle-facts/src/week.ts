/**
 * Two ways to count the weeks of a year, and they differ. 49 CFR 574.5(b)(3): week 01 is the first full calendar week,
 * Sunday to Saturday; the last one may reach up to six days into the next year. ISO 8601: Monday to Sunday, week 01 is
 * the one with 4 January. From 2000 to 2040 no year has 53 weeks under both.
 */
import { type LocalDate, dateOfDayNumber, dayNumberOf } from '@holdfast/shop-calendar';

export const weekRules = ['cfr', 'iso'] as const;
export type WeekRule = (typeof weekRules)[number];

export interface WeekRange {
  /** first and last day, both included */
  readonly from: LocalDate;
  readonly to: LocalDate;
}

const dayOf = (year: number, monthDay: string): number => dayNumberOf(`${String(year).padStart(4, '0')}-${monthDay}`);
/** Days since the last Sunday; day 0, 1970-01-01, was a Thursday. */
const sinceSunday = (day: number): number => (((day + 4) % 7) + 7) % 7;

/** Day number of the first day of week 01. */
function firstDay(year: number, rule: WeekRule): number {
  if (rule === 'cfr') {
    const newYear = dayOf(year, '01-01');
    return newYear + ((7 - sinceSunday(newYear)) % 7);
  }
  const fourth = dayOf(year, '01-04');
  return fourth - ((sinceSunday(fourth) + 6) % 7);
}

/** 52 or 53. */
export function weeksInYear(year: number, rule: WeekRule): number {
  return (firstDay(year + 1, rule) - firstDay(year, rule)) / 7;
}

/** The days of a week; null if the year has no such week under the rule. */
export function weekRange(year: number, week: number, rule: WeekRule): WeekRange | null {
  if (!Number.isInteger(week) || week < 1 || week > weeksInYear(year, rule)) return null;
  const first = firstDay(year, rule) + (week - 1) * 7;
  return { from: dateOfDayNumber(first), to: dateOfDayNumber(first + 6) };
}

/** The week that a day lies in, and the year which that week belongs to (not always the day's own). */
export function weekOf(date: LocalDate, rule: WeekRule): { readonly year: number; readonly week: number } {
  const day = dayNumberOf(date);
  const own = Number(date.slice(0, 4));
  const year = [own + 1, own, own - 1].find((one) => firstDay(one, rule) <= day) ?? own - 1;
  return { year, week: Math.floor((day - firstDay(year, rule)) / 7) + 1 };
}
