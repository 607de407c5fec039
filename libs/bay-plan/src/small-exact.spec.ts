import { describe, expect, it } from '@jest/globals';
import type { PlanModel, PlannedLine } from './index.js';
import { checkPlan, planner } from './index.js';

/**
 * The reference: every order of the lines, every bay and person for each, laid out minute by minute on plain arrays of
 * minutes, by nothing of the library. Small shops only.
 */
interface Placed extends PlannedLine {
  readonly order: number;
}
const minute = 60_000;

function bestByTrying(model: PlanModel): { late: number; moves: number } {
  const all = model.jobs.flatMap((job) => job.lines.map((line) => ({ job, line })));
  let best = { late: Infinity, moves: Infinity };
  const isOpen = (open: PlanModel['spots'][number]['open'], at: number) =>
    open === null || open.some((one) => one.from <= at && at < one.to);

  function lay(placed: readonly Placed[], one: (typeof all)[number], spotId: string, personId: string) {
    const spot = model.spots.find((s) => s.spotId === spotId);
    const person = model.people.find((p) => p.personId === personId);
    const own = placed.filter((p) => p.jobId === one.job.jobId);
    const inSpot = placed.filter((p) => p.spotId === spotId);
    const stood = own.at(-1)?.spotId === spotId && inSpot.at(-1)?.jobId === one.job.jobId;
    const free = Math.max(model.now, one.job.arrivesAt, ...own.map((p) => p.to), ...inSpot.map((p) => p.to));
    let at = free;
    for (let left = stood ? 0 : model.moveMinutes; left > 0; at += minute)
      if (isOpen(spot?.open ?? null, at)) left -= 1;
    const theirs = placed.filter((p) => p.personIds.includes(personId)).map((p) => p.to);
    at = Math.max(at, ...theirs, ...one.line.notBefore.map((n) => n.at));
    const both = (t: number) => isOpen(spot?.open ?? null, t) && isOpen(person?.open ?? null, t);
    while (!both(at)) at += minute;
    let to = at;
    for (let left = one.line.workMinutes; left > 0; to += minute) if (both(to)) left -= 1;
    return { from: at, to, move: stood ? 0 : 1 };
  }

  function go(placed: readonly Placed[], moves: number): void {
    const late = model.jobs.reduce((sum, job) => {
      const end = Math.max(0, ...placed.filter((p) => p.jobId === job.jobId).map((p) => p.to));
      return sum + (job.weight * Math.max(0, end - (job.promisedAt ?? Infinity))) / minute;
    }, 0);
    if (late > best.late || (late === best.late && moves >= best.moves)) return;
    if (placed.length === all.length) {
      best = { late, moves };
      return;
    }
    const done = (jobId: string, lineId: string) => placed.some((p) => p.jobId === jobId && p.lineId === lineId);
    for (const one of all) {
      const { jobId } = one.job;
      if (done(jobId, one.line.lineId) || !one.line.after.every((id) => done(jobId, id))) continue;
      for (const spot of model.spots) {
        if (!one.line.equipment.every((word) => spot.equipment.includes(word))) continue;
        for (const person of model.people) {
          if (!one.line.skills.every((skill) => person.skills.includes(skill))) continue;
          const { from, to, move } = lay(placed, one, spot.spotId, person.personId);
          const line = { jobId, lineId: one.line.lineId, spotId: spot.spotId, personIds: [person.personId], from, to };
          go([...placed, { ...line, order: placed.length }], moves + move);
        }
      }
    }
  }
  go([], 0);
  return best;
}

function smallShop(seed: number): PlanModel {
  let state = seed * 7_919 + 17;
  const below = (n: number) => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return Math.floor((state / 2_147_483_648) * n);
  };
  const days = [0, 1, 2, 3, 4, 5].map((day) => ({ from: day * 1_440 * minute, to: (day + 1) * 1_440 * minute }));
  const shift = (opens: number, closes: number) =>
    days.map((day) => ({ from: day.from + opens * minute, to: day.from + closes * minute }));
  const jobs = Array.from({ length: 3 }, (_, j) => ({
    jobId: `j${j}`,
    arrivesAt: below(3) * 10 * minute,
    promisedAt: (20 + below(60)) * minute,
    weight: [1, 2, 4][below(3)] ?? 1,
    massKg: null,
    lengthMm: null,
    heightMm: null,
    stands: null,
    lines: Array.from({ length: j === 2 ? 1 : 2 }, (__, i) => ({
      lineId: `l${i}`,
      workMinutes: 10 + below(30),
      equipment: below(3) === 0 ? ['lift'] : [],
      skills: below(3) === 0 ? ['diagnosis'] : [],
      people: 1 as const,
      toolIds: [],
      after: i === 1 && below(2) === 0 ? ['l0'] : [],
      notBefore: below(4) === 0 ? [{ reason: 'parts', at: below(40) * minute }] : [],
      sublet: null,
      keepsBayUntil: null,
      fixed: null,
    })),
  }));
  const spot = (s: number, equipment: readonly string[]) => ({
    ...{ spotId: `s${s}`, bayId: `b${s}`, equipment, ratedKg: null, longestMm: null, highestMm: null },
    open: shift(0, 60),
  });
  return {
    now: 0,
    horizon: days.at(-1)?.to ?? 0,
    days,
    freeShare: 0,
    moveMinutes: 3,
    spots: [spot(0, ['lift']), spot(1, [])],
    people: [
      { personId: 'p0', skills: ['diagnosis'], homeBayId: null, open: shift(0, 50) },
      { personId: 'p1', skills: [], homeBayId: null, open: shift(5, 60) },
    ],
    jobs,
  };
}

describe('small shops with calendars, skills and moves', () => {
  it('are planned as well as by trying everything, in weighted tardiness and then in moves', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const model = smallShop(seed);
      const best = bestByTrying(model);
      const { plan, value } = planner(model, 1).step(15_000);
      expect(checkPlan(model, plan)).toEqual([]);
      expect({ seed, late: value.weightedTardinessMinutes, moves: value.moves }).toEqual({ seed, ...best });
    }
  });
});
