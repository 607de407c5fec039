import { describe, expect, it } from '@jest/globals';
import { arrivalOf } from './arrival.js';
import { at, backorders, fit, kinds, ordered, said } from './given-orders.js';
import type { OrderedLine } from './history.js';

describe('the dates of one line', () => {
  it('gives no date without a day named and without history', () => {
    const line = ordered('a', '2026-03-02T09:00');
    const arrival = arrivalOf(fit([line], '2026-03-02T10:00'), line, at('2026-03-02T10:00'));
    expect(kinds(arrival)).toEqual(['noDate', 'noDate', 'noDate']);
    expect(arrival.basis.own).toBeNull();
  });

  it('calls the day named by an unknown supplier a "not before", never a date', () => {
    const line = ordered('a', '2026-03-02T09:00', { words: [said('2026-03-02T09:00', 'specialOrder', '2026-03-14')] });
    const arrival = arrivalOf(fit([line], '2026-03-02T10:00'), line, at('2026-03-02T10:00'));
    // 14 March 2026 is a Saturday: it is received on Monday.
    expect(arrival.p80).toEqual({ kind: 'notBefore', day: '2026-03-16', at: at('2026-03-16T17:29') });
    expect(arrival.basis.named).toEqual({ dueOn: '2026-03-14', ordinal: 1 });
  });

  it('adds to a day named what this supplier was late before, and says how many deliveries stand behind it', () => {
    const history = backorders([0, 0, 0, 0, 0, 2, 2, 2, 5, 5]);
    const line = ordered('a', '2026-03-02T09:00', {
      words: [said('2026-03-02T09:00', 'backorderedWithDate', '2026-03-10')],
    });
    const arrival = arrivalOf(fit([...history, line], '2026-03-02T10:00'), line, at('2026-03-02T10:00'));
    expect([arrival.p50, arrival.p80, arrival.p95].map((one) => (one.kind === 'date' ? one.day : one.kind))).toEqual([
      '2026-03-10',
      '2026-03-12',
      '2026-03-17',
    ]);
    expect(arrival.basis).toMatchObject({
      measure: 'slip',
      own: {
        stratum: { supplierId: 'Northern Glass', state: 'backorderedWithDate', partKind: 'glass', ordinal: 1 },
        observations: 11,
        events: 10,
      },
    });
  });

  it('judges what is late already by what was as late', () => {
    const history = backorders([0, 0, 0, 0, 0, 0, 0, 0, 10, 20]);
    const line = ordered('a', '2026-02-23T09:00', {
      words: [said('2026-02-23T09:00', 'backorderedWithDate', '2026-03-02')],
    });
    const now = '2026-03-04T12:00';
    const { p50, p95 } = arrivalOf(fit([...history, line], now), line, at(now));
    expect(p50).toMatchObject({ kind: 'date', day: '2026-03-16' });
    expect(p95).toMatchObject({ kind: 'date', day: '2026-03-30' });
  });

  it('says "not before" where the history ends above the level', () => {
    const open = ['b', 'c', 'd'].map((id) =>
      ordered(id, '2026-02-02T09:00', { words: [said('2026-02-02T09:00', 'backorderedNoDate')] }),
    );
    const done = ordered('z', '2026-02-02T09:00', {
      words: [said('2026-02-02T09:00', 'backorderedNoDate')],
      goodAt: at('2026-02-09T12:00'),
    });
    const line = ordered('a', '2026-03-02T09:00', { words: [said('2026-03-02T09:00', 'backorderedNoDate')] });
    const arrival = arrivalOf(fit([...open, done, line], '2026-03-02T10:00'), line, at('2026-03-02T10:00'));
    expect(kinds(arrival)).toEqual(['notBefore', 'notBefore', 'notBefore']);
    // The open ones have waited 19 whole working days.
    expect(arrival.p50).toMatchObject({ day: '2026-03-27' });
  });

  it('counts a superseded day from when it was named: the next one is judged by the second ones', () => {
    const putOff = (i: number, secondSlip: string): OrderedLine =>
      ordered(`past ${String(i)}`, '2026-01-05T09:00', {
        words: [
          said('2026-01-05T09:00', 'backorderedWithDate', '2026-01-12'),
          said('2026-01-12T16:00', 'backorderedWithDate', '2026-01-19'),
        ],
        goodAt: at(`${secondSlip}T11:00`),
      });
    const history = [...Array.from({ length: 20 }, (_, i) => putOff(i, '2026-01-26'))];
    const line = ordered('a', '2026-03-02T09:00', {
      words: [said('2026-03-02T09:00', 'backorderedWithDate', '2026-03-09')],
    });
    const first = arrivalOf(fit([...history, line], '2026-03-02T10:00'), line, at('2026-03-02T10:00'));
    expect(first.p50).toMatchObject({ kind: 'date', day: '2026-03-23' });
    const again = { ...line, words: [...line.words, said('2026-03-09T16:00', 'backorderedWithDate', '2026-03-16')] };
    const second = arrivalOf(fit([...history, again], '2026-03-09T17:00'), again, at('2026-03-09T17:00'));
    expect(second.p50).toMatchObject({ kind: 'date', day: '2026-03-23' });
    expect(second.basis).toMatchObject({ named: { ordinal: 2 }, own: { stratum: { ordinal: 2 }, events: 20 } });
  });

  it("gives what is in stock the supplier's run that brings it, received when the shop opens", () => {
    const history = Array.from({ length: 10 }, (_, i) =>
      ordered(`past ${String(i)}`, '2026-02-02T11:00', {
        supplierId: 'Harbour Parts',
        words: [said('2026-02-02T11:00', 'inStock')],
        goodAt: at(i < 8 ? '2026-02-03T10:40' : '2026-02-03T15:20'),
      }),
    );
    const line = ordered('a', '2026-04-02T11:00', {
      supplierId: 'Harbour Parts',
      words: [said('2026-04-02T11:00', 'inStock')],
    });
    const now = '2026-04-02T11:05';
    const { p50, p95, basis } = arrivalOf(fit([...history, line], now), line, at(now));
    // Ordered before 18:00: the next day's runs, but that is Good Friday; then Monday's first and second.
    expect(p50).toEqual({ kind: 'date', at: at('2026-04-06T10:00'), day: '2026-04-06' });
    expect(p95).toEqual({ kind: 'date', at: at('2026-04-06T15:00'), day: '2026-04-06' });
    expect(basis).toMatchObject({ measure: 'runs', own: { events: 10 } });
  });

  it('refuses a line that was not ordered yet, and gives one that is here its day', () => {
    const line = ordered('a', '2026-03-02T09:00', { goodAt: at('2026-03-05T09:00') });
    const model = fit([line], '2026-03-06T09:00');
    expect(() => arrivalOf(model, line, at('2026-03-01T09:00'))).toThrow(RangeError);
    expect(arrivalOf(model, line, at('2026-03-06T09:00'))).toMatchObject({
      p95: { kind: 'date', day: '2026-03-05' },
      basis: { measure: 'here' },
    });
  });

  it('leaves out what cannot be true, with the reason', () => {
    const model = fit(
      [
        ordered('a', '2026-02-02T09:00', { goodAt: at('2026-02-01T09:00') }),
        ordered('b', '2026-02-02T09:00', { closedAt: at('2026-02-01T09:00') }),
        ordered('c', '2026-02-02T09:00', { words: [said('2026-02-02T09:00', 'specialOrder', '2026-01-30')] }),
        ordered('d', '2026-02-02T09:00', { orderedAt: Number.NaN }),
      ],
      '2026-03-01T09:00',
    );
    expect(model.leftOut.map((one) => [one.lineId, one.reason])).toEqual([
      ['a', 'goodBeforeOrdered'],
      ['b', 'closedBeforeOrdered'],
      ['d', 'notAnInstant'],
      ['c', 'dayBeforeItWasSaid'],
    ]);
    expect(model.lines).toBe(1);
  });
});
