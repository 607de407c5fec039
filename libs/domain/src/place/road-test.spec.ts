import { describe, expect, it } from '@jest/globals';
import type { ReturnFromRoadTest, TakeOnRoadTest } from '../inputs.js';
import { type Given, given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { moveToYard } from './move-to-yard.js';
import { returnFromRoadTest, takeOnRoadTest } from './road-test.js';
import { takeIntoBay } from './take-into-bay.js';

const inBay = () => given().shop().bay('b1', { spots: 2 }).bay('b2').vehicle('v1').job('j1').inBay('b1', { spot: 2 });
const go = (story: Given | Rows, input: Partial<TakeOnRoadTest> = {}, said: GivenCircumstances = {}) =>
  carryOut(
    takeOnRoadTest,
    'rows' in story ? story.rows() : story.fork(),
    { jobId: 'j1', keepSpot: true, placeId: 'out', ...input },
    { by: 'technician', ...said },
  );
const back = (rows: Rows, input: Partial<ReturnFromRoadTest> = {}, said: GivenCircumstances = {}) =>
  carryOut(returnFromRoadTest, rows.fork(), { jobId: 'j1', placeId: 'in', ...input }, { by: 'technician', ...said });
const uses = (rows: Rows) => rows.list('spotUse').map((use) => [use.kind, use.bayId, use.spot, use.fromAt, use.toAt]);
const flags = (rows: Rows) => rows.list('flag').map((one) => one.rule);
const later = tuesdayTen + 30 * minute;

describe('takeOnRoadTest, intended', () => {
  it('is a place of its own, with driver and reading, and the spot is kept from then on', () => {
    const { rows, outcome } = go(inBay(), { odometerOut: 52_100, dueBackAt: later });
    expect(rows.get('place', 'j1-b1').toAt).toBe(tuesdayTen);
    expect(rows.get('place', 'out')).toMatchObject({
      kind: 'roadTest',
      driverId: 'technician',
      odometerOut: 52_100,
      odometerUnit: 'km',
      dueBackAt: later,
      movedHow: 'driven',
      fromAt: tuesdayTen,
      toAt: null,
      bayId: null,
    });
    expect(uses(rows)).toEqual([
      ['stands', 'b1', 2, opening, tuesdayTen],
      ['kept', 'b1', 2, tuesdayTen, null],
    ]);
    expect(rows.list('odometerReading')).toMatchObject([{ value: 52_100, source: 'read', jobId: 'j1' }]);
    expect(outcome?.facts).toMatchObject({ personId: 'technician', keepSpot: true, contested: false });
  });
  it('frees the spot where it is not to be kept; from the yard there is none to keep', () => {
    expect(uses(go(inBay(), { keepSpot: false }).rows)).toEqual([['stands', 'b1', 2, opening, tuesdayTen]]);
    const yard = given().shop().bay('b1').vehicle('v1').job('j1').inYard();
    expect(uses(go(yard).rows)).toEqual([]);
  });
  it('names another driver, who works here', () => {
    expect(go(inBay(), { driverId: 'second' }).rows.get('place', 'out').driverId).toBe('second');
    const left = inBay().but('person', 'second', { active: false });
    expect(go(left, { driverId: 'second' }).codes).toEqual(['place.driverLeft']);
    expect(go(inBay(), { driverId: 'nobody' }).codes).toEqual(['row.notFound']);
  });
  it('is refused for what does not roll or may not be driven, with every reason (rule 3)', () => {
    const stuck = inBay().but('vehicle', 'v1', { rolls: false, mayBeDriven: false }).caution('x').wheel('w1', '1L');
    expect(go(stuck).codes).toEqual(['place.doesNotRoll', 'place.mayNotBeDriven', 'caution.forbids', 'wheel.stillOff']);
  });
  it.each(['1L', '1R', '2LO', '2RI', 'spare'])('is refused while wheel %s has no torque record', (position) => {
    const off = () => inBay().wheel('w1', position);
    expect(go(off()).refusals).toEqual([
      {
        code: 'wheel.stillOff',
        facts: { wheelRecordId: 'w1', position },
        way: { table: 'wheelRecord', id: 'w1' },
      },
    ]);
    const on = off().but('wheelRecord', 'w1', { onAt: opening + hour });
    expect(go(on).codes).toEqual(['wheel.notTorqued']);
    expect(go(on.but('wheelRecord', 'w1', { torque: '120', torquedAt: opening + hour })).codes).toEqual([]);
  });
  it('is refused where it is out or away already, after the visit, and for an id in use', () => {
    const out = go(inBay()).rows;
    expect(go(out, { placeId: 'again' }).refusals).toMatchObject([
      { code: 'place.notHere', facts: { kind: 'roadTest' } },
    ]);
    expect(go(given().shop().vehicle('v1').job('j1')).refusals).toMatchObject([{ facts: { kind: null } }]);
    expect(go(inBay().but('job', 'j1', { endedAt: opening + hour })).codes).toEqual(['place.jobEnded']);
    expect(go(inBay(), { placeId: 'j1-b1' }).codes).toEqual(['place.alreadyRecorded']);
    expect(go(inBay(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
  });
});

describe('takeOnRoadTest, out already', () => {
  const out = (story: Given, said: GivenCircumstances = {}) => go(story, { alreadyOut: true }, said);

  it('is recorded from when it happened, and flagged for what stood against it', () => {
    const stuck = inBay()
      .but('vehicle', 'v1', { mayBeDriven: false })
      .caution('x')
      .wheel('w1', '1L', { onAt: opening });
    const { rows } = out(stuck, { effectiveAt: tuesdayTen - hour });
    expect(rows.get('place', 'out').fromAt).toBe(tuesdayTen - hour);
    expect(flags(rows)).toEqual(['place.drivenMayNot', 'work.againstCaution', 'place.againstWheel']);
    expect(rows.list('report')).toMatchObject([{ kind: 'takeOnRoadTest', state: 'settled', personId: 'technician' }]);
  });
  it('changes nothing where it is known to be out, but keeps the report', () => {
    const known = go(inBay()).rows;
    const { rows } = go(known, { alreadyOut: true, placeId: 'again' });
    expect(rows.find('place', 'again')).toBeUndefined();
    expect(rows.list('report')).toMatchObject([{ state: 'settled' }]);
  });
  it('waits as a card after the visit, and where the vehicle is known to be at another firm', () => {
    const over = out(inBay().but('job', 'j1', { endedAt: opening + hour }));
    expect(over.rows.list('report')).toMatchObject([{ state: 'contested' }]);
    const away = given().shop().vehicle('v1').job('j1').place('away', { kind: 'away' });
    expect(out(away).rows.list('report')).toMatchObject([{ state: 'contested', against: ['away'] }]);
  });
});

describe('while it is out', () => {
  it('its spot is taken for others and free for itself', () => {
    const rows = go(inBay().vehicle('v2').job('j2').inYard()).rows.fork();
    const other = { jobId: 'j2', bayId: 'b1', spot: 2 };
    expect(carryOut(takeIntoBay, rows, other, { now: later }).codes).toEqual(['place.spotTaken']);
    const own = carryOut(takeIntoBay, rows, { jobId: 'j1', bayId: 'b1' }, { now: later }).rows;
    expect(uses(own).slice(1)).toEqual([
      ['kept', 'b1', 2, tuesdayTen, later],
      ['stands', 'b1', 2, later, null],
    ]);
    expect(own.get('place', 'out').toAt).toBe(later);
  });
  it('a move to the yard ends the test and frees the spot', () => {
    const { rows } = carryOut(moveToYard, go(inBay()).rows.fork(), { jobId: 'j1' }, { now: later });
    expect([rows.get('place', 'out').toAt, uses(rows).at(-1)]).toEqual([later, ['kept', 'b1', 2, tuesdayTen, later]]);
  });
});

describe('returnFromRoadTest', () => {
  const out = () => go(inBay(), { odometerOut: 52_100 }).rows;

  it('stands in the spot that was kept, with the reading on the test', () => {
    const { rows } = back(out(), { intoKeptSpot: true, odometerIn: 52_112 }, { now: later });
    expect(rows.get('place', 'out')).toMatchObject({ odometerIn: 52_112, toAt: later });
    expect(rows.get('place', 'in')).toMatchObject({ kind: 'bay', bayId: 'b1', spot: 2, fromAt: later });
    expect(uses(rows).slice(1)).toEqual([
      ['kept', 'b1', 2, tuesdayTen, later],
      ['stands', 'b1', 2, later, null],
    ]);
    expect(rows.list('odometerReading').map((one) => one.value)).toEqual([52_100, 52_112]);
    expect(rows.list('report')).toMatchObject([{ kind: 'returnFromRoadTest', state: 'settled' }]);
  });
  it('stands in the yard else, and what was kept is free', () => {
    const { rows } = back(out(), { yardSpot: '4' }, { now: later });
    expect(rows.get('place', 'in')).toMatchObject({ kind: 'yard', yardSpot: '4' });
    expect(uses(rows).at(-1)).toEqual(['kept', 'b1', 2, tuesdayTen, later]);
  });
  it('is refused into a spot that was not kept', () => {
    expect(back(go(inBay(), { keepSpot: false }).rows, { intoKeptSpot: true }, { now: later }).codes).toEqual([
      'place.spotNotKept',
    ]);
  });
  it('waits as a card where nobody had recorded that it was out, and after the visit; the reading is kept', () => {
    const never = back(inBay().rows(), { odometerIn: 52_112 });
    expect(never.rows.list('report')).toMatchObject([{ state: 'contested', against: ['j1-b1'] }]);
    expect(never.rows.list('odometerReading')).toHaveLength(1);
    const over = inBay()
      .but('job', 'j1', { endedAt: opening + hour })
      .rows();
    expect(back(over).outcome?.facts['contested']).toBe(true);
  });
  it('marks a reading that is lower than the one before (rule 15)', () => {
    expect(flags(back(out(), { odometerIn: 52_000 }, { now: later }).rows)).toEqual(['odometer.falling']);
  });
  it('refuses an unknown job and an id in use', () => {
    expect(back(given().shop().rows()).codes).toEqual(['row.notFound']);
    expect(back(out(), { placeId: 'out' }).codes).toEqual(['place.alreadyRecorded']);
  });
});
