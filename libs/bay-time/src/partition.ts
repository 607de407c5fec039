import { type Interval, clip, firstEndingAfter, intersect, subtract, tidy, union } from '@holdfast/shop-calendar';
import { type JobClock, type JobHold, type SpotInput, type SpotStay } from './account-input.js';
import { allEndedBy, byJob, isOutsider } from './account-input.js';
import { type BoundWait, boundWaitsOfJob } from './job-waits.js';

/** In the order in which they count: the first that matches. */
export const bayTimeClasses = ['outOfUse', 'worked', 'stored', 'held', 'noReason', 'break', 'empty'] as const;
export type BayTimeClass = (typeof bayTimeClasses)[number];

/** A stretch of opening time of one class, epoch milliseconds. */
export interface Segment extends Interval {
  readonly class: BayTimeClass;
  /** for `held` the reason of the hold that counts; for `stored` `collection` or null; null for all others */
  readonly reason: string | null;
  /** the hold whose reason it is; null where none names one */
  readonly holdId: string | null;
  /** the job in the spot; null for `outOfUse` and `empty` */
  readonly jobId: string | null;
}

/** A stretch of the clock of one person of the shop on a job while that job had the spot; those of several people overlap. */
export interface PersonStretch extends Interval {
  readonly personId: string;
  readonly jobId: string;
  readonly bench: boolean;
  /** outside opening time: overtime, in no class */
  readonly overtime: boolean;
}

/** A stretch of held time with everything that held it. */
export interface HoldingStretch extends Interval {
  readonly jobId: string;
  /** the holds that bind, opened first first; empty: nothing is missing but the customer's word on a line */
  readonly holds: readonly JobHold[];
}

export interface SpotAccount {
  /** what is accounted for: the window asked for, cut at `now` */
  readonly window: Interval;
  /** sorted; together exactly the opening time of the window */
  readonly segments: readonly Segment[];
  /** sorted by start */
  readonly people: readonly PersonStretch[];
  /** sorted; together exactly the segments of class `held` */
  readonly holding: readonly HoldingStretch[];
}

type Stay = Interval & { readonly jobId: string };

/**
 * One stay after the other. A road test, or work at another firm, that keeps the spot goes on with the stay it interrupts. Should two jobs have
 * the spot at once, the one that had it first counts until it leaves.
 */
function staysInTurn(stays: readonly SpotStay[], now: number): Stay[] {
  const sorted = allEndedBy(stays, now).sort((a, b) => a.from - b.from || (a.jobId < b.jobId ? -1 : 1));
  const out: Stay[] = [];
  for (const { jobId, from, to } of sorted) {
    const last = out.at(-1);
    if (last === undefined || from > last.to || (from === last.to && jobId !== last.jobId))
      out.push({ jobId, from, to });
    else if (to <= last.to) continue;
    else if (jobId === last.jobId) out[out.length - 1] = { jobId, from: last.from, to };
    else out.push({ jobId, from: last.to, to });
  }
  return out;
}

/** The work of one job in the bay: all its clocks but those at the bench. */
interface Work {
  readonly worked: readonly Interval[];
  /** people whose clock ended at an instant */
  readonly endedAt: ReadonlyMap<number, readonly string[]>;
}

function workOf(clocks: readonly (JobClock & Interval)[]): Work {
  const inBay = clocks.filter((clock) => !clock.bench);
  const endedAt = new Map<number, string[]>();
  for (const { to, personId } of inBay) {
    const people = endedAt.get(to);
    if (people === undefined) endedAt.set(to, [personId]);
    else people.push(personId);
  }
  return { worked: tidy(inBay), endedAt };
}

/** Who was last clocked on the job before a gap that begins at the instant. */
function lastClockedBefore(work: Work, gapFrom: number): readonly string[] {
  const index = firstEndingAfter(work.worked, gapFrom) - 1;
  const last = work.worked[index];
  return last === undefined ? [] : (work.endedAt.get(last.to) ?? []);
}

