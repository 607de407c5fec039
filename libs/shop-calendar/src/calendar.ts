/** Opening time between instants, worked out from the rules day by day and kept. */
import { type CalendarRules, type HourRange, type HoursFrom, faultsInRules } from './calendar-rules.js';
import { type Interval, clip, covers, firstEndingAfter, intersect, union } from './intervals.js';
import {
  type LocalClock,
  type WhichInstant,
  clockOfZones,
  instantOfWallMs,
  instantsWhen,
  localClock,
  partsAt,
  startOfDay,
  wallMsAt,
} from './local-clock.js';
import {
  type LocalDate,
  type TimeOfDay,
  dateOfDayNumber,
  dayMs,
  dayNumberOf,
  minuteMs,
  minuteOfDay,
  weekdayOfDayNumber,
} from './local-dates.js';

/** All instants are epoch milliseconds, all intervals half-open; dates and times of day are those of the zone. */
export interface Calendar {
  readonly clock: LocalClock;
  /** open stretches inside [from, to), sorted, none touching another; breaks are inside them, not cut out */
  openIntervals(from: number, to: number): readonly Interval[];
  /** the breaks that lie in opening time inside [from, to) */
  breakIntervals(from: number, to: number): readonly Interval[];
  /** opening time inside [from, to) in milliseconds; 0 if `to` is not after `from` */
  openMs(from: number, to: number): number;
  /** the same in whole minutes, rounded down */
  openMinutes(from: number, to: number): number;
  isOpen(instant: number): boolean;
  /** the instant itself if open, else the next opening; null if there is none within ten years */
  nextOpen(instant: number): number | null;
  /**
   * The first instant at which that many open minutes have passed since `from` (0: `from` itself, open or not); null
   * if ten years do not hold them. Refuses a count that is not whole or is negative.
   */
  instantAfter(from: number, openMinutes: number): number | null;
  /** the date whose work this instant belongs to: a shift past midnight counts for the date it began on */
  workingDayOf(instant: number): LocalDate;
  /** from the start of the date to the start of the next; 23, 24.5 or 25 hours where clocks change */
  dayBounds(date: LocalDate): Interval;
  /** the stretch whose `workingDayOf` is this date; these stretches follow each other without gap or overlap */
  workingDayBounds(date: LocalDate): Interval;
  /** whether any opening begins on this date */
  isWorkingDay(date: LocalDate): boolean;
  /**
   * The n-th working day after the date (before it if n is negative); n = 0: the date itself if it is one, else the
   * next. Null if ten years do not hold them.
   */
  nextWorkingDay(date: LocalDate, n: number): LocalDate | null;
  dateOf(instant: number): LocalDate;
  /** the instant of a wall-clock time; one that the clock skips or shows twice is read as `which` says */
  instantOf(date: LocalDate, time: TimeOfDay, which?: WhichInstant): number;
}

/** One date from its start to the start of the next, with the tail of the evening before. */
interface Day extends Interval {
  readonly open: readonly Interval[];
  readonly openMs: number;
  readonly breaks: readonly Interval[];
}

const horizonDays = 3_660;
/** days kept before the store is emptied: some twenty years */
const daysKept = 8_000;

function lastListedByDate<T>(list: readonly T[], dateOfOne: (one: T) => string): Map<string, T> {
  return new Map(list.map((one) => [dateOfOne(one), one]));
}

function memoised<T>(make: (day: number) => T): (day: number) => T {
  const kept = new Map<number, T>();
  return (day) => {
    let value = kept.get(day);
    if (value === undefined) {
      if (kept.size >= daysKept) kept.clear();
      value = make(day);
      kept.set(day, value);
    }
    return value;
  };
}

