import { describe, expect, it } from '@jest/globals';
import type { RecordRetorque, RecordTorque, RecordWheelOff, RecordWheelOn } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { retorqueSettled, wheelsNow, wheelsOff, wheelsUntorqued, wheelsWereOff } from '../questions/wheels.js';
import { carryOut } from '../settle/carry-out.js';
import { recordRetorque } from './record-retorque.js';
import { recordTorque, recordWheelOff, recordWheelOn } from './wheels.js';

const van = () => given().shop().vehicle('v1').job('j1').inYard().line('l1');
const tight = { torque: '120.0', torqueUnit: 'newtonMetre', torqueSource: 'vehicleMaker', tool: 'Wrench 4' } as const;
const said = (later = 0): GivenCircumstances => ({
  by: 'technician',
  now: tuesdayTen + later,
  effectiveAt: tuesdayTen + later,
});
const offAt = (rows: Rows, positions: string[], later = 0, input: Partial<RecordWheelOff> = {}) =>
  carryOut(recordWheelOff, rows, { jobId: 'j1', positions, ...input }, said(later));
const onAt = (rows: Rows, positions: string[], later = 0, input: Partial<RecordWheelOn> = {}) =>
  carryOut(recordWheelOn, rows, { jobId: 'j1', positions, ...input }, said(later));
const torqueAt = (rows: Rows, positions: string[], later = 0, input: Partial<RecordTorque> = {}) =>
  carryOut(recordTorque, rows, { jobId: 'j1', positions, ...tight, ...input }, said(later));
const places = (wheels: readonly { position: string }[]) => wheels.map((wheel) => wheel.position);

