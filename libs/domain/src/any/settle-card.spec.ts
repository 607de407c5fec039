import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { moveToYard } from '../place/move-to-yard.js';
import { returnFromRoadTest, takeOnRoadTest } from '../place/road-test.js';
import { takeIntoBay } from '../place/take-into-bay.js';
import { carryOut } from '../settle/carry-out.js';
import { clocksOfPerson, placesOfVehicle, usesOfSpot } from '../timeline/lanes.js';
import { overlap, type Span } from '../timeline/timeline.js';
import { finishLine } from '../work/end-line.js';
import { startWork } from '../work/start-work.js';
import { stopWork } from '../work/stop-work.js';
import { settleCard } from './settle-card.js';

const nine = opening + hour;
/** v2 stands in bay 1 since 08:00; at 10:00 the technician reports that v1 stands there since 09:00. */
const twoInBay = () =>
  given().shop().bay('b1').bay('b2').vehicle('v1').job('j1').inYard().vehicle('v2').job('j2').inBay('b1');
const seen = (rows: Rows, spot?: number) =>
  carryOut(
    takeIntoBay,
    rows,
    { jobId: 'j1', bayId: 'b1', alreadyThere: true, placeId: 'p9', ...(spot ? { spot } : {}) },
    { by: 'technician', effectiveAt: nine },
  ).rows.fork();
const cardOf = (rows: Rows) => rows.list('report', (one) => one.state === 'contested')[0]?.id ?? '';
const settle = (rows: Rows, take: boolean, said: GivenCircumstances = {}) =>
  carryOut(settleCard, rows, { reportId: cardOf(rows), take, words: 'Looked' }, { now: tuesdayTen + minute, ...said });
const stays = (rows: Rows, vehicleId: string) =>
  placesOfVehicle(rows, vehicleId)
    .sort((a, b) => a.fromAt - b.fromAt)
    .map((one) => [one.kind, one.fromAt, one.toAt]);
const uses = (rows: Rows) =>
  usesOfSpot(rows, 'b1', 1)
    .sort((a, b) => a.fromAt - b.fromAt)
    .map((one) => [one.vehicleId, one.fromAt, one.toAt]);

function disjoint(lane: readonly Span[]): boolean {
  return lane.every((one, at) => lane.slice(at + 1).every((other) => !overlap(one, other)));
}

