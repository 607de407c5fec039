/** A supplier's delivery runs, and until when an order still makes each. */
import type { Calendar } from './calendar.js';
import {
  type LocalDate,
  type TimeOfDay,
  type Weekday,
  dateOfDayNumber,
  dayNumberOf,
  isLocalDate,
  isTimeOfDay,
  weekdayOfDayNumber,
  weekdays,
} from './local-dates.js';

/** One run of the week, by the wall clock of the shop's zone. */
export interface DeliveryRun {
  readonly day: Weekday;
  /** when the van is at the shop */
  readonly at: TimeOfDay;
  /** an order placed before this makes the run: so many calendar days earlier (0: the same day), at that time */
  readonly orderBefore: { readonly daysEarlier: number; readonly at: TimeOfDay };
}

export interface DeliveryRules {
  readonly runs: readonly DeliveryRun[];
  /** dates on which the supplier does not drive */
  readonly noRunOn: readonly LocalDate[];
}

/** Instants in epoch milliseconds. */
export interface NextRun {
  readonly runAt: number;
  /** the cut-off: an order at this instant is too late */
  readonly orderBefore: number;
  /** when somebody is there to receive it: `runAt`, or the next opening */
  readonly receivedAt: number;
}

const longestLeadDays = 28;
/** how far ahead a run is sought: a supplier may be shut for weeks, not for a year */
const horizonDays = 366;

/** What is wrong with the rules, one sentence each. */
export function faultsInDeliveryRules(rules: DeliveryRules): string[] {
  const faults: string[] = [];
  for (const { day, at, orderBefore } of rules.runs) {
    const where = `Delivery run on ${day} at ${at}`;
    if (!isTimeOfDay(at)) faults.push(`${where}: "${at}" is not a time such as 07:30.`);
    if (!isTimeOfDay(orderBefore.at)) faults.push(`${where}: "${orderBefore.at}" is not a time such as 17:00.`);
    const days = orderBefore.daysEarlier;
    if (!Number.isInteger(days) || days < 0 || days > longestLeadDays) {
      faults.push(`${where}: orders close 0 to ${longestLeadDays} whole days earlier, not ${days}.`);
    } else if (days === 0 && isTimeOfDay(at) && isTimeOfDay(orderBefore.at) && orderBefore.at > at) {
      faults.push(`${where}: orders would close after the van has come.`);
    }
  }
  for (const date of rules.noRunOn) {
    if (!isLocalDate(date)) faults.push(`Day without a run: "${date}" is not a date such as 2026-03-08.`);
  }
  return faults;
}

/**
 * The runs of a week where one cut-off serves them all: an order before that time of day makes the runs that come after
 * it until the next day's cut-off. Without a cut-off an order makes a run until the van is there. `week` gives for each
 * day the times at which the van comes.
 */
export function runsWithCutOff(
  week: Readonly<Record<Weekday, readonly TimeOfDay[]>>,
  cutOff: TimeOfDay | null,
): DeliveryRun[] {
  return weekdays.flatMap((day) =>
    week[day].map((at) => {
      const daysEarlier = cutOff === null || cutOff <= at ? 0 : 1;
      return { day, at, orderBefore: { daysEarlier, at: cutOff ?? at } };
    }),
  );
}

/**
 * The first run that an order placed at an instant (epoch milliseconds) still makes; of two at one time the one that
 * closes later. Null if the supplier has none within a year, or the shop does not open after it. Refuses faulty rules
 * with a RangeError.
 */
export function nextRun(rules: DeliveryRules, shop: Calendar, orderedAt: number): NextRun | null {
  const faults = faultsInDeliveryRules(rules);
  if (faults.length > 0) throw new RangeError(faults.join(' '));
  const without = new Set(rules.noRunOn);
  const today = dayNumberOf(shop.dateOf(orderedAt));
  for (let day = today; day <= today + horizonDays; day += 1) {
    const date = dateOfDayNumber(day);
    if (without.has(date)) continue;
    const weekday = weekdayOfDayNumber(day);
    const made = rules.runs
      .filter((run) => run.day === weekday)
      .map((run) => ({
        runAt: shop.instantOf(date, run.at),
        orderBefore: shop.instantOf(dateOfDayNumber(day - run.orderBefore.daysEarlier), run.orderBefore.at),
      }))
      .filter((run) => orderedAt < run.orderBefore && orderedAt <= run.runAt)
      .sort((a, b) => a.runAt - b.runAt || b.orderBefore - a.orderBefore)[0];
    if (made === undefined) continue;
    const receivedAt = shop.nextOpen(made.runAt);
    return receivedAt === null ? null : { ...made, receivedAt };
  }
  return null;
}
