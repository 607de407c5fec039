/** Why here and why then, for each line of a plan; and what keeps vehicles waiting most. Codes and facts, no words. */
import { minuteMs } from './compile.js';
import type { PlanJob, PlanLine, PlanModel } from './model.js';
import type { Plan, PlannedLine } from './plan.js';
import { type SpotUnsuited, needsSpot, spotUnsuited } from './suitability.js';

export type WhyHere =
  | { readonly code: 'fixed' }
  | { readonly code: 'away' }
  | { readonly code: 'standsThere' }
  /** no other spot suits */
  | { readonly code: 'onlySpot' }
  /** others suit; it could start there no sooner because of what is planned there */
  | { readonly code: 'chosen' };

/** What decided when a line starts. */
export type WhyThen =
  | { readonly code: 'fixed' }
  | { readonly code: 'atOnce' }
  | { readonly code: 'arrival'; readonly at: number }
  | { readonly code: 'notBefore'; readonly reason: string; readonly at: number }
  | { readonly code: 'afterLine'; readonly lineId: string; readonly at: number }
  | { readonly code: 'spotBusy'; readonly spotId: string; readonly jobId: string; readonly at: number }
  | { readonly code: 'personBusy'; readonly personId: string; readonly jobId: string; readonly at: number }
  | { readonly code: 'toolBusy'; readonly toolId: string; readonly jobId: string; readonly at: number }
  | { readonly code: 'vehicleStays'; readonly spotId: string; readonly at: number }
  | { readonly code: 'slot'; readonly at: number };

export interface OtherSpot {
  readonly spotId: string;
  /** null: it suits */
  readonly unsuited: SpotUnsuited | null;
}

export interface Explanation {
  readonly jobId: string;
  readonly lineId: string;
  readonly here: WhyHere;
  readonly then: WhyThen;
  /** minutes from that instant to the start: closing time, breaks, people not there, the move */
  readonly thenMinutes: number;
  readonly others: readonly OtherSpot[];
  /** true: whether the bay bears the vehicle was passed because its mass is not known */
  readonly massUnknown: boolean;
}

interface Around {
  readonly planned: PlannedLine;
  readonly job: PlanJob;
  readonly line: PlanLine;
}

function around(model: PlanModel, plan: Plan): Around[] {
  const jobs = new Map(model.jobs.map((job) => [job.jobId, job]));
  return plan.lines.flatMap((planned) => {
    const job = jobs.get(planned.jobId);
    const line = job?.lines.find((one) => one.lineId === planned.lineId);
    return job === undefined || line === undefined ? [] : [{ planned, job, line }];
  });
}

function whyHere(model: PlanModel, { planned, job, line }: Around, others: readonly OtherSpot[]): WhyHere {
  if (!needsSpot(line)) return { code: 'away' };
  if (line.fixed?.spotId !== undefined) return { code: 'fixed' };
  if (job.stands?.spotId === planned.spotId) return { code: 'standsThere' };
  const only = model.spots.length === others.length + 1 && others.every((one) => one.unsuited !== null);
  return { code: only ? 'onlySpot' : 'chosen' };
}

type Dated = Exclude<WhyThen, { code: 'fixed' } | { code: 'atOnce' }>;

/** What is taken by others before the line, with the instant at which it becomes free. */
function busy(all: readonly Around[], { planned, job, line }: Around): Dated[] {
  const out: Dated[] = [];
  for (const other of all) {
    const at = other.planned.to;
    if (at > planned.from || other.line === line) continue;
    const { jobId } = other.job;
    if (other.job === job) out.push({ code: 'afterLine', lineId: other.line.lineId, at });
    else if (planned.spotId !== null && other.planned.spotId === planned.spotId) {
      out.push({ code: 'spotBusy', spotId: planned.spotId, jobId, at });
    }
    const person = planned.personIds.find((id) => other.planned.personIds.includes(id));
    if (person !== undefined) out.push({ code: 'personBusy', personId: person, jobId, at });
    const tool = line.toolIds.find((id) => other.line.toolIds.includes(id));
    if (tool !== undefined) out.push({ code: 'toolBusy', toolId: tool, jobId, at });
  }
  return out;
}

/** Until when other vehicles stay in the line's spot, where an instant is known. */
function stays(model: PlanModel, { planned, job }: Around): Dated[] {
  const out: Dated[] = [];
  for (const other of model.jobs) {
    if (other === job || other.stands === null || other.stands.spotId !== planned.spotId) continue;
    const until = other.stands.staysUntil;
    if (until === null || until === 'done' || !('at' in until)) continue;
    out.push({ code: 'vehicleStays', spotId: planned.spotId, at: until.at });
  }
  return out;
}

