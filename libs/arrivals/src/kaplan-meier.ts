/**
 * The Kaplan–Meier estimate of a survival curve from observations of which some are still open (right-censored), with
 * Greenwood's standard errors and limits of type "log" as R's `survfit` gives them.
 */

/** One waiting time, in any unit: ended at `time` (event), or still open then. An open one is at risk at its own time. */
export interface Observation {
  readonly time: number;
  readonly event: boolean;
}

/** One time at which something ended. */
export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  /** S(t), the estimated share still waiting after `time` */
  readonly survival: number;
  /** Greenwood's; NaN where the curve is 0 */
  readonly standardError: number;
  /** limits exp(log S ± z·s.e./S), the upper one cut at 1; NaN where the curve is 0 */
  readonly lower: number;
  readonly upper: number;
}

/** Two-sided 95 %: the normal quantile of 0.975. */
const z95 = 1.959963984540054;
/** what R's `quantile.survfit` takes as equal */
const equal = 1e-9;

/**
 * The steps of the curve in order of time; none if nothing ended. Limits for `z` standard errors (95 % unless told).
 * Source: Kaplan & Meier 1958; ties as in R (an event comes before a censoring at the same time). Refuses a time that
 * is not finite with a RangeError.
 */
export function kaplanMeier(observations: readonly Observation[], z = z95): SurvivalStep[] {
  const wrong = observations.find((one) => !Number.isFinite(one.time));
  if (wrong) throw new RangeError(`${wrong.time} is not a time that can have been observed.`);
  const sorted = [...observations].sort((a, b) => a.time - b.time || Number(b.event) - Number(a.event));
  const steps: SurvivalStep[] = [];
  let survival = 1;
  let greenwood = 0;
  for (let at = 0; at < sorted.length;) {
    const time = sorted[at]?.time ?? 0;
    const atRisk = sorted.length - at;
    let events = 0;
    for (; sorted[at]?.time === time; at += 1) if (sorted[at]?.event) events += 1;
    if (events === 0) continue;
    survival = events === atRisk ? 0 : survival * (1 - events / atRisk);
    greenwood += events / (atRisk * (atRisk - events));
    // Standard error of log S; infinite once the curve is at 0.
    const ofLog = survival === 0 ? Number.NaN : Math.sqrt(greenwood);
    const lower = survival * Math.exp(-z * ofLog);
    const upper = survival * Math.exp(z * ofLog);
    steps.push({ time, atRisk, events, survival, standardError: survival * ofLog, lower, upper: Math.min(1, upper) });
  }
  return steps;
}

/** The survival after `time`: the curve is continuous from the right. */
export function survivalAt(steps: readonly SurvivalStep[], time: number): number {
  return steps.findLast((one) => one.time <= time)?.survival ?? 1;
}

/**
 * The time by which the share `p` has ended; where the curve is flat at exactly that level the midpoint of the flat
 * stretch, as R's `quantile.survfit` gives it. Null where the curve ends above the level: nothing is known then but
 * that it takes longer. `lastTime` is the greatest time observed, open ones counted: a flat end stretches to there.
 */
export function midpointQuantile(steps: readonly SurvivalStep[], p: number, lastTime = Infinity): number | null {
  return midpoint(steps, (one) => one.survival, p, lastTime);
}

/**
 * Limits of the quantile: where the limits of the curve cross the level. The upper one is null where the curve's upper
 * limit never comes down to it.
 */
export function quantileLimits(
  steps: readonly SurvivalStep[],
  p: number,
): { readonly lower: number | null; readonly upper: number | null } {
  const atZero = (limit: number): number => (Number.isNaN(limit) ? 1 : limit);
  return {
    lower: midpoint(steps, (one) => (one.survival === 0 ? 0 : one.lower), p, Infinity),
    upper: midpoint(steps, (one) => atZero(one.upper), p, Infinity),
  };
}

function midpoint(
  steps: readonly SurvivalStep[],
  level: (one: SurvivalStep) => number,
  p: number,
  lastTime: number,
): number | null {
  if (!(p > 0 && p < 1)) throw new RangeError(`${p} is not a share between 0 and 1.`);
  const at = steps.findIndex((one) => level(one) <= 1 - p + equal);
  const reached = steps[at];
  if (reached === undefined) return null;
  if (Math.abs(level(reached) - (1 - p)) > equal) return reached.time;
  const end = steps[at + 1]?.time ?? lastTime;
  return Number.isFinite(end) ? (reached.time + end) / 2 : reached.time;
}
