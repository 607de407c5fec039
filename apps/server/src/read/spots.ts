/** Which spots the bays of a shop had in a window, when each was there, and when it was out of use. */
import { outOfUseByOutage, type Row } from '@holdfast/domain';
import { type Calendar, type Interval, intersect, union } from '@holdfast/shop-calendar';
import type { ShopAtHand } from './shop-of.js';

export interface Spot {
  readonly spot: number;
  /** When the bay had this spot. */
  readonly there: readonly Interval[];
}

export interface BaySpots {
  readonly bay: Row<'bay'>;
  readonly spots: readonly Spot[];
  readonly outOfUse: readonly Interval[];
}

interface SpecFrom extends Interval {
  readonly spec: Row<'baySpec'>;
}

/**
 * Facts of a bay hold from their day until those of a later day, or until the bay ends (`endedOn` is the first day
 * without it); before its first facts there was no bay. Days are those of the shop's zone.
 */
function specsInTurn(bay: Row<'bay'>, specs: readonly Row<'baySpec'>[], calendar: Calendar): SpecFrom[] {
  const startOf = (day: string) => calendar.dayBounds(day).from;
  const inTurn = specs.filter((spec) => spec.bayId === bay.id).sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1));
  const end = bay.endedOn === null ? Infinity : startOf(bay.endedOn);
  return inTurn.map((spec, at) => {
    const next = inTurn[at + 1];
    const to = next === undefined ? end : Math.min(end, startOf(next.validFrom));
    return { spec, from: startOf(spec.validFrom), to };
  });
}

/** When the bay was out of use: by its facts, or by outages of it or of what it is counted by under the facts of the time. */
function outOfUseOf(inTurn: readonly SpecFrom[], outages: readonly Row<'outage'>[]): readonly Interval[] {
  return union(
    ...inTurn.map(({ spec, from, to }) =>
      spec.outOfUse ? [{ from, to }] : intersect(outOfUseByOutage(outages, spec), [{ from, to }]),
    ),
  );
}

/** Bays that had a spot inside the window, in the order of the building. */
export function spotsIn(window: Interval, { rows, calendar }: Pick<ShopAtHand, 'rows' | 'calendar'>): BaySpots[] {
  const specs = rows.list('baySpec');
  const outages = rows.list('outage');
  const found: BaySpots[] = [];
  for (const bay of rows.list('bay').sort((a, b) => a.position - b.position || (a.id < b.id ? -1 : 1))) {
    const inTurn = specsInTurn(bay, specs, calendar);
    const most = Math.max(0, ...inTurn.map(({ spec }) => spec.spots));
    const spots: Spot[] = [];
    for (let spot = 1; spot <= most; spot += 1) {
      const there = inTurn.filter(({ spec }) => spec.spots >= spot).map(({ from, to }) => ({ from, to }));
      if (intersect(there, [window]).length > 0) spots.push({ spot, there });
    }
    if (spots.length > 0) found.push({ bay, spots, outOfUse: outOfUseOf(inTurn, outages) });
  }
  return found;
}
