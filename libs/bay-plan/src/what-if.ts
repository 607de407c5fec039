/** "What if": the model with one thing otherwise, and what the plan made again from it would change. */
import { type Interval, subtract } from '@holdfast/shop-calendar';
import { type PlanDifference, difference } from './difference.js';
import type { PlanJob, PlanLine, PlanModel } from './model.js';
import type { Plan, PlanValue } from './plan.js';
import { planner, usualDisturbance } from './planner.js';

export type SupposedChange =
  | { readonly kind: 'bayOut'; readonly bayId: string; readonly from: number; readonly to: number }
  | { readonly kind: 'personAway'; readonly personId: string; readonly from: number; readonly to: number }
  | { readonly kind: 'promisedAt'; readonly jobId: string; readonly at: number | null }
  /** a part, a go-ahead or the like is there then, earlier or later than thought */
  | {
      readonly kind: 'notBefore';
      readonly jobId: string;
      readonly lineId: string;
      readonly reason: string;
      readonly at: number;
    }
  | { readonly kind: 'added'; readonly job: PlanJob }
  | { readonly kind: 'gone'; readonly jobId: string };

function without(open: readonly Interval[] | null, model: PlanModel, out: Interval): readonly Interval[] {
  return subtract(open ?? [{ from: model.now, to: model.horizon }], [out]);
}

function withReason(line: PlanLine, reason: string, at: number): PlanLine {
  return { ...line, notBefore: [...line.notBefore.filter((one) => one.reason !== reason), { reason, at }] };
}

/** The model with the change; one that names nothing in it leaves it as it is. */
export function suppose(model: PlanModel, change: SupposedChange): PlanModel {
  const jobs = (jobId: string, alter: (job: PlanJob) => PlanJob): PlanModel => ({
    ...model,
    jobs: model.jobs.map((job) => (job.jobId === jobId ? alter(job) : job)),
  });
  switch (change.kind) {
    case 'bayOut':
      return {
        ...model,
        spots: model.spots.map((spot) =>
          spot.bayId === change.bayId ? { ...spot, open: without(spot.open, model, change) } : spot,
        ),
      };
    case 'personAway':
      return {
        ...model,
        people: model.people.map((person) =>
          person.personId === change.personId ? { ...person, open: without(person.open, model, change) } : person,
        ),
      };
    case 'promisedAt':
      return jobs(change.jobId, (job) => ({ ...job, promisedAt: change.at }));
    case 'notBefore':
      return jobs(change.jobId, (job) => ({
        ...job,
        lines: job.lines.map((line) =>
          line.lineId === change.lineId ? withReason(line, change.reason, change.at) : line,
        ),
      }));
    case 'added':
      return { ...model, jobs: [...model.jobs, change.job] };
    case 'gone':
      return { ...model, jobs: model.jobs.filter((job) => job.jobId !== change.jobId) };
  }
}

export interface Supposed {
  readonly before: PlanValue;
  readonly after: PlanValue;
  readonly plan: Plan;
  readonly difference: PlanDifference;
}

/** What would follow, planned again from `plan` with the least disturbance. `steps` bound the time it takes. */
export function whatIf(
  model: PlanModel,
  plan: Plan,
  change: SupposedChange,
  effort: { readonly seed: number; readonly steps: number },
): Supposed {
  const other = suppose(model, change);
  const again = planner(other, effort.seed, { before: { plan, ...usualDisturbance } }).step(effort.steps);
  return {
    before: plan.value,
    after: again.value,
    plan: again.plan,
    difference: difference(other, plan, again.plan, usualDisturbance.toleranceMinutes),
  };
}
