/**
 * Invented shops to plan, the same for the same seed: bays, people, vehicles, promised times by the rule of OR-Library's
 * weighted tardiness instances (uniform in P(1 - TF - RDD/2) … P(1 - TF + RDD/2) of open time, P the work by bay).
 */
import type { PlanJob, PlanLine, PlanModel, PlanPerson, PlanSpot } from '@holdfast/bay-plan';
import { usualFreeShare, weights } from '@holdfast/bay-plan';
import { type Interval, calendarOf, sameHours, totalMs } from '@holdfast/shop-calendar';

const workdays = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const calendar = calendarOf({
  zone: 'Europe/London',
  hours: [
    {
      validFrom: '2026-01-01',
      week: sameHours([...workdays], [['08:00', '17:00']]),
      breaks: sameHours([...workdays], [['12:00', '12:30']]),
    },
  ],
  exceptions: [],
});
const minuteMs = 60_000;
const dayMs = 24 * 3_600_000;

/** Mulberry32, as the planner's; its own copy, so that the shops stay the same whatever the planner does. */
function randomOf(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let z = Math.imul(state ^ (state >>> 15), 1 | state);
    z = (z + Math.imul(z ^ (z >>> 7), 61 | z)) ^ z;
    return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
  };
}

export interface ShopWish {
  readonly seed: number;
  readonly bays: number;
  readonly people: number;
  /** working days that the load fills */
  readonly workdays: number;
  /** work over the plannable time of bays or people, whichever is less; left out where the vehicles are counted */
  readonly load?: number;
  readonly vehicles?: number;
}

function openDays(from: number, count: number): Interval[] {
  const days: Interval[] = [];
  for (let at = from; days.length < count; at += dayMs) {
    const bounds = calendar.dayBounds(calendar.dateOf(at));
    if (calendar.openIntervals(bounds.from, bounds.to).length > 0) days.push(bounds);
  }
  return days;
}

/** The instant so many open minutes after the start. */
function afterOpen(open: readonly Interval[], minutes: number): number {
  let left = Math.max(0, minutes) * minuteMs;
  for (const { from, to } of open) {
    if (left <= to - from) return from + left;
    left -= to - from;
  }
  return open.at(-1)?.to ?? 0;
}

interface Chance {
  readonly next: () => number;
  between(low: number, high: number): number;
  of<T>(list: readonly T[]): T;
}

function chanceOf(seed: number): Chance {
  const next = randomOf(seed);
  return {
    next,
    between: (low, high) => low + Math.floor(next() * (high - low + 1)),
    of: (list) => list[Math.floor(next() * list.length)] as (typeof list)[number],
  };
}

function lineOf(chance: Chance, i: number, slow: boolean): PlanLine {
  const lift = chance.next() < 0.45;
  const align = !lift && chance.next() < 0.1;
  return {
    lineId: `l${i}`,
    workMinutes: 5 * chance.between(4, slow ? 60 : 24),
    equipment: lift ? ['lift'] : align ? ['alignment'] : [],
    skills: chance.next() < 0.15 ? ['diagnosis'] : [],
    people: chance.next() < 0.05 ? 2 : 1,
    toolIds: chance.next() < 0.1 ? ['scanner'] : [],
    after: i > 0 && chance.next() < 0.8 ? [`l${i - 1}`] : [],
    notBefore: [],
    sublet: null,
    keepsBayUntil: null,
    fixed: null,
  };
}

function jobOf(chance: Chance, j: number): PlanJob {
  const lines = Array.from({ length: chance.between(1, 4) }, (_, i) => lineOf(chance, i, chance.next() < 0.15));
  return {
    jobId: `v${String(j).padStart(3, '0')}`,
    arrivesAt: 0,
    promisedAt: null,
    weight: chance.of([weights.waitsHere, weights.promised, weights.promised, weights.whenItSuits]),
    massKg: chance.between(900, 2_600),
    lengthMm: 4_500,
    heightMm: null,
    stands: null,
    lines,
  };
}

const workOf = (job: PlanJob) => job.lines.reduce((sum, line) => sum + line.workMinutes, 0);

function spotOf(s: number, open: readonly Interval[]): PlanSpot {
  const lift = s % 2 === 0;
  const equipment = s % 4 === 3 || s === 1 ? ['alignment'] : [];
  return {
    spotId: `bay ${s + 1}`,
    bayId: `bay ${s + 1}`,
    equipment: lift ? ['lift', ...equipment] : equipment,
    ratedKg: lift ? 3_000 : null,
    longestMm: null,
    highestMm: null,
    open,
  };
}

function personOf(p: number, bays: number, open: readonly Interval[]): PlanPerson {
  const skills = p % 2 === 0 ? ['diagnosis'] : [];
  return { personId: `person ${p + 1}`, skills, homeBayId: p < bays ? `bay ${p + 1}` : null, open };
}

export function inventedShop(wish: ShopWish): PlanModel {
  const chance = chanceOf(wish.seed);
  const now = calendar.instantOf('2026-06-01', '08:00');
  const days = openDays(now, wish.workdays * 6);
  const horizon = days.at(-1)?.to ?? now;
  const open = calendar.openIntervals(now, horizon);
  const filled = days.slice(0, wish.workdays);
  const perSpot = totalMs(calendar.openIntervals(now, filled.at(-1)?.to ?? now)) / minuteMs;
  const servers = Math.min(wish.bays, wish.people);
  const wanted = (wish.load ?? 0) * perSpot * (1 - usualFreeShare) * servers;
  const jobs: PlanJob[] = [];
  let work = 0;
  while (wish.vehicles === undefined ? work < wanted : jobs.length < wish.vehicles) {
    const job = jobOf(chance, jobs.length);
    jobs.push(job);
    work += workOf(job);
  }
  const tightness = chance.between(1, 5) / 5;
  const range = chance.between(1, 5) / 5;
  const byServer = work / servers;
  const promised = () => byServer * (1 - tightness + range * (chance.next() - 0.5));
  return {
    now,
    horizon,
    days,
    freeShare: usualFreeShare,
    moveMinutes: 5,
    spots: Array.from({ length: wish.bays }, (_, s) => spotOf(s, open)),
    people: Array.from({ length: wish.people }, (_, p) => personOf(p, wish.bays, open)),
    jobs: jobs.map((job) => ({
      ...job,
      arrivesAt: chance.next() < 0.6 ? now : afterOpen(open, chance.next() * perSpot * 0.6),
      promisedAt: afterOpen(open, promised()),
    })),
  };
}