function instantsOfRanges(clock: LocalClock, day: number, ranges: readonly HourRange[]): readonly Interval[] {
  return union(
    ...ranges.map(([from, to]) => {
      const first = minuteOfDay(from);
      const end = minuteOfDay(to);
      const last = end <= first ? end + 1440 : end;
      return instantsWhen(clock, day * dayMs + first * minuteMs, day * dayMs + last * minuteMs);
    }),
  );
}

interface DayBook {
  /** the hours that begin on this day, whole, past midnight included */
  readonly shifts: (day: number) => readonly Interval[];
  readonly at: (day: number) => Day;
}

function dayBookOf(rules: CalendarRules, clock: LocalClock): DayBook {
  const exceptions = lastListedByDate(rules.exceptions, (one) => one.date);
  const hours = [...lastListedByDate(rules.hours, (one) => one.validFrom).values()]
    .map((one) => ({ ...one, fromDay: dayNumberOf(one.validFrom) }))
    .sort((a, b) => b.fromDay - a.fromDay);
  const hoursOn = (day: number): HoursFrom | undefined => hours.find((one) => one.fromDay <= day);
  const shifts = memoised((day) => {
    const ranges = exceptions.get(dateOfDayNumber(day))?.hours ?? hoursOn(day)?.week[weekdayOfDayNumber(day)] ?? [];
    return instantsOfRanges(clock, day, ranges);
  });
  const pauses = memoised((day) => {
    const other = exceptions.get(dateOfDayNumber(day))?.breaks;
    return instantsOfRanges(clock, day, other ?? hoursOn(day)?.breaks[weekdayOfDayNumber(day)] ?? []);
  });
  const starts = memoised((day) => startOfDay(clock, day));
  const at = memoised((day): Day => {
    const from = starts(day);
    const to = starts(day + 1);
    // Two days back is asked as well: a clock set back just after midnight shows the evening of the day before again,
    // and with it the end of a shift that is a whole day long.
    const around = (of: (day: number) => readonly Interval[]): readonly Interval[] =>
      clip(union(of(day - 2), of(day - 1), of(day)), from, to);
    const open = around(shifts);
    let openMs = 0;
    for (const one of open) openMs += one.to - one.from;
    return { from, to, open, openMs, breaks: intersect(around(pauses), open) };
  });
  return { shifts, at };
}

function checked(instant: number): number {
  if (!Number.isSafeInteger(instant)) throw new RangeError(`${instant} is not an instant in whole milliseconds.`);
  return instant;
}

/** The day whose stretch from start to start holds the instant. */
function dayNumberAt(book: DayBook, clock: LocalClock, instant: number): number {
  let day = Math.floor(wallMsAt(clock, checked(instant)) / dayMs);
  while (book.at(day).from > instant) day -= 1;
  while (book.at(day).to <= instant) day += 1;
  return day;
}

type Stretches = Pick<
  Calendar,
  'openIntervals' | 'breakIntervals' | 'openMs' | 'openMinutes' | 'isOpen' | 'nextOpen' | 'instantAfter'
>;