function whyThen(model: PlanModel, all: readonly Around[], one: Around): WhyThen {
  const { planned, job, line } = one;
  if (line.fixed?.startsAt !== undefined) return { code: 'fixed' };
  const causes: Dated[] = [
    { code: 'arrival', at: job.arrivesAt },
    ...line.notBefore.map(({ reason, at }) => ({ code: 'notBefore' as const, reason, at })),
    ...busy(all, one),
    ...stays(model, one),
  ];
  if (line.sublet !== null) causes.push({ code: 'slot', at: planned.from });
  let latest: Dated | null = null;
  for (const cause of causes) {
    if (cause.at > model.now && cause.at <= planned.from && (latest === null || cause.at > latest.at)) latest = cause;
  }
  return latest ?? { code: 'atOnce' };
}

/** One for each planned line, in the plan's order. Costs lines × lines. */
export function explain(model: PlanModel, plan: Plan): readonly Explanation[] {
  const all = around(model, plan);
  return all.map((one) => {
    const { planned, job, line } = one;
    const others = model.spots
      .filter((spot) => spot.spotId !== planned.spotId)
      .map((spot) => ({ spotId: spot.spotId, unsuited: spotUnsuited(job, line, spot) }));
    const then = whyThen(model, all, one);
    const since = 'at' in then ? then.at : model.now;
    const spot = model.spots.find((other) => other.spotId === planned.spotId);
    return {
      jobId: job.jobId,
      lineId: line.lineId,
      here: whyHere(model, one, others),
      then,
      thenMinutes: then.code === 'fixed' ? 0 : (planned.from - since) / minuteMs,
      others,
      massUnknown: job.massKg === null && spot?.ratedKg != null,
    };
  });
}

export interface Blocker {
  readonly kind: 'spot' | 'person' | 'tool' | 'notBefore' | 'arrival' | 'vehicleStays';
  /** id of the spot, person or tool; the reason; '' for arrivals */
  readonly id: string;
  /** Σ weight × minutes of waiting for it, over the lines of jobs that will be late */
  readonly weightedMinutes: number;
}

function blockerOf(then: WhyThen): Pick<Blocker, 'kind' | 'id'> | null {
  switch (then.code) {
    case 'spotBusy':
      return { kind: 'spot', id: then.spotId };
    case 'personBusy':
      return { kind: 'person', id: then.personId };
    case 'toolBusy':
      return { kind: 'tool', id: then.toolId };
    case 'notBefore':
      return { kind: 'notBefore', id: then.reason };
    case 'arrival':
      return { kind: 'arrival', id: '' };
    case 'vehicleStays':
      return { kind: 'vehicleStays', id: then.spotId };
    default:
      return null;
  }
}

/** What late vehicles wait for, most first: from when a line's turn had come to when what decided its start was there. */
export function blockers(model: PlanModel, plan: Plan): readonly Blocker[] {
  const sums = new Map<string, Blocker>();
  const ends = new Map<string, number>();
  for (const { jobId, to } of plan.lines) ends.set(jobId, Math.max(to, ends.get(jobId) ?? 0));
  const lines = new Map(plan.lines.map((line) => [JSON.stringify([line.jobId, line.lineId]), line]));
  for (const { jobId, lineId, then } of explain(model, plan)) {
    const job = model.jobs.find((one) => one.jobId === jobId);
    const who = blockerOf(then);
    const line = lines.get(JSON.stringify([jobId, lineId]));
    if (job?.promisedAt == null || who === null || line === undefined || !('at' in then)) continue;
    if ((ends.get(jobId) ?? 0) <= job.promisedAt) continue;
    const before = plan.lines.filter((one) => one.jobId === jobId && one.to <= line.from).map((one) => one.to);
    const turn = Math.max(model.now, who.kind === 'arrival' ? 0 : job.arrivesAt, ...before);
    const minutes = (job.weight * Math.max(0, then.at - turn)) / minuteMs;
    const key = `${who.kind} ${who.id}`;
    sums.set(key, { ...who, weightedMinutes: minutes + (sums.get(key)?.weightedMinutes ?? 0) });
  }
  return [...sums.values()]
    .filter((one) => one.weightedMinutes > 0)
    .sort((a, b) => b.weightedMinutes - a.weightedMinutes || (a.id < b.id ? -1 : 1));
}
