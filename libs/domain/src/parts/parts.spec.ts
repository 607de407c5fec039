import { describe, expect, it } from '@jest/globals';
import type { PlaceOrder, RecordDueIn, WantPart } from '../inputs.js';
import { given, hour, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { cancelPart } from './cancel-part.js';
import { recordDueIn } from './due-in.js';
import { fitPart } from './fit-part.js';
import { placeOrder } from './place-order.js';
import { receiveParts } from './receive-parts.js';
import { wantPart } from './want-part.js';

const van = () => given().shop().supplier('s1').supplier('s2').vehicle('v1').job('j1').line('l1');
const by = { by: 'partsClerk' } as const;

describe('wantPart', () => {
  const wanting = (input: Partial<WantPart>, rows: Rows = van().followUp('f1').rows()) =>
    carryOut(wantPart, rows, { description: 'Lens', quantity: '2.50', needed: 'beforeRefit', ...input });

  it('makes a part line of the vehicle for the line, and opens no hold', () => {
    const { rows, outcome } = wanting({ partLineId: 'p1', lineId: 'l1', unitPrice: '12.00', supplierId: 's2' });
    expect(rows.get('partLine', 'p1')).toMatchObject({
      ...{ vehicleId: 'v1', jobId: 'j1', lineId: 'l1', followUpId: null, state: 'wanted', here: '0', fitted: '0' },
      ...{ quantity: '2.5', unitPrice: '12', unit: 'piece', supplierId: 's2', orderId: null, source: 'supplier' },
    });
    expect(outcome?.created).toEqual({ partLine: 'p1' });
    expect(rows.list('hold')).toEqual([]);
  });

  it('makes one for a follow-up, of no job', () => {
    expect(wanting({ partLineId: 'p1', followUpId: 'f1' }).rows.get('partLine', 'p1')).toMatchObject({
      ...{ vehicleId: 'v1', jobId: null, lineId: null, followUpId: 'f1' },
    });
  });

  it('is for exactly one purpose', () => {
    expect(wanting({}).codes).toEqual(['parts.purposeNotOne']);
    expect(wanting({ lineId: 'l1', followUpId: 'f1' }).codes).toEqual(['parts.purposeNotOne']);
  });

  it('is refused for what is not there, and for an id that is', () => {
    expect(wanting({ lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(wanting({ followUpId: 'f9' }).codes).toEqual(['row.notFound']);
    expect(wanting({ lineId: 'l1', supplierId: 's9' }).codes).toEqual(['row.notFound']);
    expect(wanting({ partLineId: 'p1', lineId: 'l1' }, van().part('p1').rows()).codes).toEqual(['parts.alreadyThere']);
  });
});

describe('placeOrder', () => {
  const ordering = (input: Partial<PlaceOrder>, rows: Rows = van().part('p1').part('p2').rows()) =>
    carryOut(placeOrder, rows, { supplierId: 's1', reference: 'PO 7', lines: [{ partLineId: 'p1' }], ...input }, by);

  it('puts wanted part lines under one reference with price and due-in', () => {
    const due = { state: 'backorderedWithDate', dueOn: '2026-03-20' } as const;
    const lines = [{ partLineId: 'p1', version: 1, unitPrice: '80.50', due }, { partLineId: 'p2' }];
    const { rows } = ordering({ orderId: 'o1', lines }, van().part('p1').part('p2', { supplierId: 's2' }).rows());
    expect(rows.get('partsOrder', 'o1')).toMatchObject({ supplierId: 's1', reference: 'PO 7' });
    expect(rows.get('partLine', 'p1')).toMatchObject({
      ...{ state: 'ordered', orderId: 'o1', unitPrice: '80.5', dueOn: '2026-03-20', dueState: 'backorderedWithDate' },
    });
    expect(rows.get('partLine', 'p2')).toMatchObject({
      state: 'ordered',
      orderId: 'o1',
      supplierId: 's1',
      dueOn: null,
    });
    expect(rows.list('dueIn')).toHaveLength(1);
    expect(rows.list('dueIn')[0]).toMatchObject({
      partLineId: 'p1',
      ordinal: 1,
      supplierId: 's1',
      dueOn: '2026-03-20',
    });
  });

  it.each(['ordered', 'partArrived', 'arrived', 'fitted', 'cancelled'] as const)(
    'is refused for a part that is %s',
    (state) => {
      const { codes, refusedFor } = ordering({}, van().part('p1', { state }).rows());
      expect(codes).toEqual(['parts.notToOrder']);
      expect(refusedFor).toEqual({ partLineId: 'p1', state });
    },
  );

  it('is refused with all reasons at once: stale, not there, named twice, due without its day', () => {
    const due = { state: 'backorderedWithDate' } as const;
    const lines = [
      { partLineId: 'p1', version: 3 },
      { partLineId: 'p9' },
      { partLineId: 'p2', due },
      { partLineId: 'p2' },
    ];
    const { codes, refusedFor } = ordering({ lines });
    expect(codes).toEqual(['row.stale', 'row.notFound', 'parts.dueDayMissing', 'parts.namedTwice']);
    expect(refusedFor).toEqual({ table: 'partLine', id: 'p1', version: 3, current: 1 });
  });

  it('is refused for an unknown supplier and for an order that is there', () => {
    expect(ordering({ supplierId: 's9' }).codes).toEqual(['row.notFound']);
    expect(ordering({ orderId: 'o1' }, van().part('p1').order('o1').rows()).codes).toEqual(['parts.alreadyThere']);
  });
});

describe('recordDueIn', () => {
  const told = (rows: Rows, input: Partial<RecordDueIn>, effectiveAt = tuesdayTen) =>
    carryOut(recordDueIn, rows, { partLineIds: ['p1'], state: 'toOrder', ...input }, { ...by, effectiveAt });

  it('keeps every date with the day it was told and shows the last one told', () => {
    const first = told(van().part('p1').part('p2').rows(), { partLineIds: ['p1', 'p2'], dueOn: '2026-03-12' }).rows;
    const second = told(first, { state: 'backorderedNoDate' }, tuesdayTen + hour).rows;
    expect(second.list('dueIn', (one) => one.partLineId === 'p1').map((one) => [one.ordinal, one.dueOn])).toEqual([
      [1, '2026-03-12'],
      [2, null],
    ]);
    expect(second.get('partLine', 'p1')).toMatchObject({ dueOn: null, dueState: 'backorderedNoDate' });
    expect(second.get('partLine', 'p2')).toMatchObject({ dueOn: '2026-03-12', dueState: 'toOrder' });
  });

  it('keeps an older word written down later without showing it', () => {
    const first = told(van().part('p1').rows(), { dueOn: '2026-03-20' }).rows;
    const later = told(first, { dueOn: '2026-03-12' }, tuesdayTen - hour).rows;
    expect(later.list('dueIn').map((one) => one.ordinal)).toEqual([1, 2]);
    expect(later.get('partLine', 'p1').dueOn).toBe('2026-03-20');
  });

  it('has a day exactly where the state of the supplier has one', () => {
    const rows = van().part('p1').rows();
    expect(told(rows, { state: 'backorderedWithDate' }).codes).toEqual(['parts.dueDayMissing']);
    expect(told(rows, { state: 'backorderedNoDate', dueOn: '2026-03-20' }).codes).toEqual(['parts.dueDayTooMuch']);
    expect(told(rows, { partLineIds: ['p1', 'p9'] }).codes).toEqual(['row.notFound']);
  });
});

describe('receiveParts', () => {
  type Items = Parameters<typeof receiveParts.decide>[1]['items'];
  const four = () => van().order('o1').part('p1', { quantity: '4', state: 'ordered', orderId: 'o1' });
  const receiving = (rows: Rows, ...items: Items) => carryOut(receiveParts, rows, { items, orderId: 'o1' }, by);
  const come = (quantity: string, verdict: Items[number]['verdict'] = 'good', foundAtVehicle = false) => ({
    ...{ partLineId: 'p1', quantity, verdict, foundAtVehicle },
  });
  const p1 = (rows: Rows) => {
    const { here, fitted, state } = rows.get('partLine', 'p1');
    return { here, fitted, state };
  };

  it('counts good and accepted pieces: in part, then whole', () => {
    const { rows, outcome } = receiving(four().rows(), come('1'), come('2', 'accepted'));
    expect(p1(rows)).toEqual({ here: '3', fitted: '0', state: 'partArrived' });
    expect(outcome?.facts).toMatchObject({ parts: 1, bad: 0 });
    expect(rows.list('delivery')[0]).toMatchObject({ supplierId: 's2', orderId: 'o1' });
    expect(p1(receiving(rows, come('1')).rows)).toEqual({ here: '4', fitted: '0', state: 'arrived' });
  });

  it('notes the bin', () => {
    expect(receiving(four().rows(), { ...come('4'), bin: 'B 12' }).rows.get('partLine', 'p1').bin).toBe('B 12');
  });

  it.each(['damaged', 'wrong'] as const)('keeps %s pieces on record and counts none of them', (verdict) => {
    const { rows } = receiving(four().rows(), come('4', verdict));
    expect(p1(rows)).toEqual({ here: '0', fitted: '0', state: 'ordered' });
    expect(rows.list('arrival')).toHaveLength(1);
  });

  it('takes back what is found damaged at the vehicle, from the pieces here first, then from those fitted', () => {
    const here = receiving(four().rows(), come('4')).rows;
    const fitted = carryOut(fitPart, here, { partLineId: 'p1', quantity: '3' }).rows;
    expect(p1(receiving(fitted, come('2', 'damaged', true)).rows)).toEqual({
      here: '0',
      fitted: '2',
      state: 'partArrived',
    });
    expect(p1(receiving(fitted, come('4', 'wrong', true)).rows)).toEqual({ here: '0', fitted: '0', state: 'ordered' });
  });

  it('changes no count for what is found at the vehicle and accepted as it is', () => {
    const here = receiving(four().rows(), come('4')).rows;
    expect(p1(receiving(here, come('1', 'accepted', true)).rows)).toEqual({ here: '4', fitted: '0', state: 'arrived' });
  });

  it('counts alike when the find is told before the arrival that it belongs to', () => {
    const early = receiving(four().rows(), come('1', 'damaged', true)).rows;
    expect(p1(early)).toEqual({ here: '0', fitted: '0', state: 'ordered' });
    expect(p1(receiving(early, come('4')).rows)).toEqual({ here: '3', fitted: '0', state: 'partArrived' });
  });

  it('flags more pieces than were asked for, and keeps them', () => {
    const { rows } = receiving(four().rows(), come('5'));
    expect(p1(rows)).toEqual({ here: '5', fitted: '0', state: 'arrived' });
    expect(rows.list('flag').map(({ rule, jobId, vehicleId, facts }) => ({ rule, jobId, vehicleId, facts }))).toEqual([
      { rule: 'parts.more', jobId: 'j1', vehicleId: 'v1', facts: { partLineId: 'p1', more: '1' } },
    ]);
    expect(receiving(four().rows(), come('4')).rows.list('flag')).toEqual([]);
    expect(receiving(rows, come('1', 'damaged')).rows.list('flag')).toHaveLength(1);
  });

  it('works for a vehicle that has left', () => {
    const gone = { jobId: null, lineId: null, followUpId: 'f1' } as const;
    const rows = four()
      .followUp('f1')
      .but('job', 'j1', { endedAt: tuesdayTen - hour })
      .but('partLine', 'p1', gone)
      .rows();
    expect(p1(receiving(rows, come('4')).rows).state).toBe('arrived');
  });

  it('keeps pieces of a cancelled part counted on it', () => {
    expect(p1(receiving(four().but('partLine', 'p1', { state: 'cancelled' }).rows(), come('4')).rows)).toEqual({
      ...{ here: '4', fitted: '0', state: 'cancelled' },
    });
  });

  it('is refused for what is not there, and for a delivery that is', () => {
    expect(receiving(four().rows(), { ...come('1'), partLineId: 'p9' }).codes).toEqual(['row.notFound']);
    const again = receiving(four().rows(), come('1'));
    const deliveryId = again.outcome?.created?.['delivery'] ?? '';
    const items = [come('1')];
    expect(carryOut(receiveParts, again.rows, { deliveryId, items }).codes).toEqual(['parts.alreadyThere']);
    expect(carryOut(receiveParts, again.rows, { orderId: 'o9', items }).codes).toEqual(['row.notFound']);
    expect(carryOut(receiveParts, again.rows, { supplierId: 's9', items }).codes).toEqual(['row.notFound']);
  });
});

describe('fitPart', () => {
  const here = (pieces: object) =>
    van()
      .part('p1', { quantity: '4', state: 'arrived', orderId: 'o1', ...pieces })
      .rows();
  const fitting = (rows: Rows, quantity?: string) =>
    carryOut(fitPart, rows, { partLineId: 'p1', quantity }, { by: 'technician' });
  const p1 = (rows: Rows) => rows.get('partLine', 'p1');

  it('moves pieces from here onto the vehicle; fitted when all are', () => {
    const some = fitting(here({ here: '4' }), '1').rows;
    expect(p1(some)).toMatchObject({ here: '3', fitted: '1', state: 'arrived', endedAt: null });
    expect(p1(fitting(some).rows)).toMatchObject({ here: '0', fitted: '4', state: 'fitted', endedAt: tuesdayTen });
  });

  it('takes what is lacking where no quantity is said, and leaves what came too much', () => {
    expect(p1(fitting(here({ here: '5' })).rows)).toMatchObject({ here: '1', fitted: '4', state: 'fitted' });
    expect(p1(fitting(here({ here: '1', fitted: '4', state: 'fitted' })).rows)).toMatchObject({
      here: '0',
      fitted: '5',
    });
    expect(p1(fitting(here({ here: '2' })).rows)).toMatchObject({ here: '0', fitted: '2', state: 'partArrived' });
  });

  it('is refused for more than is here, for nothing here, for a cancelled part and an unknown one', () => {
    const { codes, refusedFor } = fitting(here({ here: '2' }), '3');
    expect(codes).toEqual(['parts.moreThanHere']);
    expect(refusedFor).toEqual({ partLineId: 'p1', here: '2', quantity: '3' });
    expect(fitting(here({ here: '0', state: 'ordered' })).codes).toEqual(['parts.noneHere']);
    expect(fitting(here({ here: '1', state: 'cancelled' })).codes).toEqual(['parts.cancelled']);
    expect(fitting(van().rows()).codes).toEqual(['row.notFound']);
  });
});

describe('cancelPart', () => {
  const cancelling = (over: object) =>
    carryOut(
      cancelPart,
      van()
        .part('p1', { quantity: '4', ...over })
        .rows(),
      { partLineId: 'p1', words: 'Repaired' },
      by,
    );

  it.each(['wanted', 'ordered', 'partArrived'] as const)('ends a part that is %s; its pieces stay counted', (state) => {
    expect(cancelling({ state, here: '1', fitted: '1' }).rows.get('partLine', 'p1')).toMatchObject({
      ...{ state: 'cancelled', here: '1', fitted: '1', endWords: 'Repaired', endedAt: tuesdayTen },
    });
  });

  it.each(['arrived', 'fitted', 'cancelled'] as const)('is refused for a part that is %s', (state) => {
    expect(cancelling({ state })).toMatchObject({
      codes: ['parts.notToCancel'],
      refusedFor: { partLineId: 'p1', state },
    });
  });

  it('is refused for one that is not there', () => {
    expect(carryOut(cancelPart, van().rows(), { partLineId: 'p1', words: 'x' }).codes).toEqual(['row.notFound']);
  });
});
