/**
 * Calendar dates as text, `YYYY-MM-DD` (proleptic Gregorian, ISO 8601), and times of day, `HH:MM`, without any zone.
 * Whatever is not a real date or time is refused with a RangeError whose message says which.
 */
export type LocalDate = string;
/** `HH:MM`, 00:00 to 24:00, as the wall clock of a zone shows it. */
export type TimeOfDay = string;
export const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof weekdays)[number];

export const minuteMs = 60_000;
export const dayMs = 86_400_000;

/** Whether the text is a date that exists: `2026-02-30` does not. */
export function isLocalDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const at = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}

/** Days since 1970-01-01, whole. */
export function dayNumberOf(date: LocalDate): number {
  if (!isLocalDate(date)) throw new RangeError(`"${date}" is not a date such as 2026-03-08.`);
  return Date.parse(`${date}T00:00:00Z`) / dayMs;
}

/** The date of a day number; the reverse of `dayNumberOf`. Refuses what lies outside the years 0000 to 9999. */
export function dateOfDayNumber(day: number): LocalDate {
  const at = new Date(day * dayMs);
  if (!Number.isInteger(day) || Number.isNaN(at.getTime())) throw new RangeError(`${day} is not a day number.`);
  const text = at.toISOString();
  if (text.length !== 24) throw new RangeError(`Day ${day} lies outside the years 0000 to 9999.`);
  return text.slice(0, 10);
}

/** The date `days` later (earlier if negative). */
export function addDays(date: LocalDate, days: number): LocalDate {
  return dateOfDayNumber(dayNumberOf(date) + days);
}

/** Whole days from one date to another, negative if `to` is the earlier. */
export function daysBetween(from: LocalDate, to: LocalDate): number {
  return dayNumberOf(to) - dayNumberOf(from);
}

export function weekdayOf(date: LocalDate): Weekday {
  return weekdayOfDayNumber(dayNumberOf(date));
}

/** 1970-01-01, day 0, was a Thursday. */
export function weekdayOfDayNumber(day: number): Weekday {
  const weekday = weekdays[(((day + 3) % 7) + 7) % 7];
  if (weekday === undefined) throw new RangeError(`${day} is not a day number.`);
  return weekday;
}

/** Monday of the ISO 8601 week that the date lies in. */
export function mondayOf(date: LocalDate): LocalDate {
  const day = dayNumberOf(date);
  return dateOfDayNumber(day - weekdays.indexOf(weekdayOfDayNumber(day)));
}

/** The first of the month that the date lies in. */
export function firstOfMonth(date: LocalDate): LocalDate {
  dayNumberOf(date);
  return `${date.slice(0, 8)}01`;
}

/** Whether the text is a time of day: 00:00 to 23:59, and 24:00, the end of the day. */
export function isTimeOfDay(text: string): boolean {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(text) || text === '24:00';
}

/** Minutes since the day's 00:00 on the wall clock, 0 to 1440. */
export function minuteOfDay(time: TimeOfDay): number {
  if (!isTimeOfDay(time)) throw new RangeError(`"${time}" is not a time of day such as 07:30.`);
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

/** The reverse of `minuteOfDay`. */
export function timeOfMinute(minute: number): TimeOfDay {
  if (!Number.isInteger(minute) || minute < 0 || minute > 1440) {
    throw new RangeError(`${minute} is not a minute of a day (0 to 1440).`);
  }
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