describe('settleCard', () => {
  it('leaves what stands, with words and who said so', () => {
    const { rows } = settle(seen(twoInBay().rows()), false);
    expect(rows.list('report')).toMatchObject([
      { state: 'dismissed', settledAt: tuesdayTen + minute, settledById: 'manager', settledWords: 'Looked' },
    ]);
    expect(uses(rows)).toEqual([['v2', opening, null]]);
  });

  it('takes a stay: the other vehicle left when it began, and stood in the yard from then on', () => {
    const { rows, outcome } = settle(seen(twoInBay().rows()), true);
    expect(uses(rows)).toEqual([
      ['v2', opening, nine],
      ['v1', nine, null],
    ]);
    expect(stays(rows, 'v1')).toEqual([
      ['yard', opening, nine],
      ['bay', nine, null],
    ]);
    expect(stays(rows, 'v2')).toEqual([
      ['bay', opening, nine],
      ['yard', nine, null],
    ]);
    expect(rows.list('report')).toMatchObject([{ state: 'settled', settledById: 'manager' }]);
    expect(outcome?.created).toEqual({ place: 'p9' });
  });

  it('voids the other stay where that began later', () => {
    const rows = twoInBay()
      .but('place', 'j2-b1', { fromAt: nine + minute })
      .but('spotUse', 'j2-b1-use', { fromAt: nine + minute });
    const after = settle(seen(rows.rows()), true).rows;
    expect(after.get('spotUse', 'j2-b1-use').void).toBe(true);
    expect(stays(after, 'v2')).toEqual([['yard', nine + minute, null]]);
  });

  it('frees the spot that the vehicle was thought to stand in', () => {
    const rows = given()
      .shop()
      .bay('b1')
      .bay('b2')
      .vehicle('v1')
      .job('j1')
      .inBay('b2')
      .vehicle('v2')
      .job('j2')
      .inBay('b1');
    const after = settle(seen(rows.rows()), true).rows;
    expect(usesOfSpot(after, 'b2', 1)).toMatchObject([{ vehicleId: 'v1', fromAt: opening, toAt: nine }]);
  });

  it('keeps what was settled about the vehicle after the report', () => {
    const reported = seen(twoInBay().rows());
    const later = tuesdayTen + minute;
    const moved = carryOut(takeIntoBay, reported, { jobId: 'j1', bayId: 'b2' }, { now: later }).rows.fork();
    const { rows } = settle(moved, true, { now: later + minute });
    expect(stays(rows, 'v1')).toEqual([
      ['yard', opening, nine],
      ['bay', nine, later],
      ['bay', later, null],
    ]);
    expect(uses(rows)).toEqual([
      ['v2', opening, nine],
      ['v1', nine, later],
      ['v2', later, null],
    ]);
  });

  it('keeps the spot of a vehicle on the road apart from its place', () => {
    const rows = twoInBay().but('place', 'j2-b1', { kind: 'roadTest' }).but('spotUse', 'j2-b1-use', { kind: 'kept' });
    const after = settle(seen(rows.rows()), true).rows;
    expect(stays(after, 'v2')).toEqual([['roadTest', opening, null]]);
    expect(uses(after)[0]).toEqual(['v2', opening, nine]);
  });

  it('takes a clock: the other one ended when it began, and the lines say so', () => {
    const rows = given()
      .shop()
      .vehicle('v1')
      .job('j1')
      .line('l1')
      .line('l2', { progress: 'started', startedAt: opening });
    const input = { lineId: 'l1', clockId: 'c9', alreadyStarted: true };
    const said = { by: 'technician', effectiveAt: nine } as const;
    const reported = carryOut(startWork, rows.clock('c1').rows(), input, said).rows.fork();
    const after = settle(reported, true, { by: 'technician' }).rows;
    expect(after.get('clock', 'c1').toAt).toBe(nine);
    expect(after.get('clock', 'c9')).toMatchObject({ lineId: 'l1', personId: 'technician', fromAt: nine, toAt: null });
    expect(after.get('workLine', 'l1')).toMatchObject({ progress: 'started', startedAt: nine });
    expect(after.get('workLine', 'l2').progress).toBe('stopped');
    const done = carryOut(finishLine, reported, { lineId: 'l1', words: 'Done' }).rows.fork();
    expect(settle(done, true).codes).toEqual(['card.lineEnded']);
    expect(settle(done, false).codes).toEqual([]);
  });

  it('is a technician’s own to settle, else for manager and owner', () => {
    const reported = seen(twoInBay().rows());
    const second = { personId: 'second', name: 'The second', roles: ['technician'] } as const;
    expect(settle(reported, true, { by: second }).codes).toEqual(['card.notYours']);
    expect(settle(reported, true, { by: 'technician' }).codes).toEqual([]);
    expect(settle(reported, true, { by: 'owner' }).codes).toEqual([]);
  });

  it('is settled once', () => {
    const reported = seen(twoInBay().rows());
    const reportId = cardOf(reported);
    const once = settle(reported, true).rows.fork();
    const again = carryOut(settleCard, once, { reportId, take: false, words: 'No' });
    expect([again.codes, again.refusedFor]).toEqual([['card.settled'], { state: 'settled' }]);
    expect(carryOut(settleCard, once, { reportId: 'x', take: false, words: 'No' }).codes).toEqual(['row.notFound']);
  });

  it('is only left, no longer taken, once the vehicle has gone or the very time is settled otherwise', () => {
    const reported = seen(twoInBay().rows());
    const left = reported.fork();
    left.change('job', 'j1', { endedAt: tuesdayTen });
    expect(settle(left, true).codes).toEqual(['card.jobEnded']);
    expect(settle(left, false).codes).toEqual([]);
    const other = reported.fork();
    other.change('place', 'j1-yard', { toAt: nine });
    other.add('place', { ...other.get('place', 'j1-yard'), id: 'p8', fromAt: nine, toAt: null });
    expect(settle(other, true).codes).toEqual(['card.overtaken']);
  });

  it('leaves no two vehicles in a spot and no person on two clocks, whatever is reported, moved and settled', () => {
    const act = fc.record({
      what: fc.constantFrom('take', 'seen', 'yard', 'start', 'begun', 'stop', 'settle', 'leave'),
      vehicle: fc.constantFrom('1', '2', '3'),
      bay: fc.constantFrom('b1', 'b2'),
      spot: fc.constantFrom(undefined, 1),
      ago: fc.integer({ min: 0, max: 90 }),
    });
    fc.assert(
      fc.property(fc.array(act, { maxLength: 30 }), (acts) => {
        let rows = given().shop().bay('b1').bay('b2');
        for (const n of ['1', '2', '3']) rows = rows.vehicle(`v${n}`).job(`j${n}`).inYard().line(`l${n}`);
        let bag = rows.rows();
        for (const [step, { what, vehicle, bay, spot, ago }] of acts.entries()) {
          const now = tuesdayTen + step * minute;
          const said = { now, effectiveAt: now - ago * minute, by: 'technician' } as const;
          const stay = { jobId: `j${vehicle}`, bayId: bay, spot };
          const line = { lineId: `l${vehicle}` };
          const running = clocksOfPerson(bag, 'technician').find((one) => one.toAt === null);
          const before = bag.list('report').length;
          const after = {
            take: () => carryOut(takeIntoBay, bag, stay, said),
            seen: () => carryOut(takeIntoBay, bag, { ...stay, alreadyThere: true }, said),
            yard: () => carryOut(moveToYard, bag, { jobId: `j${vehicle}` }, said),
            start: () => carryOut(startWork, bag, line, said),
            begun: () => carryOut(startWork, bag, { ...line, alreadyStarted: true }, said),
            stop: () => carryOut(stopWork, bag, { clockId: running?.id ?? '' }, said),
            settle: () => settle(bag, true, said),
            leave: () => settle(bag, false, said),
          }[what]();
          bag = after.rows;
          if (what === 'seen' || what === 'yard' || what === 'begun') {
            expect(after.codes).toEqual([]);
            expect(bag.list('report').length).toBe(before + 1);
          }
          const spots = ['b1', 'b2'].map((one) => usesOfSpot(bag, one, 1));
          const places = ['v1', 'v2', 'v3'].map((one) => placesOfVehicle(bag, one));
          expect([...spots, ...places, clocksOfPerson(bag, 'technician')].every(disjoint)).toBe(true);
          for (const lane of places) {
            expect(lane.filter((one) => one.toAt === null)).toHaveLength(1);
            for (const one of lane.filter((stay) => stay.kind === 'bay')) {
              const same = bag.list('spotUse', (use) => use.vehicleId === one.vehicleId && use.fromAt === one.fromAt);
              expect(same).toMatchObject([{ bayId: one.bayId, spot: one.spot, toAt: one.toAt }]);
            }
          }
        }
      }),
    );
  });
});

