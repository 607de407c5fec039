import { describe, expect, it } from '@jest/globals';
import type { PlanJob, PlanLine, PlanModel } from './index.js';
import {
  adviseMovingOut,
  blockers,
  checkPlan,
  difference,
  explain,
  faultsInModel,
  planner,
  suppose,
  usualDisturbance,
  whatIf,
  worthOfEarlier,
} from './index.js';

const minute = 60_000;
const at = (minutes: number) => minutes * minute;
const effort = { seed: 1, steps: 1_500 };

function line(lineId: string, workMinutes: number, rest: Partial<PlanLine> = {}): PlanLine {
  const plain = { equipment: [], skills: [], people: 1 as const, toolIds: [], after: [], notBefore: [] };
  return { lineId, workMinutes, ...plain, sublet: null, keepsBayUntil: null, fixed: null, ...rest };
}

function job(jobId: string, promised: number, lines: readonly PlanLine[], rest: Partial<PlanJob> = {}): PlanJob {
  const vehicle = { massKg: 1_500, lengthMm: null, heightMm: null, stands: null };
  return { jobId, arrivesAt: 0, promisedAt: at(promised), weight: 2, ...vehicle, lines, ...rest };
}

/** Two bays, only the first with a lift; two people; open for 600 minutes. */
function shop(jobs: readonly PlanJob[]): PlanModel {
  const open = [{ from: 0, to: at(600) }];
  const spot = (spotId: string, equipment: readonly string[]) => ({
    ...{ spotId, bayId: spotId, equipment, ratedKg: equipment.length > 0 ? 2_000 : null },
    ...{ longestMm: null, highestMm: null, open },
  });
  const person = (personId: string) => ({ personId, skills: [], homeBayId: null, open });
  return {
    ...{ now: 0, horizon: at(600), days: [{ from: 0, to: at(1_440) }], freeShare: 0, moveMinutes: 5 },
    spots: [spot('lift', ['lift']), spot('flat', [])],
    people: [person('Rhona'), person('Iain')],
    jobs,
  };
}

describe('what a plan says of itself', () => {
  const held = job(
    'van',
    400,
    [line('bumper', 60, { equipment: ['lift'], notBefore: [{ reason: 'parts', at: at(300) }] })],
    {
      stands: { spotId: 'lift', staysUntil: null },
    },
  );
  const waiting = job('car', 90, [line('brakes', 80, { equipment: ['lift'] })], { weight: 4 });

  it('names the only bay that suits, with why the others do not, and what the start waited for', () => {
    const model = shop([held, waiting]);
    const { plan } = planner(model, 1).step(500);
    const said = explain(model, plan);
    const bumper = said.find((one) => one.lineId === 'bumper');
    expect(bumper?.then).toEqual({ code: 'notBefore', reason: 'parts', at: at(300) });
    const brakes = said.find((one) => one.lineId === 'brakes');
    expect(brakes?.here).toEqual({ code: 'onlySpot' });
    expect(brakes?.others).toEqual([{ spotId: 'flat', unsuited: { code: 'equipment', missing: ['lift'] } }]);
    expect(brakes?.then).toEqual({ code: 'atOnce' });
    expect(brakes?.thenMinutes).toBe(5);
  });

  it('says which bay late vehicles wait for', () => {
    const two = [waiting, job('taxi', 90, [line('hoses', 80, { equipment: ['lift'] })])];
    const model = shop(two);
    const { plan } = planner(model, 1).step(500);
    expect(blockers(model, plan)).toEqual([{ kind: 'spot', id: 'lift', weightedMinutes: 2 * 85 }]);
  });

  it('advises to move the held vehicle out of the lift and says what that gains and costs', () => {
    const [advice, ...rest] = adviseMovingOut(shop([held, waiting]), effort);
    expect(rest).toEqual([]);
    expect(advice).toMatchObject({ jobId: 'van', spotId: 'lift', heldUntil: at(300), bayMinutesFreed: 300 });
    // Staying, the van is worked on first, till 360; the car is done at 445 (promised 90, weight 4), or at 385 before the
    // van, which then is done at 450 (promised 400, weight 2). Moved out, the car is done at 85 and the van in time.
    expect(advice?.gainWeightedMinutes).toBe(4 * (385 - 90) + 2 * (450 - 400));
    // If it stays till 300, it is then moved out for the car all the same.
    expect(advice?.moreMoves).toBe(0);
  });

  it('says what an earlier part is worth in lift-hours and lateness', () => {
    const late = { ...held, promisedAt: at(200) };
    const wanted = { jobId: 'van', lineId: 'bumper', reason: 'parts', at: at(100) };
    const worth = worthOfEarlier(shop([late]), wanted, effort);
    expect(worth.gainWeightedMinutes).toBe(2 * 160);
    expect(worth.bayMinutesSaved).toBe(200);
  });
});

