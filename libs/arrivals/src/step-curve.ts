/**
 * Survival curves on whole coordinates (working days, runs, quarter hours), built from observations and a prior.
 *
 * The estimator is that of Susarla and Van Ryzin (1976): nonparametric Bayes with a Dirichlet process as prior, in the
 * product form (hazard at s = (M·prior mass at s + events at s) / (M·prior mass from s on + at risk at s), which for
 * a prior that is itself a step curve is the same thing. With weight M → 0 it is Kaplan–Meier; with no observations it
 * is the prior.
 */

/** Not increasing, continuous from the right. Beyond `until` nothing is known; it is Infinity once the curve is at 0. */
export interface StepCurve {
  readonly times: readonly number[];
  /** S at and after the time of the same place */
  readonly survival: readonly number[];
  readonly until: number;
}

export interface Prior {
  readonly curve: StepCurve;
  /** as many observations as the prior counts for */
  readonly weight: number;
}

/** Below this a curve counts as having come to its end: products of many factors do not reach 0 by themselves. */
const nothing = 1e-12;
/** Two shares nearer than this are the same share. */
const equal = 1e-9;

/** An observation as one number, so that sorting is fast and an event comes before a censoring at the same time. */
export const codeOf = (time: number, event: boolean): number => time * 2 + (event ? 0 : 1);
export const timeOfCode = (code: number): number => Math.floor(code / 2);
export const isEvent = (code: number): boolean => code % 2 === 0;

/** Observations time by time, place by place: what ended then, and how many lasted to it or longer. */
interface ByTime {
  readonly times: number[];
  readonly events: number[];
  readonly atRisk: number[];
}

function byTime(codes: ArrayLike<number>): ByTime {
  const all: ByTime = { times: [], events: [], atRisk: [] };
  for (let at = 0; at < codes.length;) {
    const atRisk = codes.length - at;
    const time = timeOfCode(codes[at] ?? 0);
    let events = 0;
    for (; at < codes.length; at += 1) {
      const code = codes[at] ?? 0;
      if (timeOfCode(code) !== time) break;
      if (isEvent(code)) events += 1;
    }
    all.times.push(time);
    all.events.push(events);
    all.atRisk.push(atRisk);
  }
  return all;
}

const noPrior: Prior = { curve: { times: [], survival: [], until: -Infinity }, weight: 0 };
const timeAt = (times: readonly number[], place: number): number => times[place] ?? Infinity;
const numberAt = (list: readonly number[], place: number): number => list[place] ?? 0;

/**
 * The curve of observations (codes in ascending order) mixed with a prior curve, in one pass over both. Null if there
 * is neither.
 */
export function mixedCurve(codes: ArrayLike<number>, prior: Prior | null): StepCurve | null {
  if (codes.length === 0) return prior && prior.curve;
  const { curve, weight } = prior !== null && prior.weight > 0 ? prior : noPrior;
  const own = byTime(codes);
  const times: number[] = [];
  const survivals: number[] = [];
  let survival = 1;
  let priorBefore = 1;
  let i = 0;
  let j = 0;
  while (survival > 0 && (i < own.times.length || j < curve.times.length)) {
    const time = Math.min(timeAt(own.times, i), timeAt(curve.times, j));
    const isOwn = timeAt(own.times, i) === time;
    const isPrior = timeAt(curve.times, j) === time;
    // Between its own times nothing of its own ends, and at risk is what lasts to the next.
    const events = isOwn ? numberAt(own.events, i) : 0;
    const priorAfter = isPrior ? numberAt(curve.survival, j) : priorBefore;
    const ending = weight * (priorBefore - priorAfter) + events;
    const left = weight * priorAfter + numberAt(own.atRisk, i) - events;
    priorBefore = priorAfter;
    i += Number(isOwn);
    j += Number(isPrior);
    if (ending <= 0) continue;
    survival = (survival * left) / (left + ending);
    if (survival <= nothing) survival = 0;
    times.push(time);
    survivals.push(survival);
  }
  const last = own.times.at(-1) ?? -Infinity;
  return { times, survival: survivals, until: survival === 0 ? Infinity : Math.max(last, curve.until) };
}

/** How many steps lie at or before the time. */
function stepsUpTo(curve: StepCurve, time: number): number {
  let low = 0;
  let high = curve.times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((curve.times[middle] ?? Infinity) <= time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The law of what has already waited: P(T ≤ t | T > waited) = 1 − S(t)/S(waited), told as a place in the curve, so that
 * nothing is copied.
 */
export interface Remaining {
  readonly curve: StepCurve;
  /** the first step that is still to come */
  readonly first: number;
  /** S(waited) */
  readonly share: number;
}

/** Null if nothing is known of anything that waited so long. */
export function remainingAfter(curve: StepCurve, waited: number): Remaining | null {
  const first = stepsUpTo(curve, waited);
  const share = first === 0 ? 1 : (curve.survival[first - 1] ?? 1);
  return share <= nothing || curve.until <= waited ? null : { curve, first, share };
}

/** P(T ≤ the time of this step). */
export function shareAtStep({ curve, first, share }: Remaining, step: number): number {
  return step < first ? 0 : 1 - (curve.survival[step] ?? 0) / share;
}

/** The first step by which the share `p` has come; null if the curve ends above that level. */
export function stepReaching({ curve, first, share }: Remaining, p: number): number | null {
  const level = (1 - p + equal) * share;
  let low = first;
  let high = curve.times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((curve.survival[middle] ?? 0) <= level) high = middle;
    else low = middle + 1;
  }
  return low < curve.times.length ? low : null;
}