describe('settleCard for a road test', () => {
  const settle = (rows: Rows) =>
    carryOut(settleCard, rows.fork(), { reportId: cardOf(rows), take: true, words: 'So it was' }, { by: 'manager' });
  const kept = (rows: Rows) => rows.list('spotUse', (use) => use.kind === 'kept');

  it('that began while the vehicle was thought to be at another firm: it went out then, its spot kept', () => {
    const away = given()
      .shop()
      .bay('b1')
      .vehicle('v1')
      .job('j1')
      .inBay('b1', { toAt: nine }, { toAt: tuesdayTen - 1 });
    const known = away.place('away', { kind: 'away', fromAt: nine }).rows();
    const out = { jobId: 'j1', keepSpot: true, alreadyOut: true, placeId: 'out' };
    const said = carryOut(takeOnRoadTest, known, out, { by: 'technician', effectiveAt: nine + minute }).rows;
    const { rows, codes } = settle(said);
    expect(codes).toEqual([]);
    expect(rows.get('place', 'away').toAt).toBe(nine + minute);
    expect(rows.get('place', 'out')).toMatchObject({ kind: 'roadTest', driverId: 'technician', fromAt: nine + minute });
    expect(kept(rows)).toMatchObject([{ bayId: 'b1', fromAt: nine + minute, toAt: null }]);
  });
  it('that ended though nobody had recorded its begin: it stood in the yard from then', () => {
    const known = given().shop().bay('b1').vehicle('v1').job('j1').inBay('b1').rows();
    const back = { jobId: 'j1', placeId: 'in', yardSpot: '4' };
    const said = carryOut(returnFromRoadTest, known, back, { by: 'technician', effectiveAt: nine }).rows;
    const { rows } = settle(said);
    expect(rows.get('place', 'in')).toMatchObject({ kind: 'yard', yardSpot: '4', fromAt: nine, toAt: null });
    expect(rows.get('spotUse', 'j1-b1-use').toAt).toBe(nine);
  });
  it('is overtaken by a place that was settled after the report', () => {
    const known = given().shop().bay('b1').vehicle('v1').job('j1').inBay('b1').rows();
    const said = carryOut(returnFromRoadTest, known, { jobId: 'j1' }, { by: 'technician', effectiveAt: nine }).rows;
    const moved = carryOut(moveToYard, said.fork(), { jobId: 'j1' }, { effectiveAt: nine }).rows;
    expect(settle(moved).codes).toEqual(['card.overtaken']);
  });
});
