/** Days, weeks and months as stretches of instants, and figures shared out over them. */
import { type Calendar, type Interval, type LocalDate, addDays, firstOfMonth, mondayOf } from '@holdfast/shop-calendar';

export type PeriodUnit = 'day' | 'week' | 'month';

/** From the start of a working day to the end of another (epoch milliseconds); the dates are those of the shop's zone. */
export interface Period extends Interval {
  readonly first: LocalDate;
  readonly last: LocalDate;
  /** false: the days asked for hold only a part of this week or month */
  readonly whole: boolean;
}

function firstAfter(date: LocalDate, unit: PeriodUnit): LocalDate {
  if (unit === 'day') return addDays(date, 1);
  return unit === 'week' ? addDays(mondayOf(date), 7) : firstOfMonth(addDays(firstOfMonth(date), 31));
}

function startOf(date: LocalDate, unit: PeriodUnit): LocalDate {
  if (unit === 'day') return date;
  return unit === 'week' ? mondayOf(date) : firstOfMonth(date);
}

/**
 * The working days `first` to `last` (both included) cut into days, ISO 8601 weeks (from Monday) or calendar months of
 * the shop's zone, in order, without gap or overlap. A shift past midnight belongs to the date it began on, also at the
 * end of a month; a day is as long as the clocks make it. None if `last` lies before `first`; refuses what is no date
 * with a RangeError.
 */
export function periodsOf(calendar: Calendar, first: LocalDate, last: LocalDate, unit: PeriodUnit): Period[] {
  const periods: Period[] = [];
  for (let date = first; date <= last;) {
    const next = firstAfter(date, unit);
    const end = addDays(next, -1);
    const until = end < last ? end : last;
    periods.push({
      from: calendar.workingDayBounds(date).from,
      to: calendar.workingDayBounds(until).to,
      first: date,
      last: until,
      whole: date === startOf(date, unit) && until === end,
    });
    date = next;
  }
  return periods;
}

/**
 * Calls `add` with the length (ms) of each piece of each stretch inside each period. Stretches are sorted by start and
 * may overlap; periods come in order and do not overlap. One pass over both.
 */
export function shareOut<T extends Interval>(
  stretches: readonly T[],
  periods: readonly Interval[],
  add: (period: number, one: T, ms: number) => void,
): void {
  let first = 0;
  for (const one of stretches) {
    while ((periods[first]?.to ?? Infinity) <= one.from) first += 1;
    for (let i = first; i < periods.length; i += 1) {
      const period = periods[i];
      if (period === undefined || period.from >= one.to) break;
      const ms = Math.min(one.to, period.to) - Math.max(one.from, period.from);
      if (ms > 0) add(i, one, ms);
    }
  }
}
