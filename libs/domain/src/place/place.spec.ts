import { describe, expect, it } from '@jest/globals';
import type { TakeIntoBay } from '../inputs.js';
import { type Given, given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { moveToYard } from './move-to-yard.js';
import { recordRolls } from './record-rolls.js';
import { takeIntoBay } from './take-into-bay.js';

const van = (vehicle: Parameters<Given['vehicle']>[1] = {}, spec: Parameters<Given['bay']>[1] = {}) =>
  given().shop().bay('b1', spec).bay('b2').vehicle('v1', vehicle).job('j1').inYard();
const other = (rows: Given) => rows.vehicle('v2').job('j2', { number: 7 }).inBay('b1');

const take = (rows: Rows, input: Partial<TakeIntoBay> = {}, said: GivenCircumstances = {}) =>
  carryOut(takeIntoBay, rows, { jobId: 'j1', bayId: 'b1', ...input }, { by: 'technician', ...said });
const seen = (rows: Rows, input: Partial<TakeIntoBay> = {}, said: GivenCircumstances = {}) =>
  take(rows, { alreadyThere: true, ...input }, said);
const flags = (rows: Rows) => rows.list('flag').map((one) => one.rule);
const placesOf = (rows: Rows) => rows.list('place').map((one) => [one.kind, one.fromAt, one.toAt]);

describe('takeIntoBay, intended', () => {
  it('ends the place before and uses the lowest free spot from now on', () => {
    const given = other(van({}, { spots: 2 }));
    const { rows, outcome } = take(given.rows(), { placeId: 'p9' }, { effectiveAt: tuesdayTen - hour });
    expect(rows.get('place', 'j1-yard').toAt).toBe(tuesdayTen);
    expect(rows.get('place', 'p9')).toMatchObject({
      kind: 'bay',
      bayId: 'b1',
      spot: 2,
      fromAt: tuesdayTen,
      toAt: null,
    });
    expect(rows.list('spotUse', (use) => use.vehicleId === 'v1')).toMatchObject([
      { bayId: 'b1', spot: 2, kind: 'stands', fromAt: tuesdayTen, toAt: null },
    ]);
    expect(outcome?.created).toEqual({ place: 'p9' });
    expect(rows.list('report')).toEqual([]);
  });

  it('frees the spot it leaves, and clocks run on', () => {
    const rows = given().shop().bay('b1').bay('b2').vehicle('v1').job('j1').line('l1').clock('c1').inBay('b2').rows();
    const after = take(rows).rows;
    expect(after.get('spotUse', 'j1-b2-use').toAt).toBe(tuesdayTen);
    expect(after.get('clock', 'c1').toAt).toBeNull();
  });

  it('refuses a spot that is taken, naming the job and since when (rule 1)', () => {
    const { codes, refusedFor } = take(other(van()).rows());
    expect(codes).toEqual(['place.spotTaken']);
    expect(refusedFor).toEqual({ spot: 1, jobNumber: 7, since: new Date(opening).toISOString() });
  });

  it('refuses a spot that is kept for a vehicle on the road', () => {
    const rows = van().vehicle('v2').job('j2').inBay('b1', { kind: 'roadTest' }, { kind: 'kept' }).rows();
    expect(take(rows).codes).toEqual(['place.spotTaken']);
  });

  it('takes a spot that the vehicle before has left', () => {
    const rows = van().vehicle('v2').job('j2').inBay('b1', { toAt: tuesdayTen }).rows();
    expect(take(rows).codes).toEqual([]);
  });

  it('refuses the spot that it stands in, and moves it to the next one', () => {
    const rows = given().shop().bay('b1', { spots: 2 }).vehicle('v1').job('j1').inBay('b1').rows();
    expect(take(rows).codes).toEqual(['place.thisSpot']);
    expect(take(rows, { spot: 2 }).codes).toEqual([]);
  });

  it('refuses a spot that the bay has not, a bay that is no more, and one out of use', () => {
    expect(take(van().rows(), { spot: 2 }).codes).toEqual(['place.noSuchSpot']);
    expect(take(van().but('bay', 'b1', { endedOn: '2026-03-10' }).rows()).codes).toEqual(['place.bayEnded']);
    expect(take(van().but('bay', 'b1', { endedOn: '2026-03-11' }).rows()).codes).toEqual([]);
    expect(take(van({}, { outOfUse: true }).rows()).codes).toEqual(['place.bayOutOfUse']);
    const lift = { kind: 'twoPostLift', inUse: false, grips: 'points' } as const;
    expect(take(van({}, { equipment: [lift] }).rows()).codes).toEqual(['place.bayOutOfUse']);
    const floor = { kind: 'flat', inUse: true, grips: null } as const;
    expect(take(van({ curbKg: 9000 }, { equipment: [lift, floor] }).rows()).codes).toEqual([]);
  });

  it('refuses what does not roll, unless somebody is named who moved it on dollies or towed it (rule 3)', () => {
    const rows = van({ rolls: false }).rows();
    expect(take(rows).codes).toEqual(['place.doesNotRoll']);
    expect(take(rows, { movedHow: 'dollies' }).codes).toEqual(['place.doesNotRoll']);
    expect(take(rows, { movedHow: 'rolled', movedByName: 'Ada' }).codes).toEqual(['place.doesNotRoll']);
    expect(take(rows, { movedHow: 'dollies', movedByName: 'Ada' }).codes).toEqual([]);
    expect(take(rows, { movedHow: 'towed', movedByName: 'Ada' }).codes).toEqual([]);
  });

  it('refuses against each caution that forbids the move, with the caution as the way out', () => {
    const tagged = take(van().caution('t1', { code: 'doNotMove' }).caution('t2', { code: 'onStands' }).rows());
    expect(tagged.refusals).toEqual([
      {
        code: 'caution.forbids',
        facts: { cautionId: 't1', code: 'doNotMove', act: 'moveRolling' },
        way: { table: 'caution', id: 't1' },
      },
      {
        code: 'caution.forbids',
        facts: { cautionId: 't2', code: 'onStands', act: 'moveRolling' },
        way: { table: 'caution', id: 't2' },
      },
    ]);
    expect(take(van().caution('t1', { code: 'doNotMove', endedAt: opening }).rows()).codes).toEqual([]);
    const still = van().caution('t1', { code: 'doNotStart' }).rows();
    expect(take(still, { movedHow: 'driven' }).codes).toEqual(['caution.forbids']);
    expect(take(still).codes).toEqual([]);
  });

  it('moves what has its brakes open on dollies or towed by name, and no other way', () => {
    const rows = van().caution('t1', { code: 'brakesOpen' }).rows();
    expect(take(rows, { movedHow: 'towed' }).codes).toEqual(['caution.forbids']);
    expect(take(rows, { movedHow: 'towed', movedByName: 'Ada' }).codes).toEqual([]);
  });

  it('refuses above the rating of the lift in pounds, with no override (rule 4)', () => {
    const rows = van({ curbKg: 3176 }, { capacity: '7000', capacityUnit: 'lb' }).rows();
    const { codes, refusedFor } = take(rows, { loaded: false }, { by: 'owner' });
    expect(codes).toEqual(['place.aboveCapacity']);
    expect(refusedFor).toEqual({ massKg: 3176, capacityKg: 3175 });
    expect(take(van({ curbKg: 3175 }, { capacity: '7000', capacityUnit: 'lb' }).rows()).codes).toEqual([]);
  });

  it('asks whether it is loaded, and keeps the answer with who gave it (rule 4)', () => {
    const rows = van({ grossKg: 3500 }).rows();
    expect(take(rows).codes).toEqual(['place.loadAsked']);
    expect(take(rows, { loaded: true }).codes).toEqual(['place.loadWeightAsked']);
    const place = take(rows, { placeId: 'p9', loaded: true, loadKg: 300 }).rows.get('place', 'p9');
    expect(place).toMatchObject({ loaded: true, loadKg: 300, loadAnsweredById: 'technician' });
  });

  it('says every reason at once', () => {
    const rows = other(van({ rolls: false, curbKg: 4000 }, { outOfUse: true })).rows();
    const all = ['place.spotTaken', 'place.bayOutOfUse', 'place.doesNotRoll', 'place.aboveCapacity'];
    expect(take(rows).codes).toEqual(all);
  });

  it('refuses after the visit, unknown rows, and an id in use', () => {
    const gone = van()
      .but('job', 'j1', { endedAt: opening + hour })
      .rows();
    expect(take(gone).codes).toEqual(['place.jobEnded']);
    expect(take(van().rows(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(take(van().rows(), { bayId: 'b9' }).codes).toEqual(['row.notFound']);
    expect(take(van().but('job', 'j1', { void: true }).rows()).codes).toEqual(['row.notFound']);
    expect(take(van().rows(), { placeId: 'j1-yard' }).codes).toEqual(['place.alreadyRecorded']);
  });
});

describe('takeIntoBay, seen there already', () => {
  it('is recorded from when it happened, with its report', () => {
    const { rows, outcome } = seen(van().rows(), { movedByName: 'Ada' }, { effectiveAt: tuesdayTen - hour });
    expect(placesOf(rows)).toEqual([
      ['yard', opening, tuesdayTen - hour],
      ['bay', tuesdayTen - hour, null],
    ]);
    expect(rows.get('report', outcome?.created?.['report'] ?? '')).toMatchObject({
      kind: 'takeIntoBay',
      state: 'settled',
      effectiveAt: tuesdayTen - hour,
      said: { jobId: 'j1', bayId: 'b1', alreadyThere: true, movedByName: 'Ada' },
    });
    expect(flags(rows)).toEqual([]);
  });

  it('is never put before the last place of the vehicle', () => {
    const { rows } = seen(van().rows(), {}, { effectiveAt: opening - hour });
    expect(placesOf(rows)).toEqual([
      ['yard', opening, opening + 1],
      ['bay', opening + 1, null],
    ]);
  });

  it.each<[string, () => Given, Partial<TakeIntoBay>]>([
    ['place.movedNotRolling', () => van({ rolls: false }), {}],
    ['place.bayOutOfUse', () => van({}, { outOfUse: true }), {}],
    ['place.bayOutOfUse', () => van().but('bay', 'b1', { endedOn: '2026-01-01' }), {}],
    ['place.aboveCapacity', () => van({ curbKg: 3001 }), {}],
    ['place.loadNotAsked', () => van({ grossKg: null }), {}],
    ['place.loadNotAsked', () => van({ grossKg: 3500 }), { loaded: true }],
    ['work.againstCaution', () => van().caution('t1', { code: 'doNotMove' }), {}],
    ['work.againstCaution', () => van().caution('t1', { code: 'doNotStart' }), { movedHow: 'driven' }],
  ])('is recorded and flagged %s', (rule, rows, input) => {
    const after = seen(rows().rows(), input).rows;
    expect(flags(after)).toEqual([rule]);
    expect(after.list('place', (place) => place.kind === 'bay')).toHaveLength(1);
  });

  it('waits as a card where another vehicle has the spot (rule 1), flagged all the same', () => {
    const { rows, outcome } = seen(other(van({ rolls: false })).rows(), {}, { effectiveAt: tuesdayTen - hour });
    expect(rows.get('report', outcome?.created?.['report'] ?? '')).toMatchObject({
      state: 'contested',
      against: ['j2-b1-use'],
      effectiveAt: tuesdayTen - hour,
      settledAt: null,
    });
    expect(rows.list('place', (place) => place.jobId === 'j1')).toMatchObject([{ kind: 'yard', toAt: null }]);
    expect(rows.list('spotUse')).toHaveLength(1);
    expect(flags(rows)).toEqual(['place.movedNotRolling']);
  });

  it('waits as a card where another vehicle had the spot for a while after that time', () => {
    const rows = van()
      .vehicle('v2')
      .job('j2')
      .inBay('b1', { fromAt: tuesdayTen - hour, toAt: tuesdayTen - minute });
    const { outcome } = seen(rows.rows(), {}, { effectiveAt: tuesdayTen - 2 * hour + minute });
    expect(outcome?.facts['contested']).toBe(true);
  });

  it('waits as a card after the visit has ended', () => {
    const { outcome, rows } = seen(
      van()
        .but('job', 'j1', { endedAt: opening + hour })
        .rows(),
    );
    expect(outcome?.facts['contested']).toBe(true);
    expect(rows.list('place')).toHaveLength(1);
  });

  it('changes nothing where it is known to stand, but keeps the report', () => {
    const rows = given().shop().bay('b1', { outOfUse: true }).vehicle('v1').job('j1').inBay('b1').rows();
    const after = seen(rows).rows;
    expect(after.list('report')).toMatchObject([{ state: 'settled' }]);
    expect([after.list('place').length, flags(after)]).toEqual([1, []]);
  });

  it('still refuses a spot that does not exist', () => {
    expect(seen(van().rows(), { spot: 3 }).codes).toEqual(['place.noSuchSpot']);
  });
});

describe('moveToYard', () => {
  const inBay = () => given().shop().bay('b1').vehicle('v1').job('j1').inBay('b1');
  const yard = (rows: Rows, said: GivenCircumstances = {}) =>
    carryOut(moveToYard, rows, { jobId: 'j1', placeId: 'y9', yardSpot: '4' }, { by: 'technician', ...said });

  it('frees the spot from when it happened, with its report', () => {
    const { rows } = yard(inBay().rows(), { effectiveAt: tuesdayTen - minute });
    expect(rows.get('spotUse', 'j1-b1-use').toAt).toBe(tuesdayTen - minute);
    expect(rows.get('place', 'y9')).toMatchObject({
      kind: 'yard',
      yardSpot: '4',
      fromAt: tuesdayTen - minute,
      spot: null,
    });
    expect(rows.list('report')).toMatchObject([{ kind: 'moveToYard', state: 'settled' }]);
  });

  it('is never refused, only flagged, against rule 3 and the tag', () => {
    const rows = inBay().but('vehicle', 'v1', { rolls: false }).caution('t1', { code: 'doNotMove' }).rows();
    expect(flags(yard(rows).rows)).toEqual(['place.movedNotRolling', 'work.againstCaution']);
  });

  it('is kept as a card after the visit has ended', () => {
    const { rows } = yard(
      inBay()
        .but('job', 'j1', { endedAt: opening + hour })
        .rows(),
    );
    expect(rows.list('report')).toMatchObject([{ state: 'contested' }]);
    expect(rows.find('place', 'y9')).toBeUndefined();
  });

  it('refuses an unknown job and an id in use', () => {
    expect(yard(given().shop().rows()).codes).toEqual(['row.notFound']);
    expect(
      yard(
        inBay()
          .inYard({ id: 'y9', toAt: opening + 1 })
          .rows(),
      ).codes,
    ).toEqual(['place.alreadyRecorded']);
  });
});

describe('recordRolls', () => {
  it('records both facts, neither, one, or both', () => {
    const input = { vehicleId: 'v1', rolls: false, mayBeDriven: true };
    const { rows, outcome } = carryOut(recordRolls, van().rows(), input);
    expect(rows.get('vehicle', 'v1')).toMatchObject({ rolls: false, mayBeDriven: true, version: 2 });
    expect(outcome?.facts).toEqual({ vehicleId: 'v1', jobId: 'j1', rolls: false, mayBeDriven: true });
    expect(carryOut(recordRolls, van().rows(), { ...input, vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
  });
});
