// strip/ hides how a bay's time is drawn. It guarantees that all strips of a board share one time axis with "now" at one
// fixed place, that worked, held, unexplained, planned, empty and unknown time differ by texture and not by colour, and
// that every strip says the same as a sentence and as a table.
import type { HoldReason } from '@holdfast/domain';

import type { AgeTickCount } from '../ui/marks/age-ticks.js';
import type { Waiting } from '../ui/marks/wait-mark.js';

export const segmentKinds = [
  'worked',
  'held',
  'noReason',
  'stored',
  'break',
  'planned',
  'empty',
  'unknown',
  'outOfUse',
  'kept',
] as const;
/**
 * What was the case in the bay: worked on; held with a reason; a vehicle stands and nobody said why; only stored; a break
 * with the vehicle in the bay; planned; empty; not known (a device was offline); the bay out of use; the spot kept for a
 * vehicle that is on a road test or away.
 */
export type SegmentKind = (typeof segmentKinds)[number];

/** A span of one bay spot. `from` and `to` are epoch milliseconds, `to` after `from`; what still lasts ends at now. */
export type StripSegment = {
  readonly from: number;
  readonly to: number;
  readonly kind: SegmentKind;
  readonly reason?: HoldReason;
  readonly ageTicks?: AgeTickCount;
  readonly waiting?: Waiting;
  /** When it began, where that lies before `from` or before the window. */
  readonly since?: number;
  /** Its age in minutes of opening time, where that is told rather than the time on the wall. */
  readonly ageMinutes?: number;
  /** The vehicle of this span, as its plate or job number. */
  readonly label?: string;
};

/** A temporary fix on the vehicle from … until repaired for good; `to` null goes on through the forecast. */
export type StitchedSpan = { readonly from: number; readonly to: number | null; readonly ended: boolean };

/** Instants by which the work ends in 50, 80 and 95 of 100 cases. */
export type Forecast = { readonly p50: number; readonly p80: number; readonly p95: number };

export type StripData = {
  readonly from: number;
  readonly to: number;
  readonly now: number;
  /** In order of time, without overlap. */
  readonly segments: readonly StripSegment[];
  readonly stitched: readonly StitchedSpan[];
  readonly promise?: number | null;
  readonly forecast?: Forecast | null;
};