describe('planning again', () => {
  const jobs = ['a', 'b', 'c', 'd'].map((id) => job(id, 500, [line('work', 90)]));

  it('leaves everything as it was where nothing has changed', () => {
    const model = shop(jobs);
    const { plan } = planner(model, 3).step(800);
    const again = planner(model, 9, { before: { plan, ...usualDisturbance } }).step(800);
    expect(again.value.disturbedLines).toBe(0);
    expect(difference(model, plan, again.plan, usualDisturbance.toleranceMinutes).lines).toEqual([]);
  });

  it('moves only what a bay out of use touches, and says where it goes', () => {
    const model = shop(jobs);
    const { plan } = planner(model, 3).step(800);
    const supposed = whatIf(model, plan, { kind: 'bayOut', bayId: 'lift', from: 0, to: at(600) }, effort);
    expect(checkPlan(suppose(model, { kind: 'bayOut', bayId: 'lift', from: 0, to: at(600) }), supposed.plan)).toEqual(
      [],
    );
    const inLift = plan.lines.filter((one) => one.spotId === 'lift').map((one) => one.jobId);
    expect(inLift.length).toBeGreaterThan(0);
    const moved = supposed.difference.lines.filter((one) => one.otherSpot).map((one) => one.jobId);
    expect([...moved].sort()).toEqual([...inLift].sort());
    expect(supposed.difference.lines.every((one) => one.after?.spotId === 'flat')).toBe(true);
  });
});

describe('the checker', () => {
  const model = shop([
    job('a', 100, [line('first', 30), line('second', 30, { after: ['first'] })]),
    job('b', 100, [line('work', 40)]),
  ]);
  const { plan } = planner(model, 1).step(500);
  const codes = (lines: typeof plan.lines) => checkPlan(model, { ...plan, lines }).map((fault) => fault.code);
  const change = (lineId: string, to: Partial<(typeof plan.lines)[number]>) =>
    plan.lines.map((one) => (one.lineId === lineId ? { ...one, ...to } : one));

  it('finds each kind of fault that is put into a good plan', () => {
    expect(checkPlan(model, plan)).toEqual([]);
    expect(codes(plan.lines.slice(1))).toContain('lineMissing');
    expect(codes([...plan.lines, ...plan.lines])).toContain('lineTwice');
    expect(codes(change('work', { spotId: 'nowhere' }))).toContain('spotUnknown');
    expect(codes(change('work', { personIds: [] }))).toContain('peopleNumber');
    expect(codes(change('work', { to: at(50) }))).toContain('workTimeWrong');
    expect(codes(change('work', { from: at(0), to: at(40) }))).toContain('noTimeToMove');
    expect(codes(change('second', { from: at(5), to: at(35) }))).toContain('beforeItsTurn');
    expect(codes(change('second', { from: at(5), to: at(35) }))).toContain('vehicleTwice');
    const where = plan.lines.find((one) => one.lineId === 'first');
    expect(codes(change('work', { spotId: where?.spotId ?? null }))).toContain('spotTwice');
    expect(codes(change('work', { personIds: where?.personIds ?? [] }))).toContain('personTwice');
    expect(codes(change('work', { from: at(580), to: at(620) }))).toContain('beyondHorizon');
    const worth = { ...plan.value, moves: plan.value.moves + 1 };
    expect(checkPlan(model, { ...plan, value: worth }).map((fault) => fault.code)).toEqual(['valueWrong']);
  });
});

describe('a model that cannot be planned', () => {
  it('is refused with what is wrong', () => {
    const circle = shop([job('a', 100, [line('x', 10, { after: ['y'] }), line('y', 10, { after: ['x'] })])]);
    expect(faultsInModel(circle).map((fault) => fault.code)).toContain('linesInACircle');
    expect(() => planner(circle, 1)).toThrow(RangeError);
    const half = shop([job('a', 100, [line('x', 10.5)])]);
    expect(faultsInModel(half).map((fault) => fault.code)).toEqual(['noWholeMinutes']);
  });
});
