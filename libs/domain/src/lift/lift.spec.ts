import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, tuesdayTen } from '../kernel/given.js';
import { recorded } from '../kernel/given-usual.js';
import type { Rows } from '../kernel/rows.js';
import { takeIntoBay } from '../place/take-into-bay.js';
import { inspectionDue, monthsOn, outOfUseByOutage } from '../questions/bay-use.js';
import { specOn } from '../questions/people-and-shop.js';
import { carryOut } from '../settle/carry-out.js';
import type { Row } from '../tables/tables.js';
import { allowOverdueLift, recordLiftInspection } from './inspections.js';
import { nameLiftingPoints } from './lifting-points.js';
import { putBackInUse, takeOutOfUse } from './outages.js';

const lift = { kind: 'twoPostLift', inUse: true, grips: 'points' } as const;
const pit = { kind: 'pit', inUse: true, grips: null } as const;
const shop = (spec: Parameters<Given['bay']>[1] = {}) => given().shop().bay('b1', spec);
const inspect = (rows: Rows, over: Partial<Parameters<typeof recordLiftInspection.decide>[1]> = {}) =>
  carryOut(
    recordLiftInspection,
    rows,
    { bayId: 'b1', inspectedOn: '2026-03-10', outcome: 'passed', ...over },
    { now: tuesdayTen + rows.list('liftInspection').length },
  );
const overdue = () => inspect(shop().rows(), { inspectedOn: '2025-01-15', intervalMonths: 12 }).rows;
const allow = (rows: Rows, untilDay = '2026-03-24') =>
  carryOut(allowOverdueLift, rows, { bayId: 'b1', untilDay, words: 'Inspector comes on Friday' });
const out = (rows: Rows, over: Partial<Parameters<typeof takeOutOfUse.decide>[1]> = {}, at = tuesdayTen) =>
  carryOut(takeOutOfUse, rows, { bayId: 'b1', words: 'Leaks', ...over }, { effectiveAt: at, by: 'technician' });

describe('an inspection of a lift', () => {
  it('is kept with the interval to the next, or the one followed before where none is said', () => {
    const first = inspect(shop().rows(), { inspectedOn: '2025-01-15', intervalMonths: 12, inspector: 'A. Stone' });
    const then = inspect(first.rows, { inspectedOn: '2026-01-10' });
    expect(then.rows.list('liftInspection')).toMatchObject([
      { inspectedOn: '2025-01-15', outcome: 'passed', intervalMonths: 12, inspector: 'A. Stone' },
      { inspectedOn: '2026-01-10', intervalMonths: 12, inspector: null },
    ]);
    expect(inspectionDue(then.rows, specOn(then.rows, 'b1', '2026-03-10'))?.dueOn).toBe('2027-01-10');
    const ofBay = inspect(shop({ inspectionIntervalMonths: 6 }).rows());
    expect(ofBay.rows.list('liftInspection')).toMatchObject([{ intervalMonths: 6 }]);
  });
  it('that failed takes the lift out of use, and the vehicle that stands there stays', () => {
    const there = shop().vehicle('v1').job('j1').inBay('b1').rows();
    const failed = inspect(there, { outcome: 'failed', words: 'Cable worn' });
    expect(failed.rows.list('outage')).toMatchObject([
      { bayId: 'b1', equipment: 'twoPostLift', words: 'Cable worn', fromAt: tuesdayTen, toAt: null },
    ]);
    expect(failed.rows.list('place')).toEqual(there.list('place'));
    expect(inspect(failed.rows, { outcome: 'failed' }).rows.list('outage')).toHaveLength(1);
  });
  it('that failed before a later one passed is kept and changes nothing', () => {
    const { rows, outcome } = inspect(inspect(shop().rows()).rows, { inspectedOn: '2026-02-01', outcome: 'failed' });
    expect(rows.list('liftInspection')).toHaveLength(2);
    expect(rows.list('outage')).toEqual([]);
    expect(outcome?.created?.['outage']).toBeUndefined();
  });
  it('belongs to a lift, has a day that has come, and an id of its own', () => {
    expect(inspect(shop({ equipment: [pit] }).rows()).codes).toEqual(['lift.noneInBay']);
    expect(inspect(shop().rows(), { inspectedOn: '2026-03-11' }).codes).toEqual(['lift.inspectedInFuture']);
    expect(inspect(shop().rows(), { bayId: 'b9' }).codes).toEqual(['row.notFound']);
    const once = inspect(shop().rows(), { inspectionId: 'i1' });
    expect(inspect(once.rows, { inspectionId: 'i1' }).codes).toEqual(['lift.alreadyRecorded']);
  });
  // ANSI/ALI ALOIM: at least annually. The anniversary itself is the last day in date; months are calendar months.
  it('counts to the same day of a later month, or to its last day', () => {
    expect(monthsOn('2025-11-25', 12)).toBe('2026-11-25');
    expect(monthsOn('2024-02-29', 12)).toBe('2025-02-28');
    expect(monthsOn('2025-08-31', 6)).toBe('2026-02-28');
    expect(monthsOn('2025-12-31', 1)).toBe('2026-01-31');
    expect(monthsOn('2025-12-31', 2)).toBe('2026-02-28');
  });
});

