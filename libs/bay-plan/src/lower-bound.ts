/**
 * What no plan can fall below. Finish: the longest job by itself, and for each spot what only it can do. Weighted
 * tardiness: each job by itself; and the whole shop with work let flow in any portions into the open time of all spots
 * together (a transport problem over stretches of time), bounded by Lagrange multipliers on the stretches' capacity.
 * The share of a job's penalty that a line carries is its share of the job's work.
 */
import { type Compiled, minuteMs } from './compile.js';

const stretches = 240;
const rounds = 120;

/** Earliest finish of each operation if its vehicle had the shop to itself. */
export function earliestEnds(compiled: Compiled): Float64Array {
  const { operations, calendars, spotCalendar, wholeSpotCalendar, personCalendar, workMs, spotCount, jobs } = compiled;
  const ends = new Float64Array(operations.length).fill(Number.NaN);
  const alone = (op: number, from: number): number => {
    const operation = operations[op];
    if (operation === undefined) return from;
    const { slots, fixedStart, needs, people, spots } = operation;
    if (slots !== null) return slots.find((slot) => slot.from >= from)?.to ?? Math.max(from, compiled.horizonMs);
    const days = new Set(needs === 0 ? [0] : people.map((person) => personCalendar[person] as number));
    let soonest = Infinity;
    for (const spot of spots) {
      const own = (fixedStart === null ? spotCalendar[spot] : wholeSpotCalendar[spot]) as number;
      for (const day of days) {
        const calendar = calendars.both(own, day);
        const start = fixedStart ?? calendars.next(calendar, from);
        soonest = Math.min(soonest, calendars.finish(calendar, start, workMs[op * spotCount + spot] as number));
      }
    }
    return soonest;
  };
  const endOf = (op: number): number => {
    const known = ends[op] as number;
    if (!Number.isNaN(known)) return known;
    const operation = operations[op];
    if (operation === undefined) return 0;
    let from = operation.release;
    for (const before of operation.before) from = Math.max(from, endOf(before));
    return (ends[op] = alone(op, Math.max(from, jobs[operation.job]?.arrives ?? 0)));
  };
  operations.forEach((_, op) => endOf(op));
  return ends;
}

function jobEnds(compiled: Compiled, ends: Float64Array): Float64Array {
  return Float64Array.from(compiled.jobs, ({ operations, arrives }) => {
    const work = operations.reduce((sum, op) => sum + (compiled.operations[op]?.leastMs ?? 0), 0);
    const fixed = operations.some((op) => compiled.operations[op]?.fixedStart !== null);
    return operations.reduce((most, op) => Math.max(most, ends[op] as number), fixed ? 0 : arrives + work);
  });
}

function finishBound(compiled: Compiled, ends: Float64Array, byJob: Float64Array): number {
  const { operations, spotCount } = compiled;
  let bound = byJob.reduce((most, end) => Math.max(most, end), 0);
  const sets = Array.from({ length: spotCount }, (_, s) =>
    operations.filter((one) => one.spots.length === 1 && one.spots[0] === s),
  );
  const own = (op: number) => (ends[op] as number) - (operations[op]?.leastMs ?? 0);
  const index = new Map(operations.map((one, op) => [one, op]));
  const headOf = (one: (typeof operations)[number]) => Math.max(one.release, own(index.get(one) ?? 0));
  const useful = (set: typeof operations, at: number, spots: number) => {
    const later = set.filter((one) => headOf(one) >= at);
    if (later.length === 0) return 0;
    const sum = later.reduce((total, one) => total + one.leastMs, 0);
    return at + sum / spots + Math.min(...later.map((one) => one.tail));
  };
  // Heads by the calendar are only sure without one: a pause before a line could hold others.
  for (const set of sets) for (const one of set) bound = Math.max(bound, useful(set, one.release, 1));
  if (compiled.spotCalendar.every((calendar) => calendar === 0)) {
    for (const set of sets) for (const one of set) bound = Math.max(bound, useful(set, headOf(one), 1));
    bound = Math.max(
      bound,
      useful(
        operations.filter((one) => one.spots.length > 0),
        0,
        spotCount,
      ),
    );
  }
  return bound;
}

