/** What a plan made again changes against the one before, line by line and vehicle by vehicle. */
import { explain, type WhyHere, type WhyThen } from './explain.js';
import { minuteMs } from './compile.js';
import type { PlanModel } from './model.js';
import type { Plan, PlannedLine, UnplacedReason } from './plan.js';

export interface LinePlace {
  readonly spotId: string | null;
  readonly personIds: readonly string[];
  readonly from: number;
  readonly to: number;
}

export interface LineChange {
  readonly jobId: string;
  readonly lineId: string;
  /** null: it was not in the plan */
  readonly before: LinePlace | null;
  /** null: it has no place now, or is no longer to be done */
  readonly after: LinePlace | null;
  readonly otherSpot: boolean;
  readonly otherPeople: boolean;
  /** minutes later than before; below 0: earlier */
  readonly laterMinutes: number;
  /** why it is there and then in the new plan */
  readonly here: WhyHere | null;
  readonly then: WhyThen | null;
  /** why it has no place now; null also where the line is no longer in the model */
  readonly unplaced: UnplacedReason | null;
}

export interface JobChange {
  readonly jobId: string;
  readonly readyBefore: number | null;
  readonly readyAfter: number | null;
  /** minutes after the promised time, before and after; 0: in time or none promised */
  readonly lateMinutesBefore: number;
  readonly lateMinutesAfter: number;
}

export interface PlanDifference {
  readonly lines: readonly LineChange[];
  readonly jobs: readonly JobChange[];
}

const place = ({ spotId, personIds, from, to }: PlannedLine): LinePlace => ({ spotId, personIds, from, to });
const keyOf = (line: { readonly jobId: string; readonly lineId: string }) => JSON.stringify([line.jobId, line.lineId]);

function samePeople(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((id) => b.includes(id));
}

/** When the last line of each job that is in the plan ends. */
export function readyTimes(plan: Plan): ReadonlyMap<string, number> {
  const ready = new Map<string, number>();
  for (const { jobId, to } of plan.lines) ready.set(jobId, Math.max(to, ready.get(jobId) ?? to));
  return ready;
}

function jobChanges(model: PlanModel, before: Plan, after: Plan): JobChange[] {
  const was = readyTimes(before);
  const is = readyTimes(after);
  return model.jobs.flatMap(({ jobId, promisedAt }) => {
    const readyBefore = was.get(jobId) ?? null;
    const readyAfter = is.get(jobId) ?? null;
    if (readyBefore === readyAfter) return [];
    const late = (at: number | null) =>
      promisedAt === null || at === null ? 0 : Math.max(0, at - promisedAt) / minuteMs;
    return [
      { jobId, readyBefore, readyAfter, lateMinutesBefore: late(readyBefore), lateMinutesAfter: late(readyAfter) },
    ];
  });
}

type Placed = Pick<LineChange, 'jobId' | 'lineId' | 'before' | 'after' | 'otherSpot' | 'otherPeople' | 'laterMinutes'>;

/** null: nothing differs but the time, by less than the tolerance. */
function moved(old: PlannedLine, now: PlannedLine, toleranceMinutes: number): Placed | null {
  const otherSpot = old.spotId !== now.spotId;
  const otherPeople = !samePeople(old.personIds, now.personIds);
  const laterMinutes = (now.from - old.from) / minuteMs;
  if (!otherSpot && !otherPeople && Math.abs(laterMinutes) < Math.max(toleranceMinutes, 1e-9)) return null;
  const { jobId, lineId } = now;
  return { jobId, lineId, before: place(old), after: place(now), otherSpot, otherPeople, laterMinutes };
}

function placedAnew(
  old: PlannedLine | undefined,
  now: PlannedLine | undefined,
  toleranceMinutes: number,
): Placed | null {
  if (old !== undefined && now !== undefined) return moved(old, now, toleranceMinutes);
  const only = now ?? old;
  if (only === undefined) return null;
  const { jobId, lineId } = only;
  const before = old === undefined ? null : place(old);
  const after = now === undefined ? null : place(now);
  return { jobId, lineId, before, after, otherSpot: false, otherPeople: false, laterMinutes: 0 };
}

/** `model` is that of the plan after. A line that only differs by less than `toleranceMinutes` in its time is left out. */
export function difference(model: PlanModel, before: Plan, after: Plan, toleranceMinutes: number): PlanDifference {
  const was = new Map(before.lines.map((line) => [keyOf(line), line]));
  const is = new Map(after.lines.map((line) => [keyOf(line), line]));
  const why = new Map(explain(model, after).map((one) => [keyOf(one), one]));
  const left = new Map(after.unplaced.map((one) => [keyOf(one), one.reason]));
  const lines: LineChange[] = [];
  for (const key of new Set([...is.keys(), ...was.keys()])) {
    const change = placedAnew(was.get(key), is.get(key), toleranceMinutes);
    if (change === null) continue;
    const reasons = why.get(key);
    const here = reasons?.here ?? null;
    const then = reasons?.then ?? null;
    lines.push({ ...change, here, then, unplaced: left.get(key) ?? null });
  }
  return { lines, jobs: jobChanges(model, before, after) };
}
