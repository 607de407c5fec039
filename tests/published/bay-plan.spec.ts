/**
 * Published optima, reached by the shop's own planner: a machine is a bay, a job a vehicle, without people, calendars or
 * moves. The search is given a number of steps instead of seconds, so that the check is the same on every machine.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import { type PlanModel, type PlanValue, checkPlan, planner } from '@holdfast/bay-plan';
import { flexibleJobShop, knownMakespans, weightedTardiness } from '../bench/plan-instances.js';

const data = fileURLToPath(new URL('../../../shared/reference/data', import.meta.url));
const present = existsSync(data);
if (!present) console.warn(`The published instances are not here (${data}): only the printed ones are checked.`);

const portion = 2_000;

/** The value after at most so many steps, sooner where it is no more than `goal`. Seed 1; the plan passes the checker. */
function reached(model: PlanModel, most: number, goal: number): number {
  const run = planner(model, 1);
  const promised = model.jobs.some((job) => job.promisedAt !== null);
  const of = (value: PlanValue) => (promised ? value.weightedTardinessMinutes : value.finishMinutes);
  let progress = run.step(portion);
  while (progress.steps < most && of(progress.value) > goal) progress = run.step(portion);
  expect(checkPlan(model, progress.plan)).toEqual([]);
  const bound = run.bound();
  expect(promised ? bound.weightedTardinessMinutes : bound.finishMinutes).toBeLessThanOrEqual(of(progress.value));
  return of(progress.value);
}

const file = (folder: string, name: string) => readFileSync(join(data, folder, name), 'utf8');

describe('flexible job shops (Fattahi et al. 2007; Hurink et al. 1994; Brandimarte 1993; optima of ScheduleOpt/benchmarks)', () => {
  const known = present ? knownMakespans(join(data, 'fjsp')) : new Map<string, number>();
  const within = (name: string, share: number, steps: number) => {
    const best = known.get(name);
    if (best === undefined) throw new Error(`No known best for ${name}.`);
    const value = reached(flexibleJobShop(file('fjsp', `${name}.fjs`)), steps, best * (1 + share));
    expect(value).toBeGreaterThanOrEqual(best);
    expect(value).toBeLessThanOrEqual(best * (1 + share));
  };
  const numbered = (word: string, from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, i) => `${word}${String(from + i).padStart(2, '0')}`);

  it('reaches 66 on sfjs01, printed here: two jobs of two operations on two machines', () => {
    const text = '2 2 2\n2 2 1 25 2 37 2 1 32 2 24\n2 2 1 45 2 65 2 1 21 2 65\n';
    expect(reached(flexibleJobShop(text), 2_000, 66)).toBe(66);
  });

  if (!present) return;
  it.each([...numbered('sfjs', 1, 10), 'mfjs01', ...numbered('mfjs', 3, 5)])('reaches the optimum of %s', (name) => {
    within(name, 0, 60_000);
  });
  it.each(['sdata', 'edata', 'rdata', 'vdata'])('reaches the optimum of Hurink mt06, %s', (set) => {
    within(`hurink-${set}-mt06`, 0, 200_000);
  });
  it.each(['mfjs02', ...numbered('mfjs', 6, 8), 'hurink-sdata-la01', 'hurink-edata-la01', 'hurink-rdata-la01'])(
    'comes within 2 %% of the optimum of %s',
    (name) => {
      within(name, 0.02, 60_000);
    },
  );
  it.each(numbered('mfjs', 9, 10))('comes within 6 %% of the optimum of %s', (name) => {
    within(name, 0.06, 60_000);
  });
  it.each(numbered('mk', 1, 4))('comes within 5 %% of the best known of %s', (name) => {
    within(name, 0.05, 60_000);
  });
});

describe('total weighted tardiness', () => {
  if (!present) {
    it('finds the files missing', () => {
      expect(present).toBe(false);
    });
    return;
  }
  it('reaches the optimum of OR-Library wt40 #1, 11, 21 and so on to 121 (wtopt40)', () => {
    const models = weightedTardiness(file('wt', 'wt40.txt'), 40, 1);
    const best = file('wt', 'wtopt40.txt').trim().split(/\s+/).map(Number);
    expect(models).toHaveLength(125);
    for (let k = 0; k < 125; k += 10) {
      const value = reached(models[k] as PlanModel, 60_000, best[k] ?? 0);
      expect({ k, value }).toEqual({ k, value: best[k] });
    }
  });

  it.each([
    [1, 2, 606],
    [71, 2, 47_952],
    [36, 4, 6_420],
  ])('comes within 3 %% of wt40 #%d on %d parallel machines (Pessoa et al. 2010)', (k, machines, best) => {
    const model = weightedTardiness(file('wt', 'wt40.txt'), 40, machines)[k - 1] as PlanModel;
    const value = reached(model, 60_000, best * 1.03);
    expect(value).toBeGreaterThanOrEqual(best);
    expect(value).toBeLessThanOrEqual(best * 1.03);
  });
});
