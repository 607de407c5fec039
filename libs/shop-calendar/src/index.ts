/**
 * When the shop is open, when its people are there, when a van comes, and what the clock on its wall shows.
 *
 * Hidden here: time zones, clock changes, shifts past midnight, hours that changed from a date on, and the cost of
 * asking about them. Guaranteed (rule 13 of the domain): times are instants, days and hours are of the shop's zone,
 * and they stay right when clocks change. Open at an instant means exactly that the wall clock then reads a time
 * within the hours of its date. Nothing here reads a clock: every instant is an argument, in epoch milliseconds.
 */
export { clip, covers, firstEndingAfter, intersect, subtract, summedMs, tidy, totalMs, union } from './intervals.js';
export type { Interval } from './intervals.js';
export {
  addDays,
  dayNumberOf,
  dateOfDayNumber,
  daysBetween,
  firstOfMonth,
  isLocalDate,
  isTimeOfDay,
  minuteOfDay,
  mondayOf,
  timeOfMinute,
  weekdayOf,
  weekdays,
} from './local-dates.js';
export type { LocalDate, TimeOfDay, Weekday } from './local-dates.js';
export { dateOf, instantOf, localParts, timesShown } from './local-clock.js';
export type { LocalParts, WhichInstant, ZoneFrom } from './local-clock.js';
export { faultsInRules, sameHours } from './calendar-rules.js';
export type { CalendarRules, HourRange, HoursException, HoursFrom, WeekHours } from './calendar-rules.js';
export { calendarOf } from './calendar.js';
export type { Calendar } from './calendar.js';
export { usableIntervals, workingIntervals } from './working-hours.js';
export { faultsInSeason, nextSeasonEnd, nextSeasonStart, seasonOn } from './seasons.js';
export type { Season } from './seasons.js';
export { faultsInDeliveryRules, nextRun, runsWithCutOff } from './delivery-runs.js';
export type { DeliveryRules, DeliveryRun, NextRun } from './delivery-runs.js';
export { staleZones } from './zone-data.js';
export type { StaleZone } from './zone-data.js';
