/**
 * The delivery runs of one supplier as whole numbers: the n-th run that an order makes, for many orders at a time. Which
 * run an order makes, and when it is received, is as `nextRun` of the shop calendar says.
 */
import { type DeliveryRules, faultsInDeliveryRules, minuteOfDay, weekdays } from '@holdfast/shop-calendar';
import { type DayClock, memoised } from './day-clock.js';

interface Run {
  readonly minute: number;
  readonly daysEarlier: number;
  readonly closesMinute: number;
}

export interface RunClock {
  /** whether there is any run at all */
  readonly runs: boolean;
  /** runs that have come by an instant, counted from an arbitrary one */
  runsBy(instant: number): number;
  /** the number of the first run that an order placed at an instant makes; null if there is none within a year */
  firstMade(orderedAt: number): number | null;
  /** when somebody is there to receive the run of that number (epoch ms); null if the runs end before */
  receivedAt(number: number): number | null;
  /** the last run of the day as received (epoch ms), or the first one after it; null if there is none within a year */
  lastOn(day: number): number | null;
}

const horizonDays = 366;

function runsByDay(rules: DeliveryRules, days: DayClock): (day: number) => readonly Run[] {
  const without = new Set(rules.noRunOn.map((date) => days.dayNumber(date)));
  const week: readonly Run[][] = weekdays.map((day) =>
    rules.runs
      .filter((one) => one.day === day)
      .map(({ at, orderBefore }) => ({
        minute: minuteOfDay(at),
        daysEarlier: orderBefore.daysEarlier,
        closesMinute: minuteOfDay(orderBefore.at),
      }))
      .sort((a, b) => a.minute - b.minute),
  );
  // Day 0, 1970-01-01, was a Thursday.
  return (day) => (without.has(day) ? [] : (week[(((day + 3) % 7) + 7) % 7] ?? []));
}

/** Refuses faulty rules with a RangeError. `from`: the first instant (epoch ms) that will be asked about. */
export function runClock(rules: DeliveryRules, days: DayClock, from: number): RunClock {
  const faults = faultsInDeliveryRules(rules);
  if (faults.length > 0) throw new RangeError(faults.join(' '));
  const runsOf = runsByDay(rules, days);
  const first = days.dayOf(from);
  const before = [0];
  const runsBefore = (day: number): number => {
    let early = 0;
    for (let one = day; one < first; one += 1) early += runsOf(one).length;
    while (before.length <= day - first) before.push((before.at(-1) ?? 0) + runsOf(first + before.length - 1).length);
    return early > 0 ? -early : (before[Math.max(0, day - first)] ?? 0);
  };
  const received = (day: number, run: Run): number | null => days.calendar.nextOpen(days.instantOf(day, run.minute));
  return {
    runs: rules.runs.length > 0,
    runsBy(instant) {
      const day = days.dayOf(instant);
      return runsBefore(day) + runsOf(day).filter((run) => days.instantOf(day, run.minute) <= instant).length;
    },
    firstMade(orderedAt) {
      const today = days.dayOf(orderedAt);
      for (let day = today; day <= today + horizonDays; day += 1) {
        const at = runsOf(day).findIndex(
          (run) =>
            orderedAt < days.instantOf(day - run.daysEarlier, run.closesMinute) &&
            orderedAt <= days.instantOf(day, run.minute),
        );
        if (at >= 0) return runsBefore(day) + at;
      }
      return null;
    },
    receivedAt: memoised((number: number): number | null => {
      if (rules.runs.length === 0) return null;
      let low = first;
      let high = first + 1;
      while (runsBefore(high) <= number && high < first + 100 * horizonDays) high = first + (high - first) * 2;
      while (low + 1 < high) {
        const middle = (low + high) >>> 1;
        if (runsBefore(middle) <= number) low = middle;
        else high = middle;
      }
      const run = runsOf(low)[number - runsBefore(low)];
      return run === undefined ? null : received(low, run);
    }),
    lastOn: memoised((day: number): number | null => {
      const today = runsOf(day).at(-1);
      if (today !== undefined) return received(day, today);
      for (let later = day + 1; later <= day + horizonDays; later += 1) {
        const run = runsOf(later)[0];
        if (run !== undefined) return received(later, run);
      }
      return null;
    }),
  };
}
