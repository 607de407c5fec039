/**
 * What the wall clock of a place shows, and when.
 *
 * A clock is known by its spans of constant distance from UTC. The spans come from Temporal (native where there is
 * one, else temporal-polyfill) and from the zone data of the machine; they are looked up once and kept, because a
 * call into the polyfill costs about as much as a thousand of the additions made here. A shop that moves to another
 * zone has one clock as well: the move is one more change of the clock.
 */
import { Temporal } from 'temporal-polyfill';
import { type Interval, tidy } from './intervals.js';
import {
  dateOfDayNumber,
  dayMs,
  dayNumberOf,
  minuteMs,
  minuteOfDay,
  timeOfMinute,
  weekdayOfDayNumber,
} from './local-dates.js';
import type { LocalDate, TimeOfDay, Weekday } from './local-dates.js';

/** A stretch of time in which the distance from UTC does not change; the ends may be infinite. */
export interface OffsetSpan extends Interval {
  /** local minus UTC, milliseconds (east is positive) */
  readonly offsetMs: number;
}

export interface LocalClock {
  spanAt(instant: number): OffsetSpan;
}

/** From the start of a date on, the clock of an IANA zone holds. */
export interface ZoneFrom {
  readonly validFrom: LocalDate;
  readonly zone: string;
}

/** What the wall clock shows at an instant. */
export interface LocalParts {
  readonly date: LocalDate;
  /** whole minutes, rounded down */
  readonly time: TimeOfDay;
  readonly weekday: Weekday;
  /** seconds past the minute, 0 to 59 */
  readonly second: number;
  /** local minus UTC, minutes (-210 in St. John's in winter) */
  readonly offsetMinutes: number;
}

/**
 * Which instant is meant by a wall-clock time that is shown twice or never, in the sense of Temporal's
 * `disambiguation`: shown twice, `earlier` and `compatible` take the first; never shown, `earlier` takes the distance
 * from UTC after the change, `later` and `compatible` the one before it.
 */
export type WhichInstant = 'compatible' | 'earlier' | 'later';

function discover(zone: string, instant: number): OffsetSpan {
  const at = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
  // "previous" is strictly earlier, so it is asked from one millisecond on: a change at the instant itself counts.
  const before = at.add({ milliseconds: 1 }).getTimeZoneTransition('previous');
  const after = at.getTimeZoneTransition('next');
  return {
    from: before === null ? -Infinity : before.epochMilliseconds,
    to: after === null ? Infinity : after.epochMilliseconds,
    offsetMs: at.offsetNanoseconds / 1e6,
  };
}

function clockOfZone(zone: string): LocalClock {
  const spans: OffsetSpan[] = [];
  let last: OffsetSpan | undefined;
  return {
    spanAt(instant) {
      if (last !== undefined && last.from <= instant && instant < last.to) return last;
      let low = 0;
      let high = spans.length;
      while (low < high) {
        const middle = (low + high) >>> 1;
        if ((spans[middle]?.to ?? Infinity) > instant) high = middle;
        else low = middle + 1;
      }
      const known = spans[low];
      last = known !== undefined && known.from <= instant ? known : discover(zone, instant);
      if (last !== known) spans.splice(low, 0, last);
      return last;
    },
  };
}

const clocks = new Map<string, LocalClock>();

/** The clock of an IANA zone, such as `Europe/London`. Refuses an unknown name with a RangeError. */
export function localClock(zone: string): LocalClock {
  let clock = clocks.get(zone);
  if (clock === undefined) {
    clock = clockOfZone(zone);
    clock.spanAt(0); // an unknown zone is refused here, not at the first use
    clocks.set(zone, clock);
  }
  return clock;
}

/**
 * One clock for a place whose zone changes: each zone holds from the start of its date, read on its own clock; the
 * first also holds before. Of two with one date the one listed last counts. Refuses an empty list.
 */
export function clockOfZones(zones: readonly ZoneFrom[]): LocalClock {
  const byDate = new Map(zones.map((one) => [one.validFrom, one.zone]));
  const parts = [...byDate]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([validFrom, zone]) => ({
      clock: localClock(zone),
      from: startOfDay(localClock(zone), dayNumberOf(validFrom)),
    }));
  const first = parts[0];
  if (first === undefined) throw new RangeError('A shop needs a time zone.');
  if (parts.length === 1) return first.clock;
  return {
    spanAt(instant) {
      let index = 0;
      while ((parts[index + 1]?.from ?? Infinity) <= instant) index += 1;
      const span = (parts[index] ?? first).clock.spanAt(instant);
      const from = index === 0 ? -Infinity : (parts[index]?.from ?? -Infinity);
      const to = parts[index + 1]?.from ?? Infinity;
      return { from: Math.max(from, span.from), to: Math.min(to, span.to), offsetMs: span.offsetMs };
    },
  };
}

