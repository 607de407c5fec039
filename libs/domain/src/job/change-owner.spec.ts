import { describe, expect, it } from '@jest/globals';
import { type Given, given, tuesdayTen } from '../kernel/given.js';
import { recorded } from '../kernel/given-usual.js';
import { carryOut } from '../settle/carry-out.js';
import { changeOwner } from './change-owner.js';

const van = () => given().shop().customer('new').customer('old').vehicle('v1').job('j1').followUp('f1');
const standing = (of: Given, id: string, over: object) =>
  of.row('standingGoAhead', {
    id,
    ...recorded,
    customerId: 'old',
    vehicleId: null,
    jobId: null,
    kind: 'smallThings',
    upTo: '50',
    orderNumber: null,
    byName: 'A',
    untilDay: null,
    endedAt: null,
    endWords: null,
    ...over,
  });
const change = (of: Given, customerId = 'new') => carryOut(changeOwner, of.rows(), { vehicleId: 'v1', customerId });

describe('another owner', () => {
  it('has the vehicle from now on; whose it was is kept, and the visit keeps its customer', () => {
    const { rows } = change(van());
    expect(rows.get('vehicle', 'v1').customerId).toBe('new');
    expect(rows.get('job', 'j1').customerId).toBe('old');
    expect(rows.list('ownerChange')).toMatchObject([{ vehicleId: 'v1', beforeId: 'old', afterId: 'new' }]);
  });
  it('ends what the owner before agreed to for this vehicle, and nothing else of theirs', () => {
    const given = standing(standing(standing(van(), 's1', { vehicleId: 'v1' }), 's2', {}), 's3', {
      vehicleId: 'v1',
      jobId: 'j1',
    });
    const { rows } = change(given);
    expect(rows.list('standingGoAhead').map(({ id, endedAt }) => [id, endedAt])).toEqual([
      ['s1', tuesdayTen],
      ['s2', null],
      ['s3', null],
    ]);
  });
  it('is the one to call about what is outstanding', () => {
    const { rows } = change(
      van().call('c1', { reason: 'other', followUpId: 'f1' }).call('c2', { reason: 'other', jobId: 'j1' }),
    );
    expect(rows.list('call').map(({ id, customerId }) => [id, customerId])).toEqual([
      ['c1', 'new'],
      ['c2', 'old'],
    ]);
  });
  it('is somebody else, known, and not erased or merged', () => {
    expect(change(van(), 'old').codes).toEqual(['vehicle.ownerAlready']);
    expect(change(van(), 'nobody').codes).toEqual(['row.notFound']);
    expect(change(van().but('customer', 'new', { erasedAt: 1 })).codes).toEqual(['customer.erased']);
    expect(change(van().but('customer', 'new', { mergedIntoId: 'old' })).codes).toEqual(['row.notFound']);
    expect(change(van().but('vehicle', 'v1', { mergedIntoId: 'v0' })).codes).toEqual(['row.notFound']);
  });
});
