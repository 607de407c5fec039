/**
 * Odometer readings that fit together. Guaranteed: none is refused and none is changed; those that cannot be right beside
 * the others are named with what may have happened, and stay out of every projection.
 */
import { type LocalDate, daysBetween } from '@holdfast/shop-calendar';
import { type DistanceUnit, convert } from './units.js';

export interface OdometerReading {
  readonly day: LocalDate;
  readonly value: number;
  readonly unit: DistanceUnit;
}

export type OdometerDoubt =
  | 'negative'
  | 'lowerThanBefore'
  | 'higherThanAfter'
  | 'sameDayTwoValues'
  | 'tooFast'
  /** beside its neighbour by the ratio of a mile to a kilometre, either way */
  | 'perhapsOtherUnit'
  /** a five-digit odometer that began again: 100,000 more would fit */
  | 'perhapsRolledOver';

export interface JudgedReading extends OdometerReading {
  readonly km: number;
  /** whether it is used for projections */
  readonly kept: boolean;
  /** empty for those kept */
  readonly doubts: readonly OdometerDoubt[];
}

/** More than this in a day is doubted: 500 miles. */
export const greatestKmPerDay = convert(500, 'mi', 'km');
/** Two readings of one day may differ by a road test; more than this in km is two values for one thing. */
const roadTestKm = 100;
const rollOver = 100_000;
const nearRatio = 0.03;

type Row = OdometerReading & { readonly km: number };

function fits(before: Row, after: Row): boolean {
  const days = daysBetween(before.day, after.day);
  const km = after.km - before.km;
  return km >= 0 && km <= (days === 0 ? roadTestKm : days * greatestKmPerDay);
}

/** The longest run of readings that fit one after another; of equally long ones that which ends first. */
function longestFitting(rows: readonly Row[]): Set<number> {
  const length: number[] = [];
  const previous: number[] = [];
  rows.forEach((row, at) => {
    let best = 0;
    let from = -1;
    for (let before = 0; before < at; before += 1) {
      const one = rows[before];
      const long = length[before] ?? 0;
      if (one !== undefined && long > best && fits(one, row)) [best, from] = [long, before];
    }
    length.push(row.value < 0 ? 0 : best + 1);
    previous.push(from);
  });
  let end = length.indexOf(Math.max(...length));
  const kept = new Set<number>();
  while (end >= 0 && (length[end] ?? 0) > 0) {
    kept.add(end);
    end = previous[end] ?? -1;
  }
  return kept;
}

function againstNeighbour(row: Row, other: Row): OdometerDoubt[] {
  const doubts: OdometerDoubt[] = [];
  const ratio = row.km / other.km;
  const mile = convert(1, 'mi', 'km');
  if ([mile, 1 / mile].some((times) => Math.abs(ratio / times - 1) < nearRatio)) doubts.push('perhapsOtherUnit');
  return doubts;
}

function againstEarlier(row: Row, before: Row, after: Row | undefined): OdometerDoubt[] {
  if (row.day === before.day) return ['sameDayTwoValues'];
  if (row.km >= before.km) return fits(before, row) ? [] : ['tooFast'];
  const rolled: Row = { ...row, km: convert(row.value + rollOver, row.unit, 'km') };
  // Once begun again it stays low: a single low reading among high ones is a slip.
  const perhapsRolled = after === undefined && row.value < rollOver && fits(before, rolled);
  return perhapsRolled ? ['lowerThanBefore', 'perhapsRolledOver'] : ['lowerThanBefore'];
}

function doubtsOf(row: Row, before: Row | undefined, after: Row | undefined): OdometerDoubt[] {
  if (row.value < 0) return ['negative'];
  const doubts = before === undefined ? [] : againstEarlier(row, before, after);
  if (after !== undefined && row.km > after.km) doubts.push('higherThanAfter');
  const neighbour = before ?? after;
  if (neighbour !== undefined && neighbour.km > 0) doubts.push(...againstNeighbour(row, neighbour));
  return doubts.length > 0 ? doubts : ['tooFast'];
}

/** All readings in the order of days, each kept or with its doubts. Quadratic in their number. */
export function judgeReadings(readings: readonly OdometerReading[]): readonly JudgedReading[] {
  const rows = readings
    .map((reading) => ({ ...reading, km: convert(reading.value, reading.unit, 'km') }))
    .sort((a, b) => daysBetween(b.day, a.day));
  const kept = longestFitting(rows);
  return rows.map((row, at) => {
    if (kept.has(at)) return { ...row, kept: true, doubts: [] };
    const before = rows.slice(0, at).findLast((_, index) => kept.has(index));
    const after = rows.find((_, index) => index > at && kept.has(index));
    return { ...row, kept: false, doubts: doubtsOf(row, before, after) };
  });
}