/** The first `ms` milliseconds of a tidy list. */
function firstMs(list: readonly Interval[], ms: number): Interval[] {
  const out: Interval[] = [];
  let left = ms;
  for (const { from, to } of list) {
    if (left <= 0) break;
    out.push({ from, to: Math.min(to, from + left) });
    left -= to - from;
  }
  return out;
}

interface JobInBay {
  readonly work: Work;
  readonly waits: readonly BoundWait[];
}

interface Surroundings {
  readonly open: readonly Interval[];
  readonly usable: readonly Interval[];
  readonly breaks: readonly Interval[];
  readonly personBreaks: (personId: string) => readonly Interval[];
  readonly graceMs: number;
}

const plain = { reason: null, holdId: null } as const;

function segmentsIn(inside: readonly Interval[], rest: Omit<Segment, 'from' | 'to'>): Segment[] {
  return inside.map(({ from, to }) => ({ from, to, ...rest }));
}

/** What one spot's account is gathered in. */
interface Gathered {
  readonly segments: Segment[];
  readonly holding: HoldingStretch[];
}

/** One gap without a clock: what of it is stored or held, what a break or grace, and what has no reason. */
function gatherGap(gap: Stay, { work, waits }: JobInBay, around: Surroundings, into: Gathered): void {
  const { jobId, from, to } = gap;
  const usable = clip(around.usable, from, to);
  if (usable.length === 0) return;
  const waited: Interval[] = [];
  for (let i = firstEndingAfter(waits, from); i < waits.length; i += 1) {
    const wait = waits[i];
    if (wait === undefined || wait.from >= to) break;
    const { state, reason, holdId, holds } = wait;
    const inside = clip(usable, wait.from, wait.to);
    waited.push(...inside);
    into.segments.push(...segmentsIn(inside, { class: state, reason, holdId, jobId }));
    if (state !== 'held') continue;
    for (const one of inside) into.holding.push({ from: one.from, to: one.to, jobId, holds });
  }
  const free = subtract(usable, waited);
  if (free.length === 0) return;
  const excused = union(
    firstMs(clip(around.open, from, to), around.graceMs),
    clip(around.breaks, from, to),
    ...lastClockedBefore(work, from).map((personId) => clip(around.personBreaks(personId), from, to)),
  );
  into.segments.push(...segmentsIn(intersect(free, excused), { class: 'break', ...plain, jobId }));
  into.segments.push(...segmentsIn(subtract(free, excused), { class: 'noReason', ...plain, jobId }));
}

function gatherStay(stay: Stay, job: JobInBay, around: Surroundings, into: Gathered): void {
  const { jobId, from, to } = stay;
  const worked = clip(job.work.worked, from, to);
  for (const one of worked) {
    into.segments.push(...segmentsIn(clip(around.usable, one.from, one.to), { class: 'worked', ...plain, jobId }));
  }
  for (const gap of subtract([stay], worked)) gatherGap({ jobId, from: gap.from, to: gap.to }, job, around, into);
}

function inOrder(segments: Segment[]): Segment[] {
  segments.sort((a, b) => a.from - b.from);
  const out: Segment[] = [];
  for (const next of segments) {
    const last = out.at(-1);
    const goesOn =
      last?.to === next.from &&
      last.class === next.class &&
      last.reason === next.reason &&
      last.holdId === next.holdId &&
      last.jobId === next.jobId;
    if (goesOn) out[out.length - 1] = { ...last, to: next.to };
    else out.push(next);
  }
  return out;
}

function peopleOf(
  clocks: readonly (JobClock & Interval)[],
  stays: readonly Stay[],
  open: readonly Interval[],
  window: Interval,
): PersonStretch[] {
  const staysOf = byJob(stays);
  const out: PersonStretch[] = [];
  for (const { jobId, personId, bench, from, to } of clocks) {
    if (isOutsider(personId)) continue;
    const there = clip(staysOf.get(jobId) ?? [], Math.max(from, window.from), Math.min(to, window.to));
    for (const part of there) {
      const regular = clip(open, part.from, part.to);
      for (const one of regular) out.push({ from: one.from, to: one.to, personId, jobId, bench, overtime: false });
      for (const one of subtract([part], regular)) {
        out.push({ from: one.from, to: one.to, personId, jobId, bench, overtime: true });
      }
    }
  }
  return out.sort((a, b) => a.from - b.from);
}

