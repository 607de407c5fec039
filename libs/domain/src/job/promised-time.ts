import type { Circumstances } from '../kernel/decision.js';
import { type Refused, refuse } from '../kernel/refusal.js';

/** Nobody promises a time (epoch ms) that is over when it is recorded. */
export function promisedTooEarly(promisedAt: number | null | undefined, at: Circumstances): Refused | null {
  if (promisedAt == null || promisedAt >= at.now) return null;
  const iso = (instant: number): string => new Date(instant).toISOString();
  return refuse('job.promisedInPast', { promisedAt: iso(promisedAt), now: iso(at.now) });
}
