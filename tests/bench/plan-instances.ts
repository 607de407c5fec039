/** Published instances as shops: flexible job shops (`*.fjs`) and OR-Library's weighted tardiness (`wt[0-9]*.txt`). */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { PlanJob, PlanLine, PlanModel, PlanSpot } from '@holdfast/bay-plan';

export interface Instance {
  readonly name: string;
  readonly measure: 'finish' | 'weightedTardiness';
  readonly machines: number;
  readonly model: PlanModel;
  /** best known value where a list lies beside the file */
  readonly knownBest: number | null;
}

const minuteMs = 60_000;
const numbersIn = (text: string) =>
  text
    .split(/\s+/)
    .filter((word) => word !== '')
    .map(Number);

function spotsOf(machines: number): PlanSpot[] {
  return Array.from({ length: machines }, (_, i) => ({
    spotId: `${i + 1}`,
    bayId: `${i + 1}`,
    equipment: [],
    ratedKg: null,
    longestMm: null,
    highestMm: null,
    open: null,
  }));
}

function lineOf(lineId: string, rest: Partial<PlanLine> & { readonly workMinutes: number }): PlanLine {
  return {
    lineId,
    equipment: [],
    skills: [],
    people: 0,
    toolIds: [],
    after: [],
    notBefore: [],
    sublet: null,
    keepsBayUntil: null,
    fixed: null,
    ...rest,
  };
}

function jobOf(jobId: string, lines: readonly PlanLine[], promisedAt: number | null, weight: number): PlanJob {
  const vehicle = { massKg: null, lengthMm: null, heightMm: null, stands: null };
  return { jobId, arrivesAt: 0, promisedAt, weight, ...vehicle, lines };
}

function modelOf(machines: number, jobs: readonly PlanJob[]): PlanModel {
  return { now: 0, horizon: 1e13, days: [], freeShare: 0, moveMinutes: 0, spots: spotsOf(machines), people: [], jobs };
}

/** `jobs machines [average]`, then by job the number of operations, by operation the number of pairs machine, time. */
export function flexibleJobShop(text: string): PlanModel {
  const [head = '', ...rest] = text.trim().split('\n');
  const [jobCount = 0, machines = 0] = numbersIn(head);
  const numbers = numbersIn(rest.join('\n'));
  let at = 0;
  const next = () => {
    const value = numbers[at];
    if (value === undefined) throw new RangeError('The file ends before its last operation.');
    at += 1;
    return value;
  };
  const jobs = Array.from({ length: jobCount }, (_, j) => {
    const lines = Array.from({ length: next() }, (__, i) => {
      const minutesBySpot: Record<string, number> = {};
      for (let left = next(); left > 0; left -= 1) minutesBySpot[String(next())] = next();
      return lineOf(`${j + 1}-${i + 1}`, { workMinutes: 1, minutesBySpot, after: i === 0 ? [] : [`${j + 1}-${i}`] });
    });
    return jobOf(`${j + 1}`, lines, null, 1);
  });
  return modelOf(machines, jobs);
}

/** All instances of a file: n times, n weights, n due dates each; with several machines the due dates are floor(d/m). */
export function weightedTardiness(text: string, n: number, machines: number): PlanModel[] {
  const numbers = numbersIn(text);
  return Array.from({ length: Math.floor(numbers.length / (3 * n)) }, (_, k) => {
    const of = (part: number, j: number) => numbers[(3 * k + part) * n + j] ?? 0;
    const jobs = Array.from({ length: n }, (__, j) => {
      const due = Math.floor(of(2, j) / machines) * minuteMs;
      return jobOf(`${j + 1}`, [lineOf(`${j + 1}`, { workMinutes: of(0, j) })], due, of(1, j));
    });
    return modelOf(machines, jobs);
  });
}

/** Upper bounds by instance name from any `.csv` with the columns `instance` and `upper_bound` in the folder. */
export function knownMakespans(dir: string): ReadonlyMap<string, number> {
  const known = new Map<string, number>();
  for (const file of readdirSync(dir).filter((name) => name.endsWith('.csv'))) {
    const [head = '', ...rows] = readFileSync(join(dir, file), 'utf8').trim().split(/\r?\n/);
    const columns = head.split(',');
    const name = columns.indexOf('instance');
    const value = columns.indexOf('upper_bound');
    if (name < 0 || value < 0) continue;
    for (const row of rows.map((one) => one.split(','))) known.set(row[name] ?? '', Number(row[value]));
  }
  return known;
}

export function* instancesIn(dir: string, machines: number): Generator<Instance> {
  const files = readdirSync(dir).sort();
  const known = knownMakespans(dir);
  for (const file of files.filter((name) => name.endsWith('.fjs'))) {
    const name = file.slice(0, -'.fjs'.length);
    const model = flexibleJobShop(readFileSync(join(dir, file), 'utf8'));
    yield { name, measure: 'finish', machines: model.spots.length, model, knownBest: known.get(name) ?? null };
  }
  for (const file of files.filter((name) => /^wt[0-9]+\.txt$/.test(name))) {
    const n = Number(/[0-9]+/.exec(file)?.[0]);
    const list = join(dir, `wtopt${n}.txt`);
    const best = machines === 1 && existsSync(list) ? numbersIn(readFileSync(list, 'utf8')) : [];
    for (const [k, model] of weightedTardiness(readFileSync(join(dir, file), 'utf8'), n, machines).entries()) {
      const knownBest = best[k] ?? null;
      yield { name: `wt${n}-${k + 1}`, measure: 'weightedTardiness', machines, model, knownBest };
    }
  }
}
