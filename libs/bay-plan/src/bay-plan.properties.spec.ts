import { describe, expect, it } from '@jest/globals';
import { type Interval, calendarOf, sameHours, subtract } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import {
  type PlanJob,
  type PlanLine,
  type PlanModel,
  type PlanPerson,
  type PlanSpot,
  checkPlan,
  compareValues,
  faultsInModel,
  planner,
} from './index.js';

/** The week in which Detroit's clocks go on (2026-03-08, a Sunday); the shop also works that night. */
const shop = calendarOf({
  zone: 'America/Detroit',
  hours: [
    {
      validFrom: '2026-01-01',
      week: {
        ...sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['08:00', '17:00']]),
        sat: [['20:00', '05:00']],
      },
      breaks: sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['12:00', '12:30']]),
    },
  ],
  exceptions: [],
});
const now = shop.instantOf('2026-03-06', '09:10');
const hour = 3_600_000;
const end = now + 21 * 24 * hour;
const open = shop.openIntervals(now, end);
const days = Array.from({ length: 22 }, (_, i) => {
  const bounds = shop.dayBounds(shop.dateOf(now + i * 24 * hour));
  return { from: Math.max(now, bounds.from), to: Math.min(end, bounds.to) };
});

type Draw = fc.GeneratorValue;
const whole = (g: Draw, min: number, max: number) => g(fc.integer, { min, max });
const oneIn = (g: Draw, n: number) => whole(g, 1, n) === n;
const some = (g: Draw, of: readonly string[]) => of.filter(() => oneIn(g, 3));
const oneOf = <T>(g: Draw, list: readonly T[]): T => list[whole(g, 0, list.length - 1)] as T;

function outage(g: Draw): Interval[] {
  if (!oneIn(g, 3)) return [];
  const from = now + whole(g, 0, 100) * hour;
  return [{ from, to: from + whole(g, 1, 30) * hour }];
}

function drawLine(g: Draw, i: number): PlanLine {
  const goesOut = oneIn(g, 12);
  const slots = [0, 1].map((k) => ({ from: now + (30 + 60 * k) * hour, to: now + (34 + 60 * k) * hour }));
  return {
    lineId: `l${i}`,
    workMinutes: whole(g, 5, 400),
    ...(oneIn(g, 5) && !goesOut ? { minutesBySpot: { s0: whole(g, 5, 200), s1: whole(g, 5, 200) } } : {}),
    equipment: oneIn(g, 4) ? ['lift'] : [],
    skills: oneIn(g, 4) ? ['highVoltage'] : [],
    people: goesOut ? 0 : oneOf(g, [0, 1, 1, 1, 2] as const),
    toolIds: some(g, ['scanner']),
    after: i > 0 && oneIn(g, 2) ? [`l${whole(g, 0, i - 1)}`] : [],
    notBefore: oneIn(g, 4) ? [{ reason: 'parts', at: now + whole(g, 0, 120) * hour }] : [],
    sublet: goesOut ? { slots, vehicleGoes: oneIn(g, 2) } : null,
    keepsBayUntil: null,
    fixed: null,
  };
}

/** Settles the first line's spot, now and then its people and start too, where the vehicle stands if it stands somewhere. */
function settleFirst(
  g: Draw,
  first: PlanLine,
  stands: PlanJob['stands'],
  free: boolean,
  people: readonly PlanPerson[],
) {
  const spotId = stands?.spotId ?? 's0';
  if (oneIn(g, 4) && first.sublet === null && (stands !== null || free)) {
    const who = people.slice(0, first.people).map((person) => person.personId);
    const at = oneIn(g, 2) ? { startsAt: now + whole(g, 0, 40) * hour } : {};
    return { ...first, after: [], fixed: { spotId, personIds: who, ...at } };
  }
  return oneIn(g, 6) ? { ...first, fixed: { spotId } } : first;
}

