/**
 * Working days of a shop as whole numbers, for many instants at a time.
 *
 * Hidden here: how a day number, a count of working days and an instant are turned into each other without asking the
 * calendar each time. Guaranteed: a day that is no working day counts as the working day after it, on which somebody
 * can receive what came; the instant given for a day is one at which the shop is open.
 */
import { type Calendar, type LocalDate, dateOfDayNumber, dayNumberOf } from '@holdfast/shop-calendar';

const dayMs = 86_400_000;
const minuteMs = 60_000;
/** further than any change of a clock moves it */
const nearChangeMs = 3 * 3_600_000;
/** how far ahead working days are looked for */
const horizonDays = 3_660;

export interface DayClock {
  readonly calendar: Calendar;
  /** days since 1970-01-01 of a date */
  dayNumber(date: LocalDate): number;
  date(day: number): LocalDate;
  /** the same of the date that the shop's clock shows at an instant */
  dayOf(instant: number): number;
  /** working days before this day, counted from an arbitrary one: the number of the day, or of the working day after it */
  workingDay(day: number): number;
  /** the day of that number; null if there is none within ten years of the first day asked about */
  dayOfWorkingDay(number: number): number | null;
  /** the instant of a minute of a day on the shop's clock; what the clock skips or shows twice as `compatible` */
  instantOf(day: number, minute: number): number;
  /** the last minute of the day in which the shop is open (its beginning); null if it is shut all day */
  lastOpenMinute(day: number): number | null;
}

/** The function with its answers kept. */
export function memoised<K, V>(make: (key: K) => V): (key: K) => V {
  const kept = new Map<K, V>();
  return (key) => {
    const found = kept.get(key);
    if (found !== undefined) return found;
    const made = make(key);
    kept.set(key, made);
    return made;
  };
}

/** Made once for a calendar, whose rules never change: what it has counted serves the next fit. */
const kept = new WeakMap<Calendar, { readonly from: number; readonly days: DayClock }>();

/** A clock that is quick from the day of `from` (epoch ms) on, and right before it. */
export function dayClock(calendar: Calendar, from: number): DayClock {
  const known = kept.get(calendar);
  if (known !== undefined && known.from <= from) return known.days;
  const days = makeDayClock(calendar, from);
  kept.set(calendar, { from, days });
  return days;
}

function makeDayClock(calendar: Calendar, from: number): DayClock {
  let span = calendar.clock.spanAt(from);
  const dayOf = (instant: number): number => {
    if (instant < span.from || instant >= span.to) span = calendar.clock.spanAt(instant);
    return Math.floor((instant + span.offsetMs) / dayMs);
  };
  const first = dayOf(from);
  const works = memoised((day: number): boolean => calendar.isWorkingDay(dateOfDayNumber(day)));
  /** working days before the day `first + i` */
  const counted = [0];
  const dayOfNumber: number[] = [];
  const count = (): void => {
    const day = first + counted.length - 1;
    const isWorking = works(day);
    if (isWorking) dayOfNumber.push(day);
    counted.push((counted.at(-1) ?? 0) + (isWorking ? 1 : 0));
  };
  return {
    calendar,
    dayNumber: memoised(dayNumberOf),
    date: memoised(dateOfDayNumber),
    dayOf,
    workingDay(day) {
      let before = 0;
      for (let one = day; one < first; one += 1) if (works(one)) before += 1;
      while (counted.length <= day - first) count();
      return before > 0 ? -before : (counted[Math.max(0, day - first)] ?? 0);
    },
    dayOfWorkingDay(number) {
      if (number < 0) throw new RangeError(`Working day ${number} lies before the first that counts.`);
      while (dayOfNumber.length <= number && counted.length <= number + horizonDays) count();
      return dayOfNumber[number] ?? null;
    },
    instantOf(day, minute) {
      const wall = day * dayMs + minute * minuteMs;
      const near = calendar.clock.spanAt(wall - span.offsetMs);
      const instant = wall - near.offsetMs;
      if (instant > near.from + nearChangeMs && instant < near.to - nearChangeMs) return instant;
      const time = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      return calendar.instantOf(dateOfDayNumber(day), time);
    },
    lastOpenMinute: memoised((day: number): number | null => {
      const { from: start, to } = calendar.dayBounds(dateOfDayNumber(day));
      const last = calendar.openIntervals(start, to).at(-1);
      return last === undefined ? null : Math.max(last.from, last.to - minuteMs);
    }),
  };
}
