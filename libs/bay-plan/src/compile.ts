/** The model as the solver reads it: numbers by index, times in milliseconds after `now`. */
import { type Interval, clip, subtract, tidy } from '@holdfast/shop-calendar';
import { type LineOptions, lineOptions } from './line-options.js';
import type { PlanJob, PlanModel, PlanSpot } from './model.js';
import type { UnplacedLine } from './plan.js';
import { minutesOn, peopleNeeded } from './suitability.js';
import { WorkCalendars } from './work-calendars.js';

export const minuteMs = 60_000;
export const none = -1;

/** One line to be placed. */
export interface Operation {
  readonly jobId: string;
  readonly lineId: string;
  readonly job: number;
  /** spots that suit; none: the vehicle is away */
  readonly spots: readonly number[];
  readonly people: readonly number[];
  readonly needs: number;
  readonly tools: readonly number[];
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** slots of another firm, or null */
  readonly slots: readonly Interval[] | null;
  readonly release: number;
  /** least milliseconds of work that follow on the job after it */
  readonly tail: number;
  readonly leastMs: number;
  /** the operation at whose end the vehicle may leave the spot in which this one starts, or `none` */
  readonly keepsUntil: number;
  readonly fixedStart: number | null;
}

export interface CompiledJob {
  readonly arrives: number;
  readonly due: number;
  readonly weight: number;
  readonly operations: readonly number[];
  readonly stands: number;
  /** cannot leave `stands` before */
  readonly staysUntil: number;
  /** owns `stands` until this operation is done, `allDone` for all, or `none` */
  readonly ownsUntil: number;
}

export const allDone = -2;

export interface Compiled {
  readonly model: PlanModel;
  readonly operations: readonly Operation[];
  readonly jobs: readonly CompiledJob[];
  readonly spotCount: number;
  readonly personCount: number;
  readonly toolCount: number;
  /** milliseconds by operation × spot; 0: does not suit */
  readonly workMs: Float64Array;
  readonly calendars: WorkCalendars;
  /** less the share left free */
  readonly spotCalendar: Int32Array;
  /** for lines whose start is fixed */
  readonly wholeSpotCalendar: Int32Array;
  readonly personCalendar: Int32Array;
  readonly spotBay: Int32Array;
  readonly personHome: Int32Array;
  readonly moveMs: number;
  readonly horizonMs: number;
  readonly promised: boolean;
  readonly unplaced: readonly UnplacedLine[];
}

/** The last `share` of each day's open time taken off, to the whole minute. */
export function lessFreeShare(
  open: readonly Interval[],
  days: readonly Interval[],
  share: number,
): readonly Interval[] {
  if (share <= 0) return tidy(open);
  const cut: Interval[] = [];
  for (const day of days) {
    const parts = clip(tidy(open), day.from, day.to);
    let left = parts.reduce((sum, one) => sum + one.to - one.from, 0);
    left = Math.floor((left * share) / minuteMs) * minuteMs;
    for (let i = parts.length - 1; i >= 0 && left > 0; i -= 1) {
      const part = parts[i] as Interval;
      const from = Math.max(part.from, part.to - left);
      left -= part.to - from;
      cut.push({ from, to: part.to });
    }
  }
  return subtract(open, cut);
}

const shifted = (list: readonly Interval[], now: number) =>
  list.map(({ from, to }) => ({ from: from - now, to: to - now }));

function indexOf(ids: readonly string[]): Map<string, number> {
  return new Map(ids.map((id, i) => [id, i]));
}

/** Least work that follows each operation along the links of its job. */
function tails(
  options: readonly LineOptions[],
  after: readonly (readonly number[])[],
  least: readonly number[],
): number[] {
  const tail = new Array<number>(options.length).fill(Number.NaN);
  const of = (op: number): number => {
    const known = tail[op] as number;
    if (!Number.isNaN(known)) return known;
    let most = 0;
    for (const next of after[op] ?? []) most = Math.max(most, (least[next] ?? 0) + of(next));
    tail[op] = most;
    return most;
  };
  options.forEach((_, op) => of(op));
  return tail;
}

function leastMsOf(model: PlanModel, { line, spots }: LineOptions): number {
  if (line.sublet !== null) return Math.min(...line.sublet.slots.map((slot) => slot.to - slot.from), model.horizon);
  return Math.min(...spots.map((s) => minutesOn(line, model.spots[s]?.spotId ?? ''))) * minuteMs;
}

