/** Shop weeks against first come, first served (what a whiteboard does) and earliest promised time. */
import { checkPlan, planner } from '@holdfast/bay-plan';
import { type BenchLine, round } from './measure.js';
import { inventedShop } from './shop-weeks.js';

export const loads = [0.7, 0.85, 1] as const;

export interface ComparedWeek {
  readonly firstCome: number;
  readonly earliestPromised: number;
  readonly planned: number;
  readonly bound: number;
  readonly feasible: boolean;
}

export function comparedWeek(seed: number, load: number, steps: number): ComparedWeek {
  const model = inventedShop({ seed, bays: 4, people: 4, workdays: 5, load });
  const byRule = (name: 'firstCome' | 'earliestPromised') =>
    planner(model, seed, { onlyRule: { name } }).step(0).value.weightedTardinessMinutes;
  const run = planner(model, seed);
  const { plan, value } = run.step(steps);
  return {
    firstCome: byRule('firstCome'),
    earliestPromised: byRule('earliestPromised'),
    planned: value.weightedTardinessMinutes,
    bound: run.bound().weightedTardinessMinutes,
    feasible: checkPlan(model, plan).length === 0,
  };
}

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / Math.max(1, list.length);

export function comparedLoad(load: number, weeks: number, steps: number) {
  const all = Array.from({ length: weeks }, (_, k) => comparedWeek(1_000 + k, load, steps));
  const better = (week: ComparedWeek) => Math.min(week.firstCome, week.earliestPromised);
  const late = all.filter((week) => better(week) > 0);
  return {
    load,
    weeks,
    firstCome: round(mean(all.map((week) => week.firstCome))),
    earliestPromised: round(mean(all.map((week) => week.earliestPromised))),
    planned: round(mean(all.map((week) => week.planned))),
    bound: round(mean(all.map((week) => week.bound))),
    lowerInTheMean: round(1 - mean(all.map((week) => week.planned)) / mean(all.map(better)), 4),
    lowerByWeek: round(mean(late.map((week) => 1 - week.planned / better(week))), 4),
    gapToBound: round(mean(all.map((w) => w.planned)) / mean(all.map((w) => w.bound)) - 1, 4),
    worse: all.filter((week) => week.planned > better(week) + 1e-6).length,
    infeasible: all.filter((week) => !week.feasible).length,
  };
}

export function comparedWeeks(weeks: number, steps: number, print: (line: object) => void): BenchLine {
  let holds = true;
  for (const load of loads) {
    const line = comparedLoad(load, weeks, steps);
    print({ name: 'plan', ...line });
    holds &&= line.lowerInTheMean >= 0.4 && line.worse === 0 && line.infeasible === 0;
  }
  return {
    name: 'plan',
    weeks,
    steps,
    ratio: null,
    target: 'weighted minutes late at least 40 % lower in the mean than the better of both rules, never more',
    holds,
  };
}
