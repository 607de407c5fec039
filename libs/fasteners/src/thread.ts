/**
 * Threads: metric (ISO 261/262) and unified inch (UNC, UNF). A metric thread without a pitch is the coarse one by the
 * standard, but many vehicle fasteners are fine, so an answer says whether the pitch was said or assumed.
 *
 * Stress area: metric As = π/4·((d2 + d3)/2)² = 0.7854·(d − 0.9382·P)² in mm² (ISO 898-1), unified 0.7854·(D − 0.9743/n)² in in². Loads are
 * computed from the printed, rounded areas of the tables where there is one, as the standard's own loads are.
 */
import { compare, convert } from '@holdfast/vehicle-facts';

export interface MetricThread {
  readonly system: 'metric';
  readonly diameterMm: number;
  readonly pitchMm: number;
  /** false: no pitch was said and the coarse one is assumed */
  readonly pitchSaid: boolean;
}

export interface UnifiedThread {
  readonly system: 'unified';
  readonly diameterIn: number;
  readonly threadsPerInch: number;
  /** as it is called: `3/8-16`, `#10-24` */
  readonly name: string;
}

export type Thread = MetricThread | UnifiedThread;

export type ThreadDoubt = 'notAThread' | 'pitchNeeded' | 'pitchTooCoarse' | 'comma';