function drawJob(g: Draw, j: number, spots: readonly PlanSpot[], people: readonly PlanPerson[]): PlanJob {
  const lines = Array.from({ length: whole(g, 1, 4) }, (_, i) => drawLine(g, i));
  const last = lines.length - 1;
  if (last > 0 && oneIn(g, 4)) lines[0] = { ...(lines[0] as PlanLine), keepsBayUntil: `l${last}`, sublet: null };
  const spot = spots[j];
  const until = oneOf(g, [null, 'done' as const, { at: now + 20 * hour }, { lineId: 'l0' }]);
  const stands = spot !== undefined && oneIn(g, 2) ? { spotId: spot.spotId, staysUntil: until } : null;
  lines[0] = settleFirst(g, lines[0] as PlanLine, stands, until === null, people);
  return {
    jobId: `j${j}`,
    arrivesAt: now + whole(g, -10, 60) * hour,
    promisedAt: oneIn(g, 4) ? null : now + whole(g, 0, 150) * hour,
    weight: oneOf(g, [1, 2, 4]),
    massKg: oneOf(g, [null, 1_400, 2_900]),
    lengthMm: oneOf(g, [null, 4_500, 6_900]),
    heightMm: oneOf(g, [null, 1_500, 2_700]),
    stands,
    lines,
  };
}

function drawModel(g: Draw): PlanModel {
  const spots = Array.from({ length: whole(g, 1, 4) }, (_, s): PlanSpot => {
    const lift = oneIn(g, 2);
    return {
      spotId: `s${s}`,
      bayId: `b${s >> 1}`,
      equipment: lift ? ['lift', 'air'] : ['air'],
      ratedKg: lift ? 2_500 : null,
      longestMm: oneIn(g, 3) ? 6_000 : null,
      highestMm: oneIn(g, 3) ? 2_500 : null,
      open: oneIn(g, 8) ? null : subtract(open, outage(g)),
    };
  });
  const people = Array.from({ length: whole(g, 1, 4) }, (_, p): PlanPerson => ({
    personId: `p${p}`,
    skills: oneIn(g, 2) ? ['highVoltage'] : [],
    homeBayId: oneIn(g, 2) ? 'b0' : null,
    open: subtract(open, outage(g)),
  }));
  const jobs = Array.from({ length: whole(g, 1, 6) }, (_, j) => drawJob(g, j, spots, people));
  const share = oneOf(g, [0, 0.15]);
  return { now, horizon: end, days, freeShare: share, moveMinutes: oneOf(g, [0, 10]), spots, people, jobs };
}

const usable = (g: Draw) => {
  const model = drawModel(g);
  fc.pre(faultsInModel(model).length === 0);
  return model;
};

describe('plans of random shops', () => {
  // 17 and 53 draw shops in which a vehicle that has to stay meets a fixed start in the only bay that suits.
  it.each([17, 53])(
    'pass the independent checker, first to last, and their value never rises (drawn from %d)',
    (drawn) => {
      fc.assert(
        fc.property(fc.gen(), fc.integer(), (g, seed) => {
          const model = usable(g);
          const run = planner(model, seed);
          const order = { promised: model.jobs.some((job) => job.promisedAt !== null), disturbanceMinutes: 0 };
          let before = run.step(0);
          expect(checkPlan(model, before.plan)).toEqual([]);
          for (let i = 0; i < 3; i += 1) {
            const next = run.step(60);
            expect(checkPlan(model, next.plan)).toEqual([]);
            expect(compareValues(next.value, before.value, order)).toBeLessThanOrEqual(0);
            before = next;
          }
          const bound = run.bound();
          if (before.value.unplaced === 0) {
            expect(bound.weightedTardinessMinutes).toBeLessThanOrEqual(before.value.weightedTardinessMinutes + 0.01);
            expect(bound.finishMinutes).toBeLessThanOrEqual(before.value.finishMinutes + 0.01);
          }
        }),
        { numRuns: 80, seed: drawn },
      );
    },
  );

  it('are the same for the same seed and number of steps, in however many portions', () => {
    fc.assert(
      fc.property(fc.gen(), fc.integer(), (g, seed) => {
        const model = usable(g);
        const whole = planner(model, seed).step(150);
        const portions = planner(model, seed);
        portions.step(70);
        expect(portions.step(80)).toEqual(whole);
      }),
      { numRuns: 25, seed: 1 },
    );
  });

  it('pass the checker when they are made again later with other facts', () => {
    fc.assert(
      fc.property(fc.gen(), fc.integer(), (g, seed) => {
        const model = usable(g);
        const plan = planner(model, seed).step(60).plan;
        const later = { ...model, jobs: model.jobs.slice(1), people: [...model.people].reverse() };
        fc.pre(faultsInModel(later).length === 0);
        const before = { plan, disturbanceMinutes: 15, toleranceMinutes: 60 };
        const again = planner(later, seed, { before }).step(60).plan;
        expect(checkPlan(later, again)).toEqual([]);
      }),
      { numRuns: 30, seed: 1 },
    );
  });
});
