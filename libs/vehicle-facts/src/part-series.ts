/**
 * Measurements over time. Guaranteed: a series belongs to the part and not to the place. A tyre's readings go with it when
 * wheels change places and end when it is replaced; a new set of pads starts a new series. Which part stood where follows
 * from what was recorded, in the order of time, whatever order it comes in.
 */
import { type Point, theilSen } from './lines-through-points.js';

/** Places are the domain's words: `1L`, `2RO`, `spare`, or a brake's place. */
export interface PlacedReading {
  readonly at: number;
  readonly place: string;
  /** odometer in km; null: not known */
  readonly km: number | null;
  /** millimetres */
  readonly mm: number;
}

/** What happened to the parts at an instant, epoch milliseconds. A reading at the same instant was taken before it. */
export type PartEvent =
  | { readonly at: number; readonly kind: 'replaced'; readonly places: readonly string[] }
  | {
      readonly at: number;
      readonly kind: 'moved';
      /** all at once: what stood at `from` stands at `to` afterwards */
      readonly moves: readonly { readonly from: string; readonly to: string }[];
    };

export interface SeriesReading extends PlacedReading {
  /** deeper than the one before on the same part: asked about, kept */
  readonly deeperThanBefore: boolean;
}

export interface PartSeries {
  /** where it stands now; null: it was taken off */
  readonly placeNow: string | null;
  /** in the order of time */
  readonly readings: readonly SeriesReading[];
}

/** Readings of less than this above the last one are how a gauge reads, not growth, in mm. */
const gaugeMm = 0.3;

interface Growing {
  placeNow: string | null;
  readings: SeriesReading[];
}

function apply(event: PartEvent, standing: Map<string, Growing>): void {
  if (event.kind === 'replaced') {
    for (const place of event.places) {
      const gone = standing.get(place);
      if (gone) gone.placeNow = null;
      standing.delete(place);
    }
    return;
  }
  const lifted = event.moves.map(({ from, to }) => ({ part: standing.get(from), to }));
  for (const { from } of event.moves) standing.delete(from);
  for (const { part, to } of lifted) {
    const under = standing.get(to);
    if (under) under.placeNow = null;
    standing.delete(to);
    if (part) {
      part.placeNow = to;
      standing.set(to, part);
    }
  }
}

/** The series of all parts, those whose first reading is earliest first. */
export function partSeries(readings: readonly PlacedReading[], events: readonly PartEvent[]): readonly PartSeries[] {
  const standing = new Map<string, Growing>();
  const all: Growing[] = [];
  const waiting = [...events].sort((a, b) => a.at - b.at);
  for (const reading of [...readings].sort((a, b) => a.at - b.at)) {
    for (let next = waiting[0]; next !== undefined && next.at < reading.at; next = waiting[0]) {
      apply(next, standing);
      waiting.shift();
    }
    let part = standing.get(reading.place);
    if (part === undefined) {
      part = { placeNow: reading.place, readings: [] };
      standing.set(reading.place, part);
      all.push(part);
    }
    const before = part.readings.at(-1);
    part.readings.push({ ...reading, deeperThanBefore: before !== undefined && reading.mm > before.mm + gaugeMm });
  }
  for (const event of waiting) apply(event, standing);
  return all.filter(({ readings: own }) => own.length > 0);
}

export type WearProjection =
  | {
      readonly basis: 'distance' | 'time';
      /** mm lost per 1000 km, or per day */
      readonly rate: number;
      /** odometer in km at the limit; null where the basis is time */
      readonly atKm: number | null;
      /** instant at the limit, epoch ms; null where the basis is distance (see the odometer projection) */
      readonly at: number | null;
      readonly alreadyAtLimit: boolean;
      readonly readings: number;
    }
  | { readonly basis: 'none'; readonly because: 'tooFewReadings' | 'noWearMeasured' };

/**
 * When the part will be at the limit (mm), by the robust line through two readings or more; none with one. By distance
 * where the odometer is known for two readings, else by time. Readings deeper than the one before are left out.
 */
export function projectWear(series: PartSeries, limitMm: number): WearProjection {
  const kept = series.readings.filter(({ deeperThanBefore }) => !deeperThanBefore);
  const last = kept.at(-1);
  if (kept.length < 2 || last === undefined) return { basis: 'none', because: 'tooFewReadings' };
  const byKm: Point[] = kept.flatMap(({ km, mm }) => (km === null ? [] : [{ x: km, y: mm }]));
  const distance = theilSen(byKm);
  const line = distance ?? theilSen(kept.map(({ at, mm }) => ({ x: at, y: mm })));
  if (line === null) return { basis: 'none', because: 'tooFewReadings' };
  const alreadyAtLimit = last.mm <= limitMm;
  if (line.slope >= 0) return { basis: 'none', because: 'noWearMeasured' };
  const reached = (limitMm - line.intercept) / line.slope;
  const figures = { alreadyAtLimit, readings: kept.length };
  if (distance !== null) return { basis: 'distance', rate: -line.slope * 1000, atKm: reached, at: null, ...figures };
  return { basis: 'time', rate: -line.slope * 86_400_000, atKm: null, at: reached, ...figures };
}
