/**
 * `plan`: the planner of the bays. By itself: a shop of 60 vehicles, 8 bays, 10 people and two weeks, and how the time
 * grows. With `--instances DIR --seconds S [--machines M]`: published instances, one JSON line each. With
 * `--weeks N [--steps N]`: shop weeks against what a shop without a planner does.
 */
import { performance } from 'node:perf_hooks';
import { parseArgs } from 'node:util';
import { type PlanModel, type PlanValue, checkPlan, planner } from '@holdfast/bay-plan';
import { type BenchLine, round } from './measure.js';
import { type Instance, instancesIn } from './plan-instances.js';
import { comparedWeeks } from './plan-weeks.js';
import { inventedShop } from './shop-weeks.js';

const portion = 200;
const print = (line: object) => process.stdout.write(`${JSON.stringify(line)}\n`);

function worked(instance: Instance, seconds: number): boolean {
  const began = performance.now();
  const run = planner(instance.model, 1);
  const of = (value: PlanValue) =>
    instance.measure === 'finish' ? value.finishMinutes : value.weightedTardinessMinutes;
  let progress = run.step(0);
  const done = () => progress.proven || of(progress.value) === 0;
  while (!done() && performance.now() - began < seconds * 1000) progress = run.step(portion);
  const bounds = run.bound();
  const bound = instance.measure === 'finish' ? bounds.finishMinutes : bounds.weightedTardinessMinutes;
  const objective = of(progress.value);
  const { knownBest } = instance;
  const faults = checkPlan(instance.model, progress.plan);
  print({
    name: 'plan',
    instance: instance.name,
    machines: instance.machines,
    measure: instance.measure,
    objective,
    bound: round(bound),
    knownBest,
    gap:
      knownBest === null ? null : knownBest === 0 ? (objective === 0 ? 0 : null) : round(objective / knownBest - 1, 5),
    gapToBound: bound > 0 ? round(objective / bound - 1, 5) : objective === 0 ? 0 : null,
    checker: faults.length === 0 ? 'feasible' : faults,
    steps: progress.steps,
    seconds: round((performance.now() - began) / 1000),
  });
  return faults.length === 0;
}

function benchInstances(dir: string, seconds: number, machines: number): BenchLine {
  let instances = 0;
  let holds = true;
  for (const instance of instancesIn(dir, machines)) {
    instances += 1;
    holds = worked(instance, seconds) && holds;
  }
  return {
    name: 'plan',
    instances,
    ratio: null,
    target: 'every plan passes the checker',
    holds: holds && instances > 0,
  };
}

function firstPlanMs(model: PlanModel): number {
  const began = performance.now();
  planner(model, 1).step(0);
  return performance.now() - began;
}

/** The best of the values at each full second, and whether one ever rose. */
function valuesBySecond(model: PlanModel, seconds: number) {
  const run = planner(model, 1);
  const began = performance.now();
  const values: PlanValue[] = [run.step(0).value];
  let progress = run.step(0);
  for (let second = 1; second <= seconds; second += 1) {
    while (performance.now() - began < second * 1000) progress = run.step(portion);
    values.push(progress.value);
  }
  const late = values.map((value) => value.weightedTardinessMinutes);
  const rises = late.some((value, i) => i > 0 && value > (late[i - 1] ?? value));
  return { late, rises, last: progress, bound: run.bound() };
}

function growth() {
  const sizes = [30, 60, 120, 240, 500];
  return sizes.map((vehicles) => {
    const bays = Math.max(4, Math.round(vehicles / 12.5));
    const model = inventedShop({ seed: 7, bays, people: Math.round(bays * 1.25), workdays: 10, vehicles });
    const began = performance.now();
    const run = planner(model, 1);
    run.step(0);
    const first = performance.now() - began;
    const steps = 100;
    run.step(steps);
    const each = (performance.now() - began - first) / steps;
    return { vehicles, bays, firstPlanMs: round(first), msByStep: round(each, 3) };
  });
}

function benchShop(seconds: number): BenchLine {
  const model = inventedShop({ seed: 1, bays: 8, people: 10, workdays: 10, vehicles: 60 });
  const cold = firstPlanMs(model);
  const warm = Math.min(...Array.from({ length: 5 }, () => firstPlanMs(model)));
  const { late, rises, last, bound } = valuesBySecond(model, seconds);
  const twice = [0, 1].map(() => JSON.stringify(planner(model, 5).step(500)));
  const same = twice[0] === twice[1];
  const feasible = checkPlan(model, last.plan).length === 0;
  const grows = growth();
  const largest = grows.at(-1);
  const answers = largest !== undefined && largest.firstPlanMs + 10 * largest.msByStep <= 2_000;
  return {
    name: 'plan',
    vehicles: 60,
    firstPlanMs: round(cold),
    firstPlanWarmMs: round(warm),
    weightedMinutesLateBySecond: late.map((value) => round(value)),
    value: last.value,
    bound: round(bound.weightedTardinessMinutes),
    steps: last.steps,
    sameForASeed: same,
    feasible,
    growth: grows,
    ratio: null,
    target: 'first plan ≤ 50 ms; never rises; the same for a seed; 500 vehicles and 40 bays within 2 s',
    holds: warm <= 50 && !rises && same && feasible && answers,
  };
}

export function benchPlan(options: readonly string[]): Promise<BenchLine> {
  const { values } = parseArgs({
    args: [...options],
    options: {
      instances: { type: 'string' },
      seconds: { type: 'string', default: '10' },
      machines: { type: 'string', default: '1' },
      weeks: { type: 'string' },
      steps: { type: 'string', default: '2000' },
    },
  });
  const seconds = Number(values.seconds);
  if (values.instances !== undefined) {
    return Promise.resolve(benchInstances(values.instances, seconds, Number(values.machines)));
  }
  if (values.weeks !== undefined)
    return Promise.resolve(comparedWeeks(Number(values.weeks), Number(values.steps), print));
  return Promise.resolve(benchShop(seconds));
}