describe('the decision on an overdue inspection', () => {
  it('is one for each overdue inspection, with words and an end of at most 14 days', () => {
    const { rows, outcome } = allow(overdue());
    expect(rows.list('liftDecision')).toMatchObject([
      { bayId: 'b1', inspectedOn: '2025-01-15', untilDay: '2026-03-24', words: 'Inspector comes on Friday' },
    ]);
    expect(outcome?.facts).toEqual({ bayId: 'b1', untilDay: '2026-03-24' });
    expect(allow(rows, '2026-03-12').refusedFor).toEqual({ untilDay: '2026-03-24' });
    expect(allow(rows, '2026-03-12').codes).toEqual(['lift.decidedAlready']);
    expect(allow(overdue(), '2026-03-25').refusals).toMatchObject([
      { code: 'lift.endOutside', facts: { today: '2026-03-10', latest: '2026-03-24' } },
    ]);
    expect(allow(overdue(), '2026-03-09').codes).toEqual(['lift.endOutside']);
    const again = carryOut(allowOverdueLift, rows, {
      decisionId: rows.list('liftDecision')[0]?.id,
      bayId: 'b1',
      untilDay: '2026-03-11',
      words: 'w',
    });
    expect(again.codes).toEqual(['lift.alreadyRecorded']);
  });
  it('is asked for only where one is overdue and did not fail', () => {
    expect(allow(shop().rows()).refusals).toMatchObject([{ code: 'lift.notOverdue', facts: { dueOn: null } }]);
    const inDate = inspect(shop().rows(), { inspectedOn: '2025-03-10', intervalMonths: 12 });
    expect(allow(inDate.rows).refusedFor).toEqual({ dueOn: '2026-03-10' });
    expect(allow(inspect(overdue(), { outcome: 'failed' }).rows).codes).toEqual(['lift.failed']);
    expect(allow(shop({ equipment: [pit] }).rows()).codes).toEqual(['lift.noneInBay']);
    expect(carryOut(allowOverdueLift, overdue(), { bayId: 'b9', untilDay: '2026-03-11', words: 'w' }).codes).toEqual([
      'row.notFound',
    ]);
  });
  it('may be made anew when the next inspection is overdue', () => {
    const next = inspect(allow(overdue()).rows, { inspectedOn: '2025-02-20', intervalMonths: 12 });
    expect(allow(next.rows).codes).toEqual([]);
  });
});

