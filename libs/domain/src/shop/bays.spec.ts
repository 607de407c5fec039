import { describe, expect, it } from '@jest/globals';
import type { AddBay, BayFacts, ChangeBay } from '../inputs.js';
import { type Given, given } from '../kernel/given.js';
import { specOn } from '../questions/people-and-shop.js';
import { carryOut } from '../settle/carry-out.js';
import { addBay, changeBay } from './bays.js';

const flat: BayFacts = { spots: 1, equipment: [{ kind: 'flat', inUse: true, grips: null }] };
const two = () => given().shop().bay('b1').bay('b2');
const add = (input: Partial<AddBay> = {}, story: Given = two()) =>
  carryOut(addBay, story.rows(), { bayId: 'new', name: 'Ramp', ...flat, ...input });
const change = (input: Partial<ChangeBay>, story: Given = two()) =>
  carryOut(changeBay, story.rows(), { bayId: 'b1', ...input });
const order = ({ rows }: { rows: ReturnType<Given['rows']> }) =>
  [...rows.list('bay')].sort((a, b) => a.position - b.position).map(({ id, position }) => `${id} ${String(position)}`);

describe('a new bay', () => {
  it('comes last in the order of the building, with facts from today on', () => {
    const made = add({ capacity: '03500.0', maxLengthMm: 7000 });
    expect(order(made)).toEqual(['b1 1', 'b2 2', 'new 3']);
    expect(specOn(made.rows, 'new', '2026-03-10')).toMatchObject({
      validFrom: '2026-03-10',
      capacity: '3500',
      capacityUnit: 'kg',
      maxLengthMm: 7000,
      maxHeightMm: null,
      outOfUse: false,
    });
    expect(made.outcome?.created).toEqual({ bay: 'new' });
  });
  it('is put between others, which move on', () => {
    expect(order(add({ position: 2 }))).toEqual(['b1 1', 'new 2', 'b2 3']);
    expect(order(add({ position: 5 }))).toEqual(['b1 1', 'b2 2', 'new 5']);
    const gap = two().but('bay', 'b2', { position: 3 });
    expect(order(add({ position: 2 }, gap))).toEqual(['b1 1', 'new 2', 'b2 3']);
  });
  it('is rated in the unit of its plate, the shop’s own where none is said', () => {
    const us = two().but('shop', 'shop', { units: 'us' });
    expect(specOn(add({ capacity: '9000' }, us).rows, 'new', '2026-03-10').capacityUnit).toBe('lb');
    expect(specOn(add({ capacity: '9000', capacityUnit: 'kg' }, us).rows, 'new', '2026-03-10').capacityUnit).toBe('kg');
    expect(add({ capacity: '0' }).codes).toEqual(['bay.capacityNotPositive']);
    expect(add({ capacity: '-5' }).codes).toEqual(['bay.capacityNotPositive']);
  });
  it('has a name and an id of its own; the name of a bay that is no more is free', () => {
    expect(add({ name: 'bay-2' }).refusals).toMatchObject([{ code: 'bay.nameTaken', way: { id: 'b2' } }]);
    expect(add({ name: 'Bay 2' }, two().but('bay', 'b2', { endedOn: '2026-03-10' })).codes).toEqual([]);
    expect(add({ name: 'Bay 2' }, two().but('bay', 'b2', { endedOn: '2026-03-11' })).codes).toEqual(['bay.nameTaken']);
    expect(add({ bayId: 'b1' }).codes).toEqual(['bay.alreadyThere']);
  });
});

describe('a changed bay', () => {
  it('has another name or place and keeps the rest', () => {
    expect(change({ name: 'North' }).rows.get('bay', 'b1')).toMatchObject({
      name: 'North',
      position: 1,
      endedOn: null,
    });
    expect(order(change({ position: 2 }))).toEqual(['b1 2', 'b2 3']);
    expect(change({ name: 'Bay 2' }).codes).toEqual(['bay.nameTaken']);
    expect(change({ bayId: 'b9' }).codes).toEqual(['row.notFound']);
  });
  it('has other facts from a day on; the days before keep theirs', () => {
    const { rows } = change({ facts: { ...flat, spots: 2 } });
    expect(specOn(rows, 'b1', '2026-03-09').spots).toBe(1);
    expect(specOn(rows, 'b1', '2026-03-10').spots).toBe(2);
    const next = change({ facts: { ...flat, spots: 3 }, validFrom: '2026-05-01' });
    expect(specOn(next.rows, 'b1', '2026-03-10').spots).toBe(1);
    expect(specOn(next.rows, 'b1', '2026-05-01').spots).toBe(3);
  });
  it('replaces facts of the same day, which are kept as void, and those of no other bay', () => {
    const { rows } = change({ facts: { ...flat, spots: 4 }, validFrom: '2020-01-01' });
    expect(rows.get('baySpec', 'b1-spec').void).toBe(true);
    expect(rows.get('baySpec', 'b2-spec').void).toBe(false);
    expect(specOn(rows, 'b1', '2026-03-10').spots).toBe(4);
  });
  it('has a new version also when only its facts change', () => {
    expect(change({ facts: flat }).rows.get('bay', 'b1').version).toBe(2);
  });
  it('does not end under a vehicle, but may go out of use with it', () => {
    const taken = () => two().vehicle('v1').job('j1', { number: 8 }).inBay('b1');
    expect(change({ endedOn: '2026-03-10' }, taken()).refusals).toMatchObject([
      { code: 'bay.occupied', facts: { number: 8 }, way: { table: 'job', id: 'j1' } },
    ]);
    expect(change({ endedOn: '2026-03-11' }, taken()).codes).toEqual([]);
    expect(change({ endedOn: '2026-03-10' }).rows.get('bay', 'b1').endedOn).toBe('2026-03-10');
    expect(change({ facts: { ...flat, outOfUse: true } }, taken()).codes).toEqual([]);
    expect(change({ endedOn: '2026-03-10', bayId: 'b2' }, taken()).codes).toEqual([]);
    expect(
      change({ endedOn: null }, two().but('bay', 'b1', { endedOn: '2026-01-01' })).rows.get('bay', 'b1').endedOn,
    ).toBeNull();
  });
  it('keeps a spot for every vehicle that stands in it (rule 1)', () => {
    const wide = () =>
      given().shop().bay('b1', { spots: 2 }).vehicle('v1').job('j1', { number: 8 }).inBay('b1', { spot: 2 });
    expect(change({ facts: flat }, wide()).refusals).toMatchObject([
      { code: 'bay.spotsInUse', facts: { spot: 2, spots: 1, number: 8 }, way: { id: 'j1' } },
    ]);
    expect(change({ facts: { ...flat, spots: 2 } }, wide()).codes).toEqual([]);
    expect(change({ facts: flat, validFrom: '2026-04-01' }, wide()).codes).toEqual([]);
    expect(change({ facts: flat }, wide().but('spotUse', 'j1-b1-use', { toAt: 1 })).codes).toEqual([]);
  });
});