/** Checks what arithmetic cannot repair; a fault here is a bug of the caller, so it is thrown. */
function refuseFaults({ window, graceMs, now }: SpotInput): void {
  for (const instant of [window.from, window.to, now, graceMs]) {
    if (!Number.isSafeInteger(instant)) throw new RangeError(`${instant} is not a whole number of milliseconds.`);
  }
  if (graceMs < 0) throw new RangeError('The grace of a gap cannot be negative.');
}

/**
 * The account of one spot of a bay: every millisecond of opening time in the window, up to `now`, in exactly one class,
 * the first of these that matches.
 *
 * - `outOfUse`: the bay is out of use.
 * - `worked`: a job has the spot and at least one clock runs on it that is not at the bench, or an outsider works on it.
 * - `stored`: the whole job is held for `collection`, or it is an internal job marked stored.
 * - `held`: no line could be worked, and an open line with the go-ahead, or the whole job, is held; the reason is that
 *   of the hold opened first among those that bind. If none is held but a line is with the customer: `goAhead`.
 * - `noReason`: some line could be worked, or nothing is left to do, beyond breaks and the grace.
 * - `break`: otherwise as `noReason`, but inside a break of the shop, or of whoever was clocked last on the job, or
 *   within the grace: the first `graceMs` of opening time of each stretch of a stay without a clock.
 * - `empty`: no job has the spot.
 *
 * All instants are epoch milliseconds. The order of the input does not matter; what ends before it begins is left out.
 * Refuses a window, a `now` or a grace that is not whole, and a negative grace, with a RangeError. The cost is linear
 * after sorting (times the holds of one job that are open at once).
 */
export function partition(input: SpotInput): SpotAccount {
  refuseFaults(input);
  const { now } = input;
  const window = { from: input.window.from, to: Math.max(input.window.from, Math.min(input.window.to, now)) };
  const open = tidy(input.open);
  const asked = clip(open, window.from, window.to);
  const outOfUse = intersect(asked, input.outOfUse);
  const usable = subtract(asked, outOfUse);
  const stays = staysInTurn(input.stays, now);
  const clocks = allEndedBy(input.clocks, now);

  const breaksOfPeople = new Map(Object.entries(input.personBreaks ?? {}).map(([id, list]) => [id, tidy(list)]));
  const around: Surroundings = {
    open,
    usable,
    breaks: tidy(input.breaks),
    personBreaks: (personId) => breaksOfPeople.get(personId) ?? [],
    graceMs: input.graceMs,
  };
  const rows = { lines: byJob(input.lines), holds: byJob(input.holds), stored: byJob(input.storedJobs) };
  const clocksOf = byJob(clocks);
  const jobs = new Map<string, JobInBay>();
  const into: Gathered = { segments: segmentsIn(outOfUse, { class: 'outOfUse', ...plain, jobId: null }), holding: [] };
  for (const stay of stays) {
    if (stay.to <= window.from || stay.from >= window.to) continue;
    const { jobId } = stay;
    const job = jobs.get(jobId) ?? {
      work: workOf(clocksOf.get(jobId) ?? []),
      waits: boundWaitsOfJob(
        {
          lines: rows.lines.get(jobId) ?? [],
          holds: rows.holds.get(jobId) ?? [],
          stored: rows.stored.get(jobId) ?? [],
        },
        now,
      ),
    };
    jobs.set(jobId, job);
    gatherStay(stay, job, around, into);
  }
  into.segments.push(...segmentsIn(subtract(usable, stays), { class: 'empty', ...plain, jobId: null }));
  return {
    window,
    segments: inOrder(into.segments),
    people: peopleOf(clocks, stays, open, window),
    holding: into.holding.sort((a, b) => a.from - b.from),
  };
}