interface Flow {
  readonly starts: Float64Array;
  readonly capacity: Float64Array;
  /** operations that need a spot */
  readonly pieces: readonly { readonly least: number; readonly cost: Float64Array; readonly first: number }[];
}

function flowOf(compiled: Compiled, byJob: Float64Array): Flow {
  const { operations, jobs, calendars, wholeSpotCalendar, spotCalendar } = compiled;
  const own = operations.some((one) => one.fixedStart !== null) ? wholeSpotCalendar : spotCalendar;
  const work = operations.reduce((sum, one) => sum + one.leastMs, 0);
  const latest = operations.reduce((most, one) => Math.max(most, one.release), 0);
  const dated = own.some((calendar) => calendar !== 0);
  const end = dated ? compiled.horizonMs : latest + work / Math.max(1, compiled.spotCount) + minuteMs;
  const starts = Float64Array.from({ length: stretches + 1 }, (_, b) => (b * end) / stretches);
  const capacity = Float64Array.from(starts, (from, b) => {
    if (b === stretches) return Infinity;
    return own.reduce((sum, calendar) => sum + calendars.openMs(calendar, from, starts[b + 1] as number), 0);
  });
  const workOf = jobs.map((job) => job.operations.reduce((sum, op) => sum + (operations[op]?.leastMs ?? 0), 0));
  const pieces = operations.flatMap((one) => {
    const job = jobs[one.job];
    if (one.spots.length === 0 || job === undefined || job.weight === 0) return [];
    const share = ((job.weight / minuteMs) * one.leastMs) / (workOf[one.job] ?? 1);
    const alone = byJob[one.job] ?? 0;
    const cost = starts.map((from) => share * Math.max(0, Math.max(from + one.tail, alone) - job.due));
    let first = 0;
    while (first < stretches && (starts[first + 1] as number) <= one.release) first += 1;
    return [{ least: one.leastMs, cost, first }];
  });
  return { starts, capacity, pieces };
}

/** The best of the Lagrangian bounds; `value` is what a plan reaches, for the length of the steps. */
function flowBound({ capacity, pieces }: Flow, value: number): number {
  const price = new Float64Array(capacity.length);
  const used = new Float64Array(capacity.length);
  let best = 0;
  let step = 1;
  for (let round = 0; round < rounds; round += 1) {
    used.fill(0);
    let bound = 0;
    for (const { least, cost, first } of pieces) {
      let at = first;
      let cheapest = Infinity;
      for (let b = first; b < price.length; b += 1) {
        const total = (cost[b] as number) + least * (price[b] as number);
        if (total >= cheapest) continue;
        cheapest = total;
        at = b;
      }
      bound += cheapest;
      used[at] = (used[at] as number) + least;
    }
    let norm = 0;
    for (let b = 0; b + 1 < price.length; b += 1) {
      bound -= (price[b] as number) * (capacity[b] as number);
      const over = (used[b] as number) - (capacity[b] as number);
      if (over > 0 || (price[b] as number) > 0) norm += over * over;
    }
    if (bound > best) best = bound;
    else step *= 0.95;
    if (norm === 0 || value - bound <= 0) break;
    for (let b = 0; b + 1 < price.length; b += 1) {
      const over = (used[b] as number) - (capacity[b] as number);
      price[b] = Math.max(0, (price[b] as number) + (step * (value - bound) * over) / norm);
    }
  }
  return best;
}

/** Bounds in weighted minutes and minutes; `reached`: weighted minutes late of a plan there is. */
export function lowerBound(compiled: Compiled, reached: number) {
  const ends = earliestEnds(compiled);
  const byJob = jobEnds(compiled, ends);
  let alone = 0;
  compiled.jobs.forEach((job, j) => {
    if (job.operations.length > 0) alone += (job.weight * Math.max(0, (byJob[j] as number) - job.due)) / minuteMs;
  });
  const flow = compiled.promised && reached > alone ? flowBound(flowOf(compiled, byJob), reached) : 0;
  return {
    // A little less: the sums of many shares are not exact to the last digit.
    weightedTardinessMinutes: Math.max(alone, flow - 1e-6 * flow),
    finishMinutes: finishBound(compiled, ends, byJob) / minuteMs,
  };
}
