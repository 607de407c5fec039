import { describe, expect, it } from '@jest/globals';
import { allHere, chanceAllHere } from './all-here.js';
import { arrivalOf } from './arrival.js';
import { at, backorders, fit, hourMs, ordered, said } from './given-orders.js';
import type { OrderedLine } from './history.js';

describe('a job', () => {
  const past = backorders([0, 0, 0, 0, 0, 2, 2, 2, 5, 5]);
  const lamp = (lineId: string, over: Partial<OrderedLine> = {}) =>
    ordered(lineId, '2026-03-02T09:00', {
      words: [said('2026-03-02T09:00', 'backorderedWithDate', '2026-03-10')],
      ...over,
    });
  const today = at('2026-03-02T10:00');

  it('takes lines of one order with one day as one shipment: as sure as one of them', () => {
    const lines = [lamp('a', { orderId: 'o1' }), lamp('b', { orderId: 'o1' })];
    const model = fit([...past, ...lines], '2026-03-02T10:00');
    const job = allHere(model, lines, today);
    expect(job.shipments).toEqual([['a', 'b']]);
    expect(job.p80).toEqual(arrivalOf(model, lamp('a'), today).p80);
  });

  it('multiplies what comes independently: later than each alone', () => {
    const lines = [lamp('a'), lamp('b'), lamp('c')];
    const model = fit([...past, ...lines], '2026-03-02T10:00');
    const alone = chanceAllHere(model, [lines[0] ?? lamp('a')], today, at('2026-03-10T17:30')).chance;
    const all = chanceAllHere(model, lines, today, at('2026-03-10T17:30'));
    expect(alone).toBeCloseTo(0.5, 9);
    expect(all).toEqual({
      chance: expect.closeTo(0.125, 9),
      low: expect.closeTo(0.125, 9),
      high: expect.closeTo(0.125, 9),
      known: true,
    });
    expect(allHere(model, lines, today)).toMatchObject({ p50: { kind: 'date', day: '2026-03-12' }, range: null });
  });

  it('says which lines hang together on one backorder, with the range that this leaves open', () => {
    const lines = [lamp('a', { family: 'lamps' }), lamp('b', { family: 'lamps' }), lamp('c')];
    const model = fit([...past, ...lines], '2026-03-02T10:00');
    const { low, high } = chanceAllHere(model, lines, today, at('2026-03-12T17:30'));
    // One shipment of 0.8 beside two that are between 0.6 and 0.8 together.
    expect([low, high].map((one) => +one.toFixed(9))).toEqual([0.48, 0.64]);
    const job = allHere(model, lines, today);
    expect(job.together).toEqual([{ family: 'lamps', lineIds: ['a', 'b'] }]);
    expect(job.range?.earliest.p50).toMatchObject({ day: '2026-03-12' });
    expect(job.range?.latest.p50).toMatchObject({ day: '2026-03-17' });
  });

  it('has no date while nothing at all is known of one of its lines, and names it', () => {
    const lines = [lamp('a'), ordered('x', '2026-03-02T09:00', { supplierId: 'Unknown', words: [] })];
    const model = fit([lamp('a')], '2026-03-02T10:00');
    expect(allHere(model, lines, today)).toMatchObject({ p50: { kind: 'noDate' }, withoutDate: ['x'], decidedBy: 'a' });
  });

  it('does not wait for what is here or called off', () => {
    const lines = [lamp('a', { goodAt: today - hourMs }), lamp('b', { closedAt: today - hourMs })];
    const job = allHere(fit([...past, ...lines], '2026-03-02T10:00'), lines, today);
    expect(job).toMatchObject({ p95: { kind: 'date', at: today }, shipments: [], decidedBy: null });
  });
});
