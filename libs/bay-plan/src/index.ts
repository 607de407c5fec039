/**
 * The plan of the bays: who goes where, when, and with whom, and why.
 *
 * Hidden here: how a plan is found (priority rules, then a seeded search that can be stopped at any time) and how one is
 * made again when the floor has changed. Guaranteed: a plan passes the checker, which shares nothing with the search; it
 * depends on the model, the seed and the number of steps only; its value never rises; nothing is applied by itself. It
 * knows no rows of the domain and no words of the screens: reasons are codes with facts.
 */
export { checkPlan } from './check-plan.js';
export type { PlanFault, PlanFaultCode } from './checked-line.js';
export { usualFreeShare, weights } from './model.js';
export type {
  FixedChoice,
  NotBefore,
  PlanJob,
  PlanLine,
  PlanModel,
  PlanPerson,
  PlanSpot,
  PlanSublet,
  StandsAt,
} from './model.js';
export { faultsInModel } from './model-faults.js';
export type { ModelFault } from './model-fault.js';
export { compareValues } from './plan.js';
export type { Plan, PlanValue, PlannedLine, UnplacedLine, UnplacedReason, ValueOrder } from './plan.js';
export { planner, usualDisturbance } from './planner.js';
export type { Before, PlanBound, PlanProgress, Planner, PlannerOptions } from './planner.js';
export type { PriorityRule } from './priority-rules.js';
export { adviseMovingOut, worthOfEarlier } from './advice.js';
export type { EarlierWorth, Effort, MoveOutAdvice } from './advice.js';
export { difference, readyTimes } from './difference.js';
export type { JobChange, LineChange, LinePlace, PlanDifference } from './difference.js';
export { blockers, explain } from './explain.js';
export type { Blocker, Explanation, OtherSpot, WhyHere, WhyThen } from './explain.js';
export type { SpotUnsuited } from './suitability.js';
export { suppose, whatIf } from './what-if.js';
export type { Supposed, SupposedChange } from './what-if.js';
