/** Which held vehicle to move out of a bay, and what an earlier part is worth: two plans of the same shop, compared. */
import { totalMs, clip, tidy } from '@holdfast/shop-calendar';
import { minuteMs } from './compile.js';
import type { PlanJob, PlanModel } from './model.js';
import type { PlanValue } from './plan.js';
import { planner } from './planner.js';
import { suppose } from './what-if.js';

export interface Effort {
  readonly seed: number;
  readonly steps: number;
}

export interface MoveOutAdvice {
  readonly jobId: string;
  readonly spotId: string;
  /** when the first of its lines could go on */
  readonly heldUntil: number;
  /** open minutes of the bay in which the vehicle would stand there held, if it stays until then */
  readonly bayMinutesFreed: number;
  readonly stays: PlanValue;
  readonly movesOut: PlanValue;
  /** weighted minutes late that moving it out saves; below 0: it costs so much */
  readonly gainWeightedMinutes: number;
  /** vehicles brought into a bay in addition */
  readonly moreMoves: number;
}

function heldUntil(job: PlanJob): number {
  const own = job.lines.map((line) => Math.max(0, ...line.notBefore.map((one) => one.at)));
  const first = job.lines.flatMap((line, i) => (line.after.length === 0 ? [own[i] ?? 0] : []));
  return first.length === 0 ? 0 : Math.min(...first);
}

function openMinutes(model: PlanModel, spotId: string, from: number, to: number): number {
  const open = model.spots.find((spot) => spot.spotId === spotId)?.open;
  if (open === undefined || to <= from) return 0;
  return open === null ? (to - from) / minuteMs : totalMs(clip(tidy(open), from, to)) / minuteMs;
}

/**
 * For each vehicle that stands in a bay, can be moved and is held: the shop planned with it staying until it goes on
 * against the shop planned with the bay free at once. Best gain first. Two plans of `effort` for each such vehicle.
 */
export function adviseMovingOut(model: PlanModel, effort: Effort): readonly MoveOutAdvice[] {
  const advice = model.jobs.flatMap((job): MoveOutAdvice[] => {
    const until = heldUntil(job);
    if (job.stands === null || job.stands.staysUntil !== null || until <= model.now) return [];
    const { spotId } = job.stands;
    const planned = (stands: PlanJob['stands']) => {
      const jobs = model.jobs.map((one) => (one === job ? { ...one, stands } : one));
      return planner({ ...model, jobs }, effort.seed).step(effort.steps).value;
    };
    const stays = planned({ spotId, staysUntil: { at: until } });
    const movesOut = planned(null);
    return [
      {
        jobId: job.jobId,
        spotId,
        heldUntil: until,
        bayMinutesFreed: openMinutes(model, spotId, model.now, until),
        stays,
        movesOut,
        gainWeightedMinutes: stays.weightedTardinessMinutes - movesOut.weightedTardinessMinutes,
        moreMoves: movesOut.moves - stays.moves,
      },
    ];
  });
  return advice.sort((a, b) => b.gainWeightedMinutes - a.gainWeightedMinutes || a.moreMoves - b.moreMoves);
}

export interface EarlierWorth {
  readonly asIs: PlanValue;
  readonly earlier: PlanValue;
  /** weighted minutes late saved */
  readonly gainWeightedMinutes: number;
  /** open minutes less in which the vehicle stands held in the bay it is in now; 0 where it stands in none */
  readonly bayMinutesSaved: number;
}

/** What it would be worth if what a line waits for (`reason`) were there at `at` instead. Two plans of `effort`. */
export function worthOfEarlier(
  model: PlanModel,
  wanted: { readonly jobId: string; readonly lineId: string; readonly reason: string; readonly at: number },
  effort: Effort,
): EarlierWorth {
  const other = suppose(model, { kind: 'notBefore', ...wanted });
  const asIs = planner(model, effort.seed).step(effort.steps).value;
  const earlier = planner(other, effort.seed).step(effort.steps).value;
  const held = (of: PlanModel) => {
    const job = of.jobs.find((one) => one.jobId === wanted.jobId);
    return job?.stands == null ? 0 : openMinutes(of, job.stands.spotId, of.now, heldUntil(job));
  };
  return {
    asIs,
    earlier,
    gainWeightedMinutes: asIs.weightedTardinessMinutes - earlier.weightedTardinessMinutes,
    bayMinutesSaved: held(model) - held(other),
  };
}
