/** Which spots the bays of a shop had in a window, when each was there, and when it was out of use. */
import type { Row } from '@holdfast/domain';
import { type Calendar, type Interval, intersect } from '@holdfast/shop-calendar';

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

/** Bays that had a spot inside the window, in the order of the building. */
export function spotsIn(
  window: Interval,
  bays: readonly Row<'bay'>[],
  specs: readonly Row<'baySpec'>[],
  calendar: Calendar,
): BaySpots[] {
  const found: BaySpots[] = [];
  for (const bay of [...bays].sort((a, b) => a.position - b.position || (a.id < b.id ? -1 : 1))) {
    const inTurn = specsInTurn(bay, specs, calendar);
    const most = Math.max(0, ...inTurn.map(({ spec }) => spec.spots));
    const spots: Spot[] = [];
    for (let spot = 1; spot <= most; spot += 1) {
      const there = inTurn.filter(({ spec }) => spec.spots >= spot).map(({ from, to }) => ({ from, to }));
      if (intersect(there, [window]).length > 0) spots.push({ spot, there });
    }
    const outOfUse = inTurn.filter(({ spec }) => spec.outOfUse).map(({ from, to }) => ({ from, to }));
    if (spots.length > 0) found.push({ bay, spots, outOfUse });
  }
  return found;
}
