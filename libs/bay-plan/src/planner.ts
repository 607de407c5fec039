/** The planner as its users hold it: something that has a plan at once and a better one the longer it is let run. */
import { type Compiled, compile, none } from './compile.js';
import { lowerBound } from './lower-bound.js';
import { faultsInModel } from './model-faults.js';
import type { PlanModel } from './model.js';
import { type Plan, type PlanValue, type PlannedLine, type UnplacedLine, compareValues } from './plan.js';
import { valueOfLines } from './plan-value.js';
import { placesBefore } from './previous.js';
import { type PriorityRule, allRules } from './priority-rules.js';
import type { Schedule } from './schedule.js';
import { Search } from './search.js';

/** What is made again with the least disturbance. */
export interface Before {
  readonly plan: Plan;
  /** weighted minutes late that changing one line has to save; 0: change whatever helps */
  readonly disturbanceMinutes: number;
  /** a line that starts at most so many minutes earlier or later in the same bay with the same people is not disturbed */
  readonly toleranceMinutes: number;
}

export const usualDisturbance = { disturbanceMinutes: 15, toleranceMinutes: 60 } as const;

export interface PlannerOptions {
  readonly before?: Before;
  /** only this rule for the first plan, for comparing; usually all of them */
  readonly onlyRule?: PriorityRule;
}

export interface PlanProgress {
  /** candidates tried since the beginning */
  readonly steps: number;
  readonly value: PlanValue;
  readonly plan: Plan;
  /** true: nothing better is possible, the value is at its lower bound */
  readonly proven: boolean;
}

export interface Planner {
  /**
   * Tries so many more candidates (0: none) and gives the best plan so far. The same model, options, seed and total of
   * steps give the same plan, in however many calls; the value never rises. A caller with a time budget asks for small
   * portions and stops when it likes.
   */
  step(steps: number): PlanProgress;
  /** What no plan of this model can fall below; computed when first asked for. */
  bound(): PlanBound;
}

export interface PlanBound {
  readonly weightedTardinessMinutes: number;
  readonly finishMinutes: number;
}

function planOf(compiled: Compiled, schedule: Schedule): Plan {
  const { model, operations, horizonMs } = compiled;
  const lines: PlannedLine[] = [];
  const unplaced: UnplacedLine[] = [...compiled.unplaced];
  operations.forEach(({ jobId, lineId }, op) => {
    if ((schedule.end[op] as number) > horizonMs) {
      unplaced.push({ jobId, lineId, reason: 'beyondHorizon' });
      return;
    }
    const who = [schedule.first[op] as number, schedule.second[op] as number].filter((person) => person !== none);
    const spot = schedule.spot[op] as number;
    lines.push({
      jobId,
      lineId,
      spotId: spot === none ? null : (model.spots[spot]?.spotId ?? null),
      personIds: who.map((person) => model.people[person]?.personId ?? ''),
      from: model.now + (schedule.start[op] as number),
      to: model.now + (schedule.end[op] as number),
    });
  });
  lines.sort((a, b) => a.from - b.from || (a.lineId < b.lineId ? -1 : 1));
  return { lines, unplaced, value: valueOfLines(model, lines, unplaced.length, schedule.disturbed) };
}

/**
 * A planner for the model. Throws a RangeError where `faultsInModel` finds anything: ask that first.
 *
 * Costs: the first plan is made here, in about lines × (lines that are ready + spots × people) steps; each further step
 * lays out at most all lines once.
 */
export function planner(model: PlanModel, seed: number, options: PlannerOptions = {}): Planner {
  const [fault] = faultsInModel(model);
  if (fault !== undefined) throw new RangeError(`The model cannot be planned: ${JSON.stringify(fault)}`);
  const compiled = compile(model);
  const { before } = options;
  const places = before === undefined ? [] : placesBefore(compiled, before.plan, before.toleranceMinutes);
  const disturbance = before?.disturbanceMinutes ?? 0;
  const rules = options.onlyRule === undefined ? allRules : [options.onlyRule];
  const search = new Search(compiled, seed, places, disturbance, rules);
  let bound: PlanBound | null = null;
  const boundOf = () => (bound ??= lowerBound(compiled, search.best.tardiness));
  const order = { promised: compiled.promised, disturbanceMinutes: disturbance };
  let plan = planOf(compiled, search.best);
  let seen = search.version;
  search.onOverflowing = () => {
    const next = planOf(compiled, search.best);
    if (compareValues(next.value, plan.value, order) <= 0) plan = next;
  };
  return {
    bound: boundOf,
    step(steps) {
      search.run(steps);
      if (search.version !== seen && search.best.overflow === 0) plan = planOf(compiled, search.best);
      seen = search.version;
      const { value } = plan;
      const proven =
        !compiled.promised &&
        disturbance === 0 &&
        value.unplaced === 0 &&
        value.finishMinutes <= boundOf().finishMinutes;
      return { steps: search.tried, value, plan, proven };
    },
  };
}