describe('wheels', () => {
  it('are off one by one, on again, and tightened: each by whom and when', () => {
    const off = offAt(van().rows(), ['1L', '1R', '1L'], 0, { wheelRecordId: 'w1', lineId: 'l1' });
    expect(off.outcome?.created).toEqual({ wheelRecord: 'w1' });
    expect(places(wheelsOff(off.rows, 'j1'))).toEqual(['1L', '1R']);
    expect(off.rows.get('wheelRecord', 'w1')).toMatchObject({ position: '1L', offById: 'technician', lineId: 'l1' });
    const on = onAt(off.rows, ['1L'], minute).rows;
    expect(places(wheelsOff(on, 'j1'))).toEqual(['1R']);
    expect(places(wheelsUntorqued(on, 'j1'))).toEqual(['1L']);
    const whole = torqueAt(on, ['1L'], 2 * minute).rows;
    expect(wheelsUntorqued(whole, 'j1')).toEqual([]);
    expect(whole.get('wheelRecord', 'w1')).toMatchObject({
      ...{ offAt: tuesdayTen, onAt: tuesdayTen + minute, torquedAt: tuesdayTen + 2 * minute, torque: '120' },
      ...{ torqueUnit: 'newtonMetre', torqueSource: 'vehicleMaker', tool: 'Wrench 4', torquedById: 'technician' },
    });
    expect(whole.list('wheelRecord')).toHaveLength(2);
  });

  it('that are off already are not off twice', () => {
    const off = offAt(van().rows(), ['1L']).rows;
    const again = offAt(off, ['1L', '2L'], minute);
    expect(again.rows.list('wheelRecord')).toHaveLength(2);
    expect(wheelsOff(again.rows, 'j1')[0]?.offAt).toBe(tuesdayTen);
  });

  it('that come off again wait for their torque again', () => {
    const once = onAt(offAt(van().rows(), ['1L']).rows, ['1L'], minute, { torque: tight }).rows;
    expect(wheelsUntorqued(once, 'j1')).toEqual([]);
    const again = offAt(once, ['1L'], 2 * minute).rows;
    expect(places(wheelsOff(again, 'j1'))).toEqual(['1L']);
    expect(places(wheelsUntorqued(onAt(again, ['1L'], 3 * minute).rows, 'j1'))).toEqual(['1L']);
  });

  it('put on without a record of coming off get one all the same, with nothing said of when they came off', () => {
    const { rows } = onAt(van().rows(), ['spare']);
    expect(rows.list('wheelRecord')).toMatchObject([{ position: 'spare', offAt: null, onAt: tuesdayTen }]);
    expect(places(wheelsUntorqued(rows, 'j1'))).toEqual(['spare']);
    const anew = onAt(torqueAt(rows, ['spare'], minute).rows, ['spare'], 2 * minute).rows;
    expect(places(wheelsUntorqued(anew, 'j1'))).toEqual(['spare']);
  });

  it('told off late complete the record that had no such time', () => {
    const on = onAt(van().rows(), ['1L']).rows;
    const { rows } = offAt(on, ['1L'], -hour);
    expect(rows.list('wheelRecord')).toMatchObject([{ offAt: tuesdayTen - hour, onAt: tuesdayTen }]);
    expect(wheelsOff(rows, 'j1')).toEqual([]);
  });

  it('are never on or tightened before they came off', () => {
    const off = offAt(van().rows(), ['1L']).rows;
    const { rows } = onAt(off, ['1L'], -hour, { torque: tight });
    expect(rows.list('wheelRecord')).toMatchObject([{ onAt: tuesdayTen, torquedAt: tuesdayTen }]);
  });

  it('tightened while recorded off are on from then; tightened anew keep the earlier value too', () => {
    const off = offAt(van().rows(), ['1L']).rows;
    const first = torqueAt(off, ['1L'], minute).rows;
    expect(first.list('wheelRecord')).toMatchObject([{ onAt: tuesdayTen + minute, onById: 'technician' }]);
    const anew = torqueAt(first, ['1L'], 2 * minute, { torque: '125' }).rows;
    expect(anew.list('wheelRecord').map((wheel) => wheel.torque)).toEqual(['120', '125']);
    expect(wheelsNow(anew, 'j1')).toMatchObject([{ torque: '125', offAt: tuesdayTen }]);
    expect(wheelsOff(torqueAt(van().rows(), ['1R']).rows, 'j1')).toEqual([]);
  });

  it('say their place as the trade counts it, and a torque its value and source', () => {
    expect(offAt(van().rows(), ['1L', 'front']).codes).toEqual(['wheel.positionUnknown']);
    expect(onAt(van().rows(), ['0L']).codes).toEqual(['wheel.positionUnknown']);
    expect(offAt(van().rows(), ['2RO', '2RI', 'spare']).codes).toEqual([]);
    expect(torqueAt(van().rows(), ['1L'], 0, { torque: '0.0' }).codes).toEqual(['wheel.torqueNotPositive']);
    expect(torqueAt(van().rows(), ['1L'], 0, { torqueSource: 'other' }).codes).toEqual(['wheel.sourceMissing']);
    const other = { ...tight, torqueSource: 'other' } as const;
    expect(onAt(van().rows(), ['1L'], 0, { torque: other }).codes).toEqual(['wheel.sourceMissing']);
    expect(onAt(van().rows(), ['1L'], 0, { torque: { ...other, sourceWords: 'Plate' } }).codes).toEqual([]);
  });

  it('belong to a visit that is there, and to a line of it', () => {
    expect(offAt(van().rows(), ['1L'], 0, { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(onAt(van().rows(), ['1L'], 0, { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(torqueAt(van().rows(), ['1L'], 0, { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(offAt(van().rows(), ['1L'], 0, { lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(offAt(van().job('j2').line('l2').rows(), ['1L'], 0, { lineId: 'l2' }).codes).toEqual(['work.otherJob']);
    const off = offAt(van().rows(), ['1L'], 0, { wheelRecordId: 'w1' }).rows;
    expect(offAt(off, ['1R'], 0, { wheelRecordId: 'w1' }).codes).toEqual(['work.alreadyRecorded']);
  });

  it('of one visit are nobody else’s', () => {
    const rows = offAt(van().job('j2').rows(), ['1L']).rows;
    expect(wheelsOff(rows, 'j2')).toEqual([]);
    expect([wheelsWereOff(rows, 'j1'), wheelsWereOff(rows, 'j2')]).toEqual([true, false]);
  });
});

describe('re-torque', () => {
  const due = () => van().odometer('o1', 42_000).followUp('f1', { kind: 'retorque', withinDistance: 50 });
  const dropIn = (rows: Rows, input: Partial<RecordRetorque> = {}) =>
    carryOut(recordRetorque, rows, { followUpId: 'f1', ...tight, ...input }, said());

  it('is settled for a visit when it was put down as outstanding, whatever became of it', () => {
    expect(retorqueSettled(due().rows(), { id: 'j1' })).toBe(true);
    expect(retorqueSettled(due().but('followUp', 'f1', { state: 'dropped' }).rows(), { id: 'j1' })).toBe(true);
    expect(retorqueSettled(due().rows(), { id: 'j2' })).toBe(false);
    expect(retorqueSettled(van().followUp('f1').rows(), { id: 'j1' })).toBe(false);
  });

  it('closes its follow-up with what was done, and keeps the reading without a visit', () => {
    const { rows } = dropIn(due().rows(), { odometer: 42_060, words: 'All four' });
    expect(rows.get('followUp', 'f1')).toMatchObject({
      ...{ state: 'done', closedById: 'technician' },
      closeWords: '120 N·m (vehicle maker) · Wrench 4 · 42060 km · All four',
    });
    expect(rows.list('odometerReading')[1]).toMatchObject({ vehicleId: 'v1', jobId: null, value: 42_060, unit: 'km' });
    expect(rows.list('job')).toHaveLength(1);
    expect(dropIn(due().rows()).rows.list('odometerReading')).toHaveLength(1);
  });

  it('is for an open follow-up of that kind, with a torque that names its source', () => {
    expect(dropIn(due().rows(), { followUpId: 'f9' }).codes).toEqual(['row.notFound']);
    expect(dropIn(van().followUp('f1').rows()).codes).toEqual(['wheel.notRetorque']);
    const closed = due().but('followUp', 'f1', { state: 'dropped' }).rows();
    expect(dropIn(closed).codes).toEqual(['followUp.closedAlready']);
    expect(dropIn(due().rows(), { torqueSource: 'other' }).codes).toEqual(['wheel.sourceMissing']);
  });
});
