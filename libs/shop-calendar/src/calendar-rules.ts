/** What a shop says about its opening hours, or a person about theirs, and what is refused in it. */
import { type ZoneFrom, localClock } from './local-clock.js';
import { type LocalDate, type TimeOfDay, type Weekday, isLocalDate, isTimeOfDay, weekdays } from './local-dates.js';

/**
 * Wall-clock hours of one date. `to` at or before `from` crosses midnight and belongs to the date it began on
 * (22:00 to 06:00; 06:00 to 06:00 is round the clock); `to` may be 24:00.
 */
export type HourRange = readonly [from: TimeOfDay, to: TimeOfDay];

export type WeekHours = Readonly<Record<Weekday, readonly HourRange[]>>;

/** The hours of a week from a date on, until the next entry's date. */
export interface HoursFrom {
  readonly validFrom: LocalDate;
  readonly week: WeekHours;
  /** by the weekday the break is taken on (a night shift's 02:00 break on the second day); only what is open counts */
  readonly breaks: WeekHours;
}

/** Other hours on one date; no hours: closed. A shift that began the evening before still ends as it would. */
export interface HoursException {
  readonly date: LocalDate;
  readonly hours: readonly HourRange[];
  /** other breaks taken on this date; left out: those of its weekday */
  readonly breaks?: readonly HourRange[];
  readonly words?: string;
}

export interface CalendarRules {
  /** an IANA zone, or several, each from a date on (the first also holds before its date) */
  readonly zone: string | readonly ZoneFrom[];
  /** in any order; before the first date: closed. Of two with one date the one listed last counts. */
  readonly hours: readonly HoursFrom[];
  /** in any order; of two with one date the one listed last counts. */
  readonly exceptions: readonly HoursException[];
}

/** A week with the same hours on the named days and none on the others. */
export function sameHours(days: readonly Weekday[], hours: readonly HourRange[]): WeekHours {
  const on = (day: Weekday): readonly HourRange[] => (days.includes(day) ? hours : []);
  return {
    mon: on('mon'),
    tue: on('tue'),
    wed: on('wed'),
    thu: on('thu'),
    fri: on('fri'),
    sat: on('sat'),
    sun: on('sun'),
  };
}

function isZone(zone: string): boolean {
  try {
    localClock(zone);
    return true;
  } catch (problem) {
    if (problem instanceof RangeError) return false;
    throw problem;
  }
}

function faultsInRanges(where: string, ranges: readonly HourRange[]): string[] {
  const faults: string[] = [];
  for (const [from, to] of ranges) {
    if (!isTimeOfDay(from) || from === '24:00') faults.push(`${where}: "${from}" is not a time such as 07:30.`);
    if (!isTimeOfDay(to)) faults.push(`${where}: "${to}" is not a time such as 17:00 or 24:00.`);
  }
  return faults;
}

/** Everything that is wrong with the rules, one sentence each; an empty list means that `calendarOf` takes them. */
export function faultsInRules(rules: CalendarRules): string[] {
  const faults: string[] = [];
  const checkDate = (where: string, date: string): void => {
    if (!isLocalDate(date)) faults.push(`${where}: "${date}" is not a date such as 2026-03-08.`);
  };
  const zones = typeof rules.zone === 'string' ? [{ validFrom: '1970-01-01', zone: rules.zone }] : rules.zone;
  if (zones.length === 0) faults.push('Time zone: none is given.');
  for (const { validFrom, zone } of zones) {
    checkDate('Time zone', validFrom);
    if (!isZone(zone)) faults.push(`Time zone: "${zone}" is not known here; a name such as Europe/London is.`);
  }
  for (const { validFrom, week, breaks } of rules.hours) {
    checkDate('Hours', validFrom);
    for (const day of weekdays) {
      faults.push(...faultsInRanges(`Hours from ${validFrom}, ${day}`, week[day]));
      faults.push(...faultsInRanges(`Breaks from ${validFrom}, ${day}`, breaks[day]));
    }
  }
  for (const { date, hours, breaks = [] } of rules.exceptions) {
    checkDate('Other hours', date);
    faults.push(...faultsInRanges(`Other hours on ${date}`, hours));
    faults.push(...faultsInRanges(`Other breaks on ${date}`, breaks));
  }
  return faults;
}
