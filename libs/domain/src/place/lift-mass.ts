/**
 * Rule 4, as far as masses go: whether a lift may take a vehicle today. It compares masses and nothing else; load per arm,
 * wheelbase, adaptors, the vehicle maker's lifting points and local rules decide as well, and the screens say so.
 */
import type { Row } from '../tables/tables.js';

/** What is said at the bay about the load: whether one is on, and its kilograms where somebody knows them. */
export interface LoadSaid {
  readonly loaded?: boolean | undefined;
  readonly loadKg?: number | undefined;
}

export type MassVerdict =
  | { readonly verdict: 'passes' }
  /** Known to be heavier than the rating. No override. */
  | { readonly verdict: 'above'; readonly massKg: number }
  /** "Loaded or empty?" has to be answered for this stay. */
  | { readonly verdict: 'asks' }
  /** Loaded, and at its gross rating above the lift's: without the load's kilograms nobody knows. */
  | { readonly verdict: 'asksWeight'; readonly grossKg: number };

/** A stated load is a load, also when "loaded" was not said. */
export function isLoaded(said: LoadSaid): boolean | undefined {
  return said.loaded ?? (said.loadKg === undefined ? undefined : true);
}

/**
 * All masses in kilograms. Mass today is at least what it was weighed at, at least the curb mass, and at least the curb
 * (else the weighed) mass plus the stated load. A gross rating within the capacity passes without a question.
 */
export function judgeMass(
  vehicle: Pick<Row<'vehicle'>, 'curbKg' | 'grossKg' | 'weighedKg'>,
  capacityKg: number,
  said: LoadSaid,
): MassVerdict {
  const { curbKg, grossKg, weighedKg } = vehicle;
  const loaded = isLoaded(said);
  const loadKg = loaded === true ? (said.loadKg ?? 0) : 0;
  const massKg = Math.max(curbKg ?? 0, weighedKg ?? 0, (curbKg ?? weighedKg ?? 0) + loadKg);
  if (massKg > capacityKg) return { verdict: 'above', massKg };
  if (grossKg !== null && grossKg <= capacityKg) return { verdict: 'passes' };
  if (loaded === undefined) return { verdict: 'asks' };
  if (loaded && said.loadKg === undefined && grossKg !== null) return { verdict: 'asksWeight', grossKg };
  return { verdict: 'passes' };
}