describe('out of use', () => {
  it('is a fact from when it was seen, for the bay or one piece of it, once', () => {
    const { rows } = out(shop({ equipment: [lift, pit] }).rows(), { equipment: 'pit' }, tuesdayTen - hour);
    expect(rows.list('outage')).toMatchObject([
      { equipment: 'pit', fromAt: tuesdayTen - hour, toAt: null, words: 'Leaks' },
    ]);
    expect(out(rows, { equipment: 'pit' }).refusals).toMatchObject([
      { code: 'outage.already', facts: { equipment: 'pit' }, way: { table: 'outage' } },
    ]);
    const whole = out(rows);
    expect(whole.codes).toEqual([]);
    expect(out(whole.rows).codes).toEqual(['outage.already']);
    expect(out(rows, { equipment: 'fourPostLift' }).codes).toEqual(['outage.noSuchEquipment']);
    expect(out(rows, { bayId: 'b9' }).codes).toEqual(['row.notFound']);
    expect(out(rows, { outageId: rows.list('outage')[0]?.id }).codes).toEqual(['lift.alreadyRecorded']);
  });
  it('refuses a bay that is out of use as a whole; one whose lift is out of use is a place to stand', () => {
    const van = shop().vehicle('v1', { curbKg: 9000 }).job('j1').inYard().rows();
    const take = (rows: Rows) => carryOut(takeIntoBay, rows, { jobId: 'j1', bayId: 'b1' }).codes;
    expect(take(van)).toEqual(['place.aboveCapacity']);
    expect(take(out(van, { equipment: 'twoPostLift' }).rows)).toEqual([]);
    const shut = out(van).rows;
    expect(take(shut)).toEqual(['place.bayOutOfUse', 'place.aboveCapacity']);
    const seen = carryOut(takeIntoBay, shut, { jobId: 'j1', bayId: 'b1', alreadyThere: true });
    expect(seen.rows.list('flag').map(({ rule }) => rule)).toEqual(['place.bayOutOfUse', 'place.aboveCapacity']);
  });
  it('ends by owner or manager, once, and not while the last inspection failed', () => {
    const taken = out(shop().rows(), { equipment: 'twoPostLift' });
    const outageId = taken.rows.list('outage')[0]?.id ?? '';
    const back = carryOut(putBackInUse, taken.rows, { outageId, words: 'Seal renewed' }, { now: tuesdayTen + hour });
    expect(back.rows.get('outage', outageId)).toMatchObject({ toAt: tuesdayTen + hour, endWords: 'Seal renewed' });
    expect(carryOut(putBackInUse, back.rows, { outageId }).codes).toEqual(['outage.over']);
    expect(carryOut(putBackInUse, back.rows, { outageId: 'o9' }).codes).toEqual(['row.notFound']);
    const failed = inspect(taken.rows, { outcome: 'failed' }).rows;
    expect(carryOut(putBackInUse, failed, { outageId }).codes).toEqual(['lift.failed']);
    expect(carryOut(putBackInUse, inspect(failed).rows, { outageId }).codes).toEqual([]);
  });
});

describe('the time that a bay is out of use by outages', () => {
  const outage = (id: string, equipment: Row<'outage'>['equipment'], fromAt: number, toAt: number | null) =>
    ({
      id,
      version: 1,
      void: false,
      ...recorded,
      bayId: 'b1',
      equipment,
      fromAt,
      toAt,
      words: 'w',
      endWords: null,
    }) as const;
  const spans = (equipment: Row<'baySpec'>['equipment'], ...outages: Row<'outage'>[]) =>
    outOfUseByOutage(outages, { bayId: 'b1', equipment });
  const other = { kind: 'scissorLift', inUse: true, grips: 'wheels' } as const;

  it('is that of the whole bay and that of the lift it is counted by', () => {
    expect(spans([lift, pit], outage('a', null, 10, 20), outage('b', 'twoPostLift', 15, 30))).toEqual([
      { from: 10, to: 30 },
    ]);
    expect(spans([lift, pit], outage('a', 'pit', 10, 20))).toEqual([]);
    expect(spans([lift], outage('a', 'twoPostLift', 10, null))).toEqual([{ from: 10, to: Infinity }]);
  });
  it('is that of all lifts together where there are several, and of all equipment where there is none', () => {
    expect(spans([lift, other], outage('a', 'twoPostLift', 10, 20))).toEqual([]);
    expect(spans([lift, other], outage('a', 'twoPostLift', 10, 20), outage('b', 'scissorLift', 15, null))).toEqual([
      { from: 15, to: 20 },
    ]);
    expect(spans([pit], outage('a', 'pit', 10, 20))).toEqual([{ from: 10, to: 20 }]);
  });
  it('leaves out what was taken back, and other bays', () => {
    expect(spans([lift], { ...outage('a', null, 10, 20), void: true })).toEqual([]);
    expect(spans([lift], { ...outage('a', null, 10, 20), bayId: 'b2' })).toEqual([]);
  });
});

describe('the lifting points of a visit', () => {
  const van = () => given().shop().vehicle('v1').job('j1', { number: 7 });
  const name = (rows: Rows) => carryOut(nameLiftingPoints, rows, { jobId: 'j1', words: 'Front points, rear beam' });

  it('are named where a caution asks for them, while the visit lasts', () => {
    const held = van().caution('x', { code: 'liftingPoint', standing: true, jobId: null });
    expect(name(held.rows()).rows.list('liftingPoints')).toMatchObject([
      { jobId: 'j1', vehicleId: 'v1', words: 'Front points, rear beam', byId: 'manager' },
    ]);
    expect(name(held.but('job', 'j1', { endedAt: tuesdayTen }).rows()).codes).toEqual(['place.jobEnded']);
    expect(name(van().caution('x', { code: 'noOil' }).rows()).codes).toEqual(['lift.noPointCaution']);
    expect(name(given().shop().rows()).codes).toEqual(['row.notFound']);
  });
});