/** Coarse pitches in mm by nominal diameter in mm. Source: ISO 261/262. */
const coarsePitches: ReadonlyMap<number, number> = new Map([
  [5, 0.8],
  [6, 1],
  [7, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [14, 2],
  [16, 2],
  [18, 2.5],
  [20, 2.5],
]);

/** Printed stress areas of the coarse threads in mm². Source: ISO 898-1, tables of loads. */
const metricAreas: ReadonlyMap<number, number> = new Map([
  [5, 14.2],
  [6, 20.1],
  [7, 28.9],
  [8, 36.6],
  [10, 58],
  [12, 84.3],
  [14, 115],
  [16, 157],
  [18, 192],
  [20, 245],
]);

/**
 * Printed stress areas in in². Source: Mott, Machine Elements in Mechanical Design, table 19-4 (quarter to half inch);
 * Shigley, Mechanical Engineering Design, 9th ed., example 8-3 (3/4-16). A table in circulation has 0.0163 for 7/16-14
 * with two digits swapped.
 */
const unifiedAreas: Readonly<Record<string, number>> = {
  '1/4-20': 0.0318,
  '1/4-28': 0.0364,
  '5/16-18': 0.0524,
  '5/16-24': 0.058,
  '3/8-16': 0.0775,
  '3/8-24': 0.0878,
  '7/16-14': 0.1063,
  '7/16-20': 0.1187,
  '1/2-13': 0.1419,
  '1/2-20': 0.1599,
  '3/4-16': 0.373,
};

/** Coarse pitch in mm of a nominal diameter in mm; null where this library has none (outside M5 to M20). */
export function coarsePitchMm(diameterMm: number): number | null {
  return coarsePitches.get(diameterMm) ?? null;
}

function readMetric(
  text: string,
): { readonly thread: Thread } | { readonly thread: null; readonly doubt: ThreadDoubt } {
  const match = /^M(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?$/i.exec(text);
  if (match === null) return { thread: null, doubt: text.includes(',') ? 'comma' : 'notAThread' };
  const diameterMm = Number(match[1]);
  const said = match[2] === undefined ? null : Number(match[2]);
  const pitchMm = said ?? coarsePitchMm(diameterMm);
  if (diameterMm === 0 || pitchMm === 0) return { thread: null, doubt: 'notAThread' };
  if (pitchMm === null) return { thread: null, doubt: 'pitchNeeded' };
  // "M8 x 30" is a length in the place of the pitch: no pitch is a third of the diameter.
  if (pitchMm > diameterMm / 3) return { thread: null, doubt: 'pitchTooCoarse' };
  return { thread: { system: 'metric', diameterMm, pitchMm, pitchSaid: said !== null } };
}

/** Numbered sizes: 0.060 in + 0.013 in per number (ASME B1.1; from memory, agrees with #10 = 0.190 in). */
function inchesOf(size: string): number {
  const fraction = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(size);
  if (fraction !== null) return Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  if (size.startsWith('#')) return Number((0.06 + 0.013 * Number(size.slice(1))).toFixed(3));
  return Number(size);
}

function readUnified(
  text: string,
): { readonly thread: Thread } | { readonly thread: null; readonly doubt: ThreadDoubt } {
  const match = /^(#\d{1,2}|\d+\/\d+|\d+[- ]\d+\/\d+|\d+(?:\.\d+)?)-(\d{1,2})(?:\s*UN[CF])?$/i.exec(text);
  const [, size = '', count = ''] = match ?? [];
  if (match === null) {
    return { thread: null, doubt: /^(#\d{1,2}|\d+\/\d+)$/.test(text) ? 'pitchNeeded' : 'notAThread' };
  }
  const diameterIn = inchesOf(size);
  const threadsPerInch = Number(count);
  if (!(diameterIn > 0 && Number.isFinite(diameterIn)) || threadsPerInch === 0)
    return { thread: null, doubt: 'notAThread' };
  if (1 / threadsPerInch > diameterIn / 3) return { thread: null, doubt: 'pitchTooCoarse' };
  return { thread: { system: 'unified', diameterIn, threadsPerInch, name: `${size}-${count}` } };
}

/**
 * A thread as it is written: `M10x1.25`, `M8` (coarse by the standard), `3/8-16`, `7/16-20 UNF`, `#10-24`. An inch thread
 * always needs its threads per inch, a metric one outside M5 to M20 its pitch.
 */
export function readThread(
  text: string,
): { readonly thread: Thread } | { readonly thread: null; readonly doubt: ThreadDoubt } {
  const written = text.trim().replace(/\s+/g, ' ');
  return /^m/i.test(written) ? readMetric(written) : readUnified(written);
}

/** Nominal diameter in millimetres. */
export function diameterMmOf(thread: Thread): number {
  return thread.system === 'metric' ? thread.diameterMm : convert(thread.diameterIn, 'in', 'mm');
}

/** Distance from one thread to the next in millimetres. */
export function pitchMmOf(thread: Thread): number {
  return thread.system === 'metric' ? thread.pitchMm : convert(1 / thread.threadsPerInch, 'in', 'mm');
}

/** Whether a bolt of the one goes into a nut of the other: diameter and pitch agree. M8x1.25 and 5/16-18 do not. */
export function sameThread(a: Thread, b: Thread): boolean {
  return (
    a.system === b.system &&
    compare(diameterMmOf(a), diameterMmOf(b)) === 0 &&
    compare(pitchMmOf(a), pitchMmOf(b)) === 0
  );
}

export interface StressArea {
  readonly mm2: number;
  /** the printed table's figure, rounded there, or the formula's */
  readonly basis: 'table' | 'formula';
  readonly source: string;
}

const squareMmPerSquareIn = 25.4 * 25.4;
const fourth = Math.PI / 4;
/** Mean of pitch and root diameter is d − (13/12)·H with H = (√3/2)·P: the 0.9382·P of the books. */
const meanDepth = (13 / 12) * (Math.sqrt(3) / 2);

/** Stress area by the formula alone, in mm². */
export function stressAreaByFormulaMm2(thread: Thread): number {
  if (thread.system === 'metric') return fourth * (thread.diameterMm - meanDepth * thread.pitchMm) ** 2;
  return fourth * (thread.diameterIn - 0.9743 / thread.threadsPerInch) ** 2 * squareMmPerSquareIn;
}

/** Stress area that loads are computed with: the printed one where the thread stands in the tables. */
export function stressAreaOf(thread: Thread): StressArea {
  if (thread.system === 'unified') {
    const printed = unifiedAreas[thread.name];
    if (printed !== undefined) {
      return { mm2: printed * squareMmPerSquareIn, basis: 'table', source: 'Mott table 19-4; Shigley 9th ed. 8-3' };
    }
    return { mm2: stressAreaByFormulaMm2(thread), basis: 'formula', source: '0.7854·(D − 0.9743/n)²' };
  }
  const printed = metricAreas.get(thread.diameterMm);
  if (printed !== undefined && compare(thread.pitchMm, coarsePitchMm(thread.diameterMm) ?? 0) === 0) {
    return { mm2: printed, basis: 'table', source: 'ISO 898-1' };
  }
  return { mm2: stressAreaByFormulaMm2(thread), basis: 'formula', source: 'ISO 898-1: 0.7854·(d − 0.9382·P)²' };
}