function compileOperations(model: PlanModel, options: readonly LineOptions[], tools: ReadonlyMap<string, number>) {
  const jobIndex = indexOf(model.jobs.map((job) => job.jobId));
  const key = (jobId: string, lineId: string) => `${jobId}\n${lineId}`;
  const opIndex = indexOf(options.map(({ job, line }) => key(job.jobId, line.lineId)));
  const before = options.map(({ job, line }) =>
    line.after.map((id) => opIndex.get(key(job.jobId, id))).filter((op) => op !== undefined),
  );
  const after: number[][] = options.map(() => []);
  before.forEach((list, op) => {
    for (const first of list) after[first]?.push(op);
  });
  const least = options.map((one) => leastMsOf(model, one));
  const tail = tails(options, after, least);
  return options.map(({ job, line, spots, people }, op): Operation => {
    const releases = line.notBefore.map((one) => one.at - model.now);
    const keeps = line.keepsBayUntil === null ? undefined : opIndex.get(key(job.jobId, line.keepsBayUntil));
    return {
      jobId: job.jobId,
      lineId: line.lineId,
      job: jobIndex.get(job.jobId) ?? none,
      spots,
      people,
      needs: peopleNeeded(line),
      tools: line.toolIds.map((id) => tools.get(id) ?? none),
      before: before[op] ?? [],
      after: after[op] ?? [],
      slots: line.sublet === null ? null : shifted(tidy(line.sublet.slots), model.now),
      release: line.fixed?.startsAt === undefined ? Math.max(0, job.arrivesAt - model.now, ...releases) : 0,
      tail: tail[op] ?? 0,
      leastMs: least[op] ?? 0,
      keepsUntil: keeps ?? none,
      fixedStart: line.fixed?.startsAt === undefined ? null : line.fixed.startsAt - model.now,
    };
  });
}

function compileJob(
  model: PlanModel,
  job: PlanJob,
  operations: readonly Operation[],
  of: readonly number[],
): CompiledJob {
  const until = job.stands?.staysUntil ?? null;
  const owner = until === 'done' ? allDone : none;
  const line = until !== null && until !== 'done' && 'lineId' in until ? until.lineId : null;
  return {
    arrives: Math.max(0, job.arrivesAt - model.now),
    due: job.promisedAt === null ? Infinity : job.promisedAt - model.now,
    weight: job.promisedAt === null ? 0 : job.weight,
    operations: of,
    stands: model.spots.findIndex((spot) => spot.spotId === job.stands?.spotId),
    staysUntil: until !== null && until !== 'done' && 'at' in until ? until.at - model.now : 0,
    ownsUntil: line === null ? owner : (of.find((op) => operations[op]?.lineId === line) ?? none),
  };
}

export function compile(model: PlanModel): Compiled {
  const { placeable, unplaced } = lineOptions(model);
  const toolIds = [...new Set(placeable.flatMap(({ line }) => line.toolIds))];
  const operations = compileOperations(model, placeable, indexOf(toolIds));
  const byJob = model.jobs.map((): number[] => []);
  operations.forEach((operation, op) => byJob[operation.job]?.push(op));
  const spotCount = model.spots.length;
  const workMs = new Float64Array(operations.length * spotCount);
  placeable.forEach(({ line, spots }, op) => {
    for (const s of spots) workMs[op * spotCount + s] = minutesOn(line, model.spots[s]?.spotId ?? '') * minuteMs;
  });
  const calendars = new WorkCalendars(model.horizon - model.now);
  const now = (open: readonly Interval[] | null) => calendars.add(open === null ? null : shifted(open, model.now));
  const cut = ({ open }: PlanSpot) => now(open === null ? null : lessFreeShare(open, model.days, model.freeShare));
  const bays = indexOf([...new Set(model.spots.map((spot) => spot.bayId))]);
  const home = (bayId: string | null) => (bayId === null ? none : (bays.get(bayId) ?? none));
  const jobs = model.jobs.map((job, j) => compileJob(model, job, operations, byJob[j] ?? []));
  return {
    model,
    operations,
    jobs,
    spotCount,
    personCount: model.people.length,
    toolCount: toolIds.length,
    workMs,
    calendars,
    spotCalendar: Int32Array.from(model.spots, cut),
    wholeSpotCalendar: Int32Array.from(model.spots, (spot) => now(spot.open)),
    personCalendar: Int32Array.from(model.people, (person) => now(person.open)),
    spotBay: Int32Array.from(model.spots, (spot) => bays.get(spot.bayId) ?? none),
    personHome: Int32Array.from(model.people, (person) => home(person.homeBayId)),
    moveMs: model.moveMinutes * minuteMs,
    horizonMs: model.horizon - model.now,
    promised: model.jobs.some((job) => job.promisedAt !== null),
    unplaced,
  };
}
