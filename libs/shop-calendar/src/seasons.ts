/** Seasons a shop has dated, such as the one when roads are salted: the same days every year. */
import { type LocalDate, addDays, dayNumberOf, isLocalDate } from './local-dates.js';

/** Both days belong to it. `to` before `from` crosses New Year. 29 February: 1 March as the first day, 28 February as the last. */
export interface Season {
  readonly name: string;
  /** first day, `MM-DD` */
  readonly from: string;
  /** last day, `MM-DD` */
  readonly to: string;
}

/** What is wrong with a season, one sentence each. */
export function faultsInSeason(season: Season): string[] {
  const faults = [season.from, season.to]
    .filter((day) => !isLocalDate(`2024-${day}`)) // 2024 has a 29 February
    .map((day) => `Season "${season.name}": "${day}" is not a day of the year such as 11-01.`);
  if (season.name.trim() === '') faults.push('A season needs a name.');
  return faults;
}

const year = (date: LocalDate): number => Number(date.slice(0, 4));

function dayIn(ofYear: number, monthDay: string, instead: string): LocalDate {
  const date = `${String(ofYear).padStart(4, '0')}-${monthDay}`;
  return isLocalDate(date) ? date : `${date.slice(0, 5)}${instead}`;
}

const firstDay = (season: Season, ofYear: number): LocalDate => dayIn(ofYear, season.from, '03-01');
const lastDay = (season: Season, ofYear: number): LocalDate => dayIn(ofYear, season.to, '02-28');

function refuseFaults(season: Season): void {
  const faults = faultsInSeason(season);
  if (faults.length > 0) throw new RangeError(faults.join(' '));
}

/** First day of the season after the date (never the date itself). */
export function nextSeasonStart(season: Season, after: LocalDate): LocalDate {
  refuseFaults(season);
  dayNumberOf(after);
  const thisYear = firstDay(season, year(after));
  return thisYear > after ? thisYear : firstDay(season, year(after) + 1);
}

/** Last day of the season after the date (never the date itself). */
export function nextSeasonEnd(season: Season, after: LocalDate): LocalDate {
  refuseFaults(season);
  dayNumberOf(after);
  const thisYear = lastDay(season, year(after));
  return thisYear > after ? thisYear : lastDay(season, year(after) + 1);
}

/** The season that the date lies in, with its first and last day; null outside it. */
export function seasonOn(season: Season, date: LocalDate): { readonly from: LocalDate; readonly to: LocalDate } | null {
  const to = nextSeasonEnd(season, addDays(date, -1));
  const crosses = season.to < season.from;
  const from = firstDay(season, crosses ? year(to) - 1 : year(to));
  return from <= date ? { from, to } : null;
}
