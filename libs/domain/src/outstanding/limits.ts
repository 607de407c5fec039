import type { AddTemporaryFix } from '../inputs.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

type SaidLimits = Pick<
  AddTemporaryFix,
  'beforeDay' | 'beforeOdometer' | 'withinDistance' | 'withinDays' | 'seasonId' | 'distanceUnit'
>;

type DistanceUnit = Row<'temporaryFix'>['distanceUnit'];

function usualUnit(rows: Rows): DistanceUnit {
  return rows.list('shop').some((shop) => shop.units === 'us') ? 'mi' : 'km';
}

/**
 * The columns of the limits: a day of the shop's zone, a reading and a distance in `distanceUnit` (the shop's own where
 * none is said), a number of days, a season. The first one reached counts.
 */
export function limitsOf(rows: Rows, said: Partial<SaidLimits>) {
  return {
    beforeDay: said.beforeDay ?? null,
    beforeOdometer: said.beforeOdometer ?? null,
    withinDistance: said.withinDistance ?? null,
    withinDays: said.withinDays ?? null,
    seasonId: said.seasonId ?? null,
    distanceUnit: said.distanceUnit ?? usualUnit(rows),
  };
}

export function hasLimit(said: SaidLimits): boolean {
  const { beforeDay, beforeOdometer, withinDistance, withinDays, seasonId } = said;
  return [beforeDay, beforeOdometer, withinDistance, withinDays, seasonId].some((limit) => limit !== undefined);
}

/** Whether the shop no longer dates that season on this day. */
export function seasonOver(rows: Rows, seasonId: string | undefined, today: string): boolean {
  const endedOn = rows.find('season', seasonId)?.endedOn ?? null;
  return endedOn !== null && endedOn <= today;
}
