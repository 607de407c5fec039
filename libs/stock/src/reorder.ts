/**
 * When to order: expected demand until it comes, and the stock kept against what varies. One unit of time for
 * everything: demand per period and lead time in the same periods. (One page found on the subject mixes days and weeks.)
 */
import { normalQuantile, poissonQuantile } from './distributions.js';

export interface Demand {
  /** per period */
  readonly mean: number;
  /** standard deviation of one period's demand; 0: always the same */
  readonly sd: number;
}

export interface LeadTime {
  /** in periods */
  readonly mean: number;
  /** standard deviation, in periods; 0: always the same */
  readonly sd: number;
}

export interface ReorderPoint {
  /** demand expected during the lead time */
  readonly expected: number;
  readonly safety: number;
  /** order when what is there and on order comes down to this; not rounded */
  readonly at: number;
}

function check(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError(`${name} is ${value}, not a number of 0 or more.`);
  }
}

/**
 * Normal demand: expected d·L and safety z·√(L·sd² + d²·sdL²), demand and lead time independent; with a constant lead
 * time that is z·sd·√L, with constant demand z·d·sdL. Sources: Stevenson, Operations Management; Heizer & Render; Taylor
 * & Russell, ch. 16. `level` is the share of cycles without a shortage; text books round its z, so it may be given as
 * such instead.
 */
export function normalReorderPoint(
  demand: Demand,
  lead: LeadTime,
  service: { readonly level: number } | { readonly z: number },
): ReorderPoint {
  check({ demand: demand.mean, 'demand sd': demand.sd, 'lead time': lead.mean, 'lead time sd': lead.sd });
  const z = 'z' in service ? service.z : normalQuantile(service.level);
  const expected = demand.mean * lead.mean;
  const safety = Math.max(0, z * Math.sqrt(lead.mean * demand.sd ** 2 + demand.mean ** 2 * lead.sd ** 2));
  return { expected, safety, at: expected + safety };
}

/** Poisson demand, for what goes piece by piece now and then: the least stock that serves the level of lead times. */
export function poissonReorderPoint(demandMean: number, leadMean: number, level: number): ReorderPoint {
  check({ demand: demandMean, 'lead time': leadMean });
  const expected = demandMean * leadMean;
  const at = poissonQuantile(expected, level);
  return { expected, safety: Math.max(0, at - expected), at };
}

/** Mean and standard deviation (of a sample, n − 1) of what was observed; null for fewer than two. */
export function spreadOf(values: readonly number[]): { readonly mean: number; readonly sd: number } | null {
  if (values.length < 2) return null;
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (values.length - 1)) };
}