/** The wall clock at an instant, as milliseconds since 1970-01-01 00:00 **on that clock**. */
export function wallMsAt(clock: LocalClock, instant: number): number {
  return instant + clock.spanAt(instant).offsetMs;
}

/**
 * All instants at which the wall clock reads something in [wallFrom, wallTo) (milliseconds on that clock). A time
 * the clock skips gives nothing, so what begins inside a gap begins at its end; an hour shown twice gives both.
 */
export function instantsWhen(clock: LocalClock, wallFrom: number, wallTo: number): readonly Interval[] {
  // No place is a whole day away from UTC, so every instant that is sought lies within a day of its reading as UTC.
  let span = clock.spanAt(wallFrom - dayMs);
  if (span.to >= wallTo + dayMs) {
    return wallFrom < wallTo ? [{ from: wallFrom - span.offsetMs, to: wallTo - span.offsetMs }] : [];
  }
  const found: Interval[] = [];
  for (;;) {
    const from = Math.max(span.from, wallFrom - span.offsetMs);
    const to = Math.min(span.to, wallTo - span.offsetMs);
    if (from < to) found.push({ from, to });
    if (span.to >= wallTo + dayMs) return tidy(found);
    span = clock.spanAt(span.to);
  }
}

/** The first instant at which the clock reads the day's 00:00 or later (a day may begin at 01:00, or be skipped). */
export function startOfDay(clock: LocalClock, dayNumber: number): number {
  return firstInstantAtOrPast(clock, dayNumber * dayMs);
}

function firstInstantAtOrPast(clock: LocalClock, wallMs: number): number {
  const span = clock.spanAt(wallMs - dayMs);
  if (span.to >= wallMs + dayMs) return wallMs - span.offsetMs;
  const first = instantsWhen(clock, wallMs, wallMs + 3 * dayMs)[0];
  if (first === undefined) throw new RangeError('The zone data skips three days.');
  return first.from;
}

/** The instant of a wall-clock reading in milliseconds on that clock; see `WhichInstant` for doubled and skipped ones. */
export function instantOfWallMs(clock: LocalClock, wallMs: number, which: WhichInstant = 'compatible'): number {
  const shown = instantsWhen(clock, wallMs, wallMs + 1);
  const pick = which === 'later' ? shown.at(-1) : shown[0];
  if (pick !== undefined) return pick.from;
  const change = firstInstantAtOrPast(clock, wallMs);
  const side = which === 'earlier' ? change : change - 1;
  return wallMs - clock.spanAt(side).offsetMs;
}

/** What the wall clock of a clock shows at an instant (epoch milliseconds). */
export function partsAt(clock: LocalClock, instant: number): LocalParts {
  const offsetMs = clock.spanAt(instant).offsetMs;
  const wall = instant + offsetMs;
  const day = Math.floor(wall / dayMs);
  const inDay = wall - day * dayMs;
  return {
    date: dateOfDayNumber(day),
    time: timeOfMinute(Math.floor(inDay / minuteMs)),
    weekday: weekdayOfDayNumber(day),
    second: Math.floor((inDay % minuteMs) / 1000),
    offsetMinutes: offsetMs / minuteMs,
  };
}

/** What the wall clock of an IANA zone shows at an instant (epoch milliseconds). */
export function localParts(instant: number, zone: string): LocalParts {
  return partsAt(localClock(zone), instant);
}

/** The date in an IANA zone at an instant (epoch milliseconds). */
export function dateOf(instant: number, zone: string): LocalDate {
  return localParts(instant, zone).date;
}

/** The instant (epoch milliseconds) of a date and time of day in an IANA zone; 24:00 is the next day's 00:00. */
export function instantOf(date: LocalDate, time: TimeOfDay, zone: string, which: WhichInstant = 'compatible'): number {
  return instantOfWallMs(localClock(zone), dayNumberOf(date) * dayMs + minuteOfDay(time) * minuteMs, which);
}

/** Whether the wall clock of an IANA zone shows that time once, never (a gap) or twice (an overlap). */
export function timesShown(date: LocalDate, time: TimeOfDay, zone: string): 'once' | 'never' | 'twice' {
  const wallMs = dayNumberOf(date) * dayMs + minuteOfDay(time) * minuteMs;
  const shown = instantsWhen(localClock(zone), wallMs, wallMs + 1).length;
  return shown === 0 ? 'never' : shown === 1 ? 'once' : 'twice';
}
