/** The figures of bays, of kinds of equipment and of the whole shop, period by period. */
import { type Interval, tidy } from '@holdfast/shop-calendar';
import { type CountStretch, countsOf, smallerOf } from './counts.js';
import { type HoldTimes, holdTimesPer, sumHoldTimes } from './hold-times.js';
import type { SpotAccount } from './partition.js';
import { shareOut } from './periods.js';
import { type BayTimeTotals, sumTotals, totalsPer } from './totals.js';

/** The account of one spot; where the equipment changed inside the window, one for each part of it. */
export interface SpotOfBay {
  readonly bayId: string;
  /** the kinds of equipment that the bay is counted by; each once */
  readonly equipment: readonly string[];
  readonly account: SpotAccount;
}

/** Present and not on a break, epoch milliseconds; what lies after `now` is not looked at. */
export interface Presence extends Interval {
  readonly personId: string;
}

export interface BayFigures {
  readonly totals: BayTimeTotals;
  readonly holds: HoldTimes;
  /** manned bay time: the smaller of spots available and technicians present, added up over time (ms) */
  readonly mannedMs: number;
  /**
   * worked / manned, shown as "bay use, manned"; null where no bay was open with somebody there. Above 1 only where
   * somebody works who is not given as present (an outsider, attendance not recorded): it is not cut off.
   */
  readonly mannedUtilisation: number | null;
}

export interface FiguresOfPeriod {
  readonly period: Interval;
  readonly shop: BayFigures;
  /** in the order in which the bays are first named */
  readonly bays: readonly { readonly bayId: string; readonly figures: BayFigures }[];
  /** by kind, sorted; a bay with several kinds counts under each, so these do not add up to the shop */
  readonly equipment: readonly { readonly kind: string; readonly figures: BayFigures }[];
}

/** When the spot was available: opening time less out of use. */
function availableOf({ segments }: SpotAccount): readonly Interval[] {
  return tidy(segments.filter((one) => one.class !== 'outOfUse'));
}

function presentCounts(presence: readonly Presence[]): CountStretch[] {
  const byPerson = new Map<string, Interval[]>();
  for (const { personId, from, to } of presence) {
    const list = byPerson.get(personId);
    if (list === undefined) byPerson.set(personId, [{ from, to }]);
    else list.push({ from, to });
  }
  return countsOf([...byPerson.values()].flatMap((list) => tidy(list)));
}

/** One spot, worked out once for all groups that it is in. */
interface SpotWorkedOut {
  readonly available: readonly Interval[];
  readonly totals: readonly BayTimeTotals[];
  readonly holds: readonly HoldTimes[];
}

function figuresOfGroup(
  spots: readonly SpotWorkedOut[],
  present: readonly CountStretch[],
  periods: readonly Interval[],
): BayFigures[] {
  const mannedMs = periods.map(() => 0);
  const manned = smallerOf(countsOf(spots.flatMap(({ available }) => available)), present);
  shareOut(manned, periods, (at, { count }, ms) => (mannedMs[at] = (mannedMs[at] ?? 0) + count * ms));
  return periods.map((_, at) => {
    const totals = sumTotals(spots.flatMap((one) => one.totals[at] ?? []));
    const ms = mannedMs[at] ?? 0;
    return {
      totals,
      holds: sumHoldTimes(spots.flatMap((one) => one.holds[at] ?? [])),
      mannedMs: ms,
      mannedUtilisation: ms === 0 ? null : totals.classMs.worked / ms,
    };
  });
}

function grouped(
  spots: readonly (readonly [SpotOfBay, SpotWorkedOut])[],
  keysOf: (spot: SpotOfBay) => readonly string[],
): Map<string, SpotWorkedOut[]> {
  const groups = new Map<string, SpotWorkedOut[]>();
  for (const [spot, workedOut] of spots) {
    for (const key of keysOf(spot)) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [workedOut]);
      else group.push(workedOut);
    }
  }
  return groups;
}

/**
 * Occupancy, bay use plain and manned, and held time of a shop, of each bay and of each kind of equipment, for each of
 * several periods (of `periodsOf`; in order, without overlap).
 *
 * Manned bay time asks how much of the open bays could be worked by the people there: at each instant the smaller of
 * spots available and technicians present, added up. For one bay or one kind of equipment everybody present could work
 * there, so that the manned times of the bays together are not that of the shop. The measure is ours and has no term
 * in ISO 22400-2; the terms of the plain shares stand at `BayTimeTotals`, in our reading. Linear after sorting, once
 * for each group that a spot is in.
 */
export function bayFigures(
  spots: readonly SpotOfBay[],
  presence: readonly Presence[],
  periods: readonly Interval[],
): FiguresOfPeriod[] {
  const present = presentCounts(presence);
  const workedOut = spots.map((spot): readonly [SpotOfBay, SpotWorkedOut] => [
    spot,
    {
      available: availableOf(spot.account),
      totals: totalsPer(spot.account, periods),
      holds: holdTimesPer(spot.account, periods),
    },
  ]);
  const shop = figuresOfGroup(
    workedOut.map(([, one]) => one),
    present,
    periods,
  );
  const figuresOf = (groups: Map<string, SpotWorkedOut[]>) =>
    [...groups].map(([key, group]) => ({ key, perPeriod: figuresOfGroup(group, present, periods) }));
  const bays = figuresOf(grouped(workedOut, ({ bayId }) => [bayId]));
  const equipment = figuresOf(grouped(workedOut, (spot) => [...new Set(spot.equipment)]));
  equipment.sort((a, b) => (a.key < b.key ? -1 : 1));
  const none = figuresOfGroup([], [], [{ from: 0, to: 0 }])[0];
  if (none === undefined) throw new RangeError('One period gives one figure.');
  return periods.map((period, at) => ({
    period: { from: period.from, to: period.to },
    shop: shop[at] ?? none,
    bays: bays.map(({ key, perPeriod }) => ({ bayId: key, figures: perPeriod[at] ?? none })),
    equipment: equipment.map(({ key, perPeriod }) => ({ kind: key, figures: perPeriod[at] ?? none })),
  }));
}
