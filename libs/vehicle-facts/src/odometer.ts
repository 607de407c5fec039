/**
 * Where an odometer will be, and when it will show a reading. With two plausible readings or more by their robust rate
 * (Theil–Sen), carried on from the last; with one by a published mean, marked as a guess; with none not at all.
 *
 * The range is Holdfast's own rule and no published one: the rates that nine tenths of the pairs of readings at least two
 * weeks apart stay within, at least a quarter to either side; a guess may be off by half or by double. Limits are turned
 * into days on the fast side.
 */
import { type LocalDate, addDays, daysBetween } from '@holdfast/shop-calendar';
import { type Point, pairwiseSlopes, theilSen } from './lines-through-points.js';
import type { MileagePrior } from './mileage-priors.js';
import { type OdometerReading, greatestKmPerDay, judgeReadings } from './odometer-readings.js';
import { convert } from './units.js';

const daysPerYear = 365;
const leastDaysApart = 14;
const leastSpread = 1.25;
const guessSpread = 2;
const [slowShare, fastShare] = [0.1, 0.9];

export interface DrivenRate {
  /** kilometres a day: likely, and both ends of the range */
  readonly kmPerDay: number;
  readonly slowKmPerDay: number;
  readonly fastKmPerDay: number;
  readonly basis: 'readings' | 'prior';
  /** true: by a published mean, not by this vehicle */
  readonly guess: boolean;
  readonly source: string | null;
  /** the reading that everything is carried on from, the last plausible one */
  readonly from: OdometerReading;
}

function quantile(sorted: readonly number[], share: number): number | undefined {
  return sorted[Math.round((sorted.length - 1) * share)];
}

function rangeOf(points: readonly Point[], kmPerDay: number): readonly [number, number] {
  const apart = points.flatMap((from, at) =>
    points.slice(at + 1).flatMap((to) => (to.x - from.x >= leastDaysApart ? pairwiseSlopes([from, to]) : [])),
  );
  const slopes = apart.sort((a, b) => a - b);
  const slow = Math.min(quantile(slopes, slowShare) ?? kmPerDay, kmPerDay / leastSpread);
  const fast = Math.max(quantile(slopes, fastShare) ?? kmPerDay, kmPerDay * leastSpread);
  return [Math.max(0, slow), Math.min(fast, greatestKmPerDay)];
}

/** How fast the vehicle is driven. null: no plausible reading, or one reading and no mean in print for its kind. */
export function drivenRate(readings: readonly OdometerReading[], prior: MileagePrior | null): DrivenRate | null {
  const kept = judgeReadings(readings).filter((reading) => reading.kept);
  const last = kept.at(-1);
  if (last === undefined) return null;
  const from: OdometerReading = { day: last.day, value: last.value, unit: last.unit };
  const points = kept.map(({ day, km }) => ({ x: daysBetween(last.day, day), y: km }));
  const line = theilSen(points);
  const priorPerDay = prior === null ? null : prior.kmPerYear / daysPerYear;
  if (line !== null) {
    const [slowKmPerDay, fast] = rangeOf(points, line.slope);
    // A vehicle that stood still between its readings may well be driven again.
    const fastKmPerDay = fast > 0 ? fast : (priorPerDay ?? 0);
    return { kmPerDay: line.slope, slowKmPerDay, fastKmPerDay, basis: 'readings', guess: false, source: null, from };
  }
  if (prior === null || priorPerDay === null) return null;
  return {
    kmPerDay: priorPerDay,
    slowKmPerDay: priorPerDay / guessSpread,
    fastKmPerDay: priorPerDay * guessSpread,
    basis: 'prior',
    guess: true,
    source: prior.source,
    from,
  };
}

export interface ProjectedReading {
  /** in the unit of the last reading */
  readonly likely: number;
  readonly least: number;
  readonly most: number;
}

/** The reading on a day. RangeError: a day before the reading that it is carried on from. */
export function projectedReading(rate: DrivenRate, onDay: LocalDate): ProjectedReading {
  const days = daysBetween(rate.from.day, onDay);
  if (days < 0) throw new RangeError(`${onDay} is before the reading of ${rate.from.day}.`);
  const after = (kmPerDay: number): number => rate.from.value + convert(days * kmPerDay, 'km', rate.from.unit);
  return { likely: after(rate.kmPerDay), least: after(rate.slowKmPerDay), most: after(rate.fastKmPerDay) };
}

export interface DayOfReading {
  /** on the fast side: limits are held by this day. null: not before the vehicle is driven again, or past `horizonDays` */
  readonly earliest: LocalDate | null;
  readonly likely: LocalDate | null;
  readonly latest: LocalDate | null;
  /** the last plausible reading is there already */
  readonly reached: boolean;
}

/** A day further off than this is as good as none: 30 years. */
const horizonDays = 30 * 365;

/**
 * When the odometer will show `value` (in `unit`): the day on which the projection reaches it, rounded to the earlier day.
 * For a limit by distance add the distance to the reading at hand-back.
 */
export function dayOfReading(rate: DrivenRate, value: number, unit: OdometerReading['unit']): DayOfReading {
  const km = convert(value, unit, 'km') - convert(rate.from.value, rate.from.unit, 'km');
  if (km <= 0) return { earliest: rate.from.day, likely: rate.from.day, latest: rate.from.day, reached: true };
  const dayAt = (kmPerDay: number): LocalDate | null => {
    const days = Math.floor(km / kmPerDay + 1e-9);
    return days <= horizonDays ? addDays(rate.from.day, days) : null;
  };
  return {
    earliest: dayAt(rate.fastKmPerDay),
    likely: dayAt(rate.kmPerDay),
    latest: dayAt(rate.slowKmPerDay),
    reached: false,
  };
}