function stretchesOf(book: DayBook, clock: LocalClock): Stretches {
  const collect = (from: number, to: number, of: (day: Day) => readonly Interval[]): readonly Interval[] => {
    const found: Interval[] = [];
    checked(to);
    for (let n = dayNumberAt(book, clock, from); ; n += 1) {
      const day = book.at(n);
      if (day.from >= to) return union(found);
      found.push(...clip(of(day), from, to));
    }
  };
  const openMs = (from: number, to: number): number => {
    let sum = 0;
    checked(to);
    for (let n = dayNumberAt(book, clock, from); ; n += 1) {
      const day = book.at(n);
      if (day.from >= to) return sum;
      if (from <= day.from && day.to <= to) sum += day.openMs;
      else for (const one of clip(day.open, from, to)) sum += one.to - one.from;
    }
  };
  const nextOpen = (instant: number): number | null => {
    const first = dayNumberAt(book, clock, instant);
    for (let n = first; n <= first + horizonDays; n += 1) {
      const { open } = book.at(n);
      const one = open[firstEndingAfter(open, instant)];
      if (one !== undefined) return Math.max(one.from, instant);
    }
    return null;
  };
  const instantAfter = (from: number, openMinutes: number): number | null => {
    if (!Number.isSafeInteger(openMinutes) || openMinutes < 0) {
      throw new RangeError(`${openMinutes} is not a whole number of minutes, 0 or more.`);
    }
    let left = openMinutes * minuteMs;
    if (left === 0) return checked(from);
    const first = dayNumberAt(book, clock, from);
    for (let n = first; n <= first + horizonDays; n += 1) {
      const day = book.at(n);
      if (n > first && day.openMs < left) {
        left -= day.openMs;
        continue;
      }
      for (const one of clip(day.open, from, day.to)) {
        if (one.to - one.from >= left) return one.from + left;
        left -= one.to - one.from;
      }
    }
    return null;
  };
  return {
    openIntervals: (from, to) => collect(from, to, (day) => day.open),
    breakIntervals: (from, to) => collect(from, to, (day) => day.breaks),
    openMs,
    openMinutes: (from, to) => Math.floor(openMs(from, to) / minuteMs),
    isOpen: (instant) => covers(book.at(dayNumberAt(book, clock, instant)).open, instant),
    nextOpen,
    instantAfter,
  };
}

type Days = Pick<Calendar, 'workingDayOf' | 'dayBounds' | 'workingDayBounds' | 'isWorkingDay' | 'nextWorkingDay'>;

function daysOf(book: DayBook, clock: LocalClock): Days {
  // Never past the end of the day itself, so that days stay in order where an evening is shown twice.
  const startOfWork = (day: number): number => {
    const { from, to } = book.at(day);
    return Math.max(from, Math.min(to, book.shifts(day - 1).at(-1)?.to ?? from));
  };
  const works = (day: number): boolean => book.shifts(day).length > 0;
  return {
    workingDayOf(instant) {
      const day = dayNumberAt(book, clock, instant);
      return dateOfDayNumber(instant < startOfWork(day) ? day - 1 : day);
    },
    dayBounds(date) {
      const { from, to } = book.at(dayNumberOf(date));
      return { from, to };
    },
    workingDayBounds(date) {
      const day = dayNumberOf(date);
      return { from: startOfWork(day), to: startOfWork(day + 1) };
    },
    isWorkingDay: (date) => works(dayNumberOf(date)),
    nextWorkingDay(date, n) {
      if (!Number.isSafeInteger(n)) throw new RangeError(`${n} is not a whole number of working days.`);
      const start = dayNumberOf(date);
      const step = n < 0 ? -1 : 1;
      let left = n === 0 ? 1 : Math.abs(n);
      for (let away = n === 0 ? 0 : 1; away <= horizonDays; away += 1) {
        if (works(start + away * step)) left -= 1;
        if (left === 0) return dateOfDayNumber(start + away * step);
      }
      return null;
    },
  };
}

/**
 * The calendar of a shop, or of a person. It is open at an instant exactly when the wall clock then reads a time
 * within the hours of its date: an hour shown twice counts twice, one that is skipped counts not at all. Refuses
 * faulty rules with a RangeError that lists `faultsInRules`.
 */
export function calendarOf(rules: CalendarRules): Calendar {
  const faults = faultsInRules(rules);
  if (faults.length > 0) throw new RangeError(faults.join(' '));
  const clock = typeof rules.zone === 'string' ? localClock(rules.zone) : clockOfZones(rules.zone);
  const book = dayBookOf(rules, clock);
  return {
    clock,
    ...stretchesOf(book, clock),
    ...daysOf(book, clock),
    dateOf: (instant) => partsAt(clock, checked(instant)).date,
    instantOf: (date, time, which) =>
      instantOfWallMs(clock, dayNumberOf(date) * dayMs + minuteOfDay(time) * minuteMs, which),
  };
}
