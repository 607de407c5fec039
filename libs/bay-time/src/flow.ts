/** Vehicles through the shop in a window: how many are here, how many leave, and what their time here is made of. */
import { type Interval, firstEndingAfter, tidy } from '@holdfast/shop-calendar';
import { type JobClock, type JobHold, type JobLine, type Span, type StoredMark, byJob } from './account-input.js';
import { endedBy } from './account-input.js';
import { type CountStretch, countsOf } from './counts.js';
import { type LittleCheck, littleCheck } from './little.js';
import { type TimeHereClass, timeHere, timeHereClasses } from './time-here.js';

/** A job from its arrival to its hand-back or release; at another firm in between, the vehicle is still in our hands. */
export interface Visit extends Span {
  readonly jobId: string;
  readonly vehicleId: string;
  /** the fleet of its customer; null: none */
  readonly fleet: string | null;
  readonly kind: 'normal' | 'comeback' | 'guarantee' | 'internal';
}

export interface FlowInput {
  /** the part after `now` has not happened and is left out */
  readonly window: Interval;
  readonly now: number;
  /** the days of the zone, in order, without gap, at least those of the window; for days off the road */
  readonly days: readonly Interval[];
  /** opening time of the window */
  readonly open: readonly Interval[];
  readonly visits: readonly Visit[];
  readonly clocks: readonly JobClock[];
  readonly holds: readonly JobHold[];
  readonly lines: readonly JobLine[];
  readonly storedJobs: readonly StoredMark[];
}

export interface OffTheRoad {
  readonly ms: number;
  /** days of the zone, a part of a day as the part it is of that day's own length (23, 24 or 25 hours) */
  readonly days: number;
}

export interface Flow {
  /** what is accounted for: the window asked for, cut at `now` */
  readonly window: Interval;
  /** jobs here, over time; none here: no stretch */
  readonly here: readonly CountStretch[];
  /** work in progress: mean of `here` over all of the window, nights included; null for an empty window */
  readonly meanHere: number | null;
  readonly mostHere: number;
  readonly arrived: number;
  /** handed back or released; the instant at which the window ends counts, the one at which it starts does not */
  readonly left: number;
  /** throughput: jobs that left by days of the window (each of its own length); null for an empty window */
  readonly leftPerDay: number | null;
  /** time here inside the window, of all jobs, added up */
  readonly timeMs: Readonly<Record<TimeHereClass, number>>;
  /** the vehicle is here: visits that overlap count once; by vehicle id */
  readonly vehicles: readonly (OffTheRoad & { readonly vehicleId: string })[];
  /** sums of their vehicles' times, by fleet; a vehicle that changed hands counts for the fleet of each visit */
  readonly fleets: readonly (OffTheRoad & { readonly fleet: string; readonly vehicles: number })[];
  readonly comebacks: {
    /** comebacks among the jobs that left */
    readonly comebacks: number;
    /** all jobs that left but internal ones, comebacks among them */
    readonly jobs: number;
    /** null where no such job left */
    readonly perHundred: number | null;
  };
  readonly little: LittleCheck;
}

type Clipped = Visit & Interval;

/** Place of an instant on the row of days: whole days before it and the part of its own that has passed. */
function dayScale(days: readonly Interval[]): (instant: number) => number {
  return (instant) => {
    const at = firstEndingAfter(days, instant);
    const day = days[at];
    return day === undefined ? days.length : at + Math.max(0, instant - day.from) / (day.to - day.from);
  };
}

function refuseFaults({ window, now, days }: FlowInput): void {
  for (const instant of [window.from, window.to, now]) {
    if (!Number.isSafeInteger(instant)) throw new RangeError(`${instant} is not a whole number of milliseconds.`);
  }
  for (let i = 1; i < days.length; i += 1) {
    if (days[i]?.from !== days[i - 1]?.to) throw new RangeError('The days of a flow follow each other without gap.');
  }
  const covered = (days[0]?.from ?? Infinity) <= window.from && (days.at(-1)?.to ?? -Infinity) >= window.to;
  if (window.from < window.to && !covered) throw new RangeError('The days of a flow hold its whole window.');
}

function offTheRoad<K extends string>(
  visits: readonly Clipped[],
  keyOf: (visit: Clipped) => K | null,
  scale: (instant: number) => number,
) {
  const groups = new Map<K, Clipped[]>();
  for (const visit of visits) {
    const key = keyOf(visit);
    if (key === null) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [visit]);
    else group.push(visit);
  }
  const out = [...groups].map(([key, list]) => {
    let [ms, days] = [0, 0];
    for (const { from, to } of tidy(list)) {
      ms += to - from;
      days += scale(to) - scale(from);
    }
    return { key, ms, days };
  });
  return out.sort((a, b) => (a.key < b.key ? -1 : 1));
}

