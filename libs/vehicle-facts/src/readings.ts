/** Readings at a wheel: tread at three depths across, pads inner and outer, and figures that look like a slip. */
import type { Length } from './limits.js';
import { convert } from './units.js';

const inMm = (length: Length): number => convert(length.value, length.unit, 'mm');
const byDepth = (a: Length, b: Length): number => inMm(a) - inMm(b);

/** Deepest tread of a new tyre that is not doubted, in mm. */
const deepestTreadMm = 20;

export type ReadingDoubt =
  | 'negative'
  | 'deeperThanAnyTread'
  /** whole numbers entered as mm that read well as thirty-seconds of an inch */
  | 'perhapsThirtySeconds';

export interface TreadReading {
  /** the lowest of those given: this one counts */
  readonly lowest: Length;
  /** deepest less lowest across the tyre, in mm */
  readonly acrossMm: number;
  /** fewer than three were taken */
  readonly incomplete: boolean;
  readonly doubts: readonly ReadingDoubt[];
}

/** Depths across one tyre: inner, middle, outer. RangeError: none at all. */
export function readTread(depths: readonly Length[], depthBeforeMm: number | null = null): TreadReading {
  const [lowest] = [...depths].sort(byDepth);
  if (lowest === undefined) throw new RangeError('No depth was taken.');
  const millimetres = depths.map(inMm);
  const doubts: ReadingDoubt[] = [];
  if (millimetres.some((one) => one < 0)) doubts.push('negative');
  if (millimetres.some((one) => one > deepestTreadMm)) doubts.push('deeperThanAnyTread');
  const wholeMm = depths.every(({ value, unit }) => unit === 'mm' && Number.isInteger(value));
  const deeperNow = depthBeforeMm !== null && Math.min(...millimetres) > depthBeforeMm;
  if (wholeMm && deeperNow) {
    const asIn32 = convert(Math.min(...millimetres), 'in32', 'mm');
    if (asIn32 <= depthBeforeMm) doubts.push('perhapsThirtySeconds');
  }
  return {
    lowest,
    acrossMm: Math.max(...millimetres) - Math.min(...millimetres),
    incomplete: depths.length < 3,
    doubts,
  };
}

export interface PadReading {
  /** the thinnest point of the two pads: this one counts */
  readonly thinnest: Length;
  readonly at: 'inner' | 'outer';
  /** |inner − outer| in mm; uneven wear of one calliper */
  readonly differenceMm: number;
}

export function readPads(inner: Length, outer: Length): PadReading {
  if (inMm(inner) < 0 || inMm(outer) < 0) throw new RangeError('A lining is not thinner than nothing.');
  const innerThinner = byDepth(inner, outer) <= 0;
  return {
    thinnest: innerThinner ? inner : outer,
    at: innerThinner ? 'inner' : 'outer',
    differenceMm: Math.abs(byDepth(inner, outer)),
  };
}

/** Difference between the sides of an axle in mm, at the thinnest point of each; positive: the right side is thinner. */
export function leftRightDifferenceMm(left: Length, right: Length): number {
  return byDepth(left, right);
}