function offTheRoadOf(visits: readonly Clipped[], days: readonly Interval[]): Pick<Flow, 'vehicles' | 'fleets'> {
  const scale = dayScale(days);
  const byFleet = new Map<string, Clipped[]>();
  for (const visit of visits) {
    if (visit.fleet === null) continue;
    const list = byFleet.get(visit.fleet);
    if (list === undefined) byFleet.set(visit.fleet, [visit]);
    else list.push(visit);
  }
  const fleets = [...byFleet].map(([fleet, list]) => {
    const each = offTheRoad(list, (visit) => visit.vehicleId, scale);
    let [ms, daysInAll] = [0, 0];
    for (const one of each) {
      ms += one.ms;
      daysInAll += one.days;
    }
    return { fleet, ms, days: daysInAll, vehicles: each.length };
  });
  return {
    vehicles: offTheRoad(visits, (visit) => visit.vehicleId, scale).map(({ key, ...rest }) => ({
      vehicleId: key,
      ...rest,
    })),
    fleets: fleets.sort((a, b) => (a.fleet < b.fleet ? -1 : 1)),
  };
}

function timesOf(visits: readonly Clipped[], input: FlowInput): Record<TimeHereClass, number> {
  const open = tidy(input.open);
  const rows = {
    clocks: byJob(input.clocks),
    holds: byJob(input.holds),
    lines: byJob(input.lines),
    stored: byJob(input.storedJobs),
  };
  const sums = Object.fromEntries(timeHereClasses.map((name) => [name, 0])) as Record<TimeHereClass, number>;
  for (const { jobId, from, to } of visits) {
    const ofJob = {
      clocks: rows.clocks.get(jobId) ?? [],
      holds: rows.holds.get(jobId) ?? [],
      lines: rows.lines.get(jobId) ?? [],
      stored: rows.stored.get(jobId) ?? [],
    };
    for (const one of timeHere({ from, to }, ofJob, open, input.now)) sums[one.class] += one.to - one.from;
  }
  return sums;
}

function clippedTo(window: Interval, visits: readonly Visit[], now: number): Clipped[] {
  return visits.flatMap((visit) => {
    const ended = endedBy(visit, now);
    if (ended === null || ended.to <= window.from || ended.from >= window.to) return [];
    return [{ ...visit, from: Math.max(ended.from, window.from), to: Math.min(ended.to, window.to) }];
  });
}

/**
 * The flow of a window. Time here is split by `timeHere`, so that its parts add up to the area under `here` exactly,
 * in whole milliseconds, and the parts of a window cut in two add up to those of the whole. The law of Little is checked
 * beside it (`littleCheck`). Instants are epoch milliseconds; a visit that ends as it begins is left out. Refuses
 * instants that are not whole and days that have gaps or do not hold the window, with a RangeError. Linear after sorting,
 * and in the openings of each visit.
 */
export function flowOf(input: FlowInput): Flow {
  refuseFaults(input);
  const { now } = input;
  const window = { from: input.window.from, to: Math.max(input.window.from, Math.min(input.window.to, now)) };
  const visits = clippedTo(window, input.visits, now);
  const here = countsOf(visits);
  const windowMs = window.to - window.from;
  const hereMs = visits.reduce((sum, { from, to }) => sum + to - from, 0);
  const real = input.visits.filter(({ from, to }) => to === null || from < to);
  const left = real.filter(({ to }) => to !== null && to > window.from && to <= window.to);
  const paying = left.filter(({ kind }) => kind !== 'internal');
  const comebacks = paying.filter(({ kind }) => kind === 'comeback').length;
  const arrived = real.filter(({ from }) => from >= window.from && from < window.to).length;
  const scale = dayScale(input.days);
  const daysInWindow = windowMs === 0 ? 0 : scale(window.to) - scale(window.from);
  const spans = (instant: number) => real.some(({ from, to }) => from < instant && (to === null || to > instant));
  return {
    window,
    here,
    meanHere: windowMs === 0 ? null : hereMs / windowMs,
    mostHere: here.reduce((most, { count }) => Math.max(most, count), 0),
    arrived,
    left: left.length,
    leftPerDay: daysInWindow === 0 ? null : left.length / daysInWindow,
    timeMs: timesOf(visits, input),
    ...offTheRoadOf(visits, input.days),
    comebacks: {
      comebacks,
      jobs: paying.length,
      perHundred: paying.length === 0 ? null : (100 * comebacks) / paying.length,
    },
    little: littleCheck({
      windowMs,
      hereMs,
      arrived,
      left: left.length,
      leftHereMs: left.reduce((sum, { from, to }) => sum + (to ?? now) - from, 0),
      startsEmpty: !spans(window.from),
      endsEmpty: !spans(window.to),
    }),
  };
}
