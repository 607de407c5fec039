import { describe, expect, it } from '@jest/globals';
import { nextRun } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import { allHere, chanceAllHere } from './all-here.js';
import { arrivalOf } from './arrival.js';
import { dayClock } from './day-clock.js';
import { at, calendar, dayMs, hourMs, runs, van } from './given-orders.js';
import type { OrderedLine, SupplierState } from './history.js';
import { fitArrivals } from './model.js';
import { runClock } from './runs.js';

const state = fc.constantFrom<SupplierState>('inStock', 'toOrder', 'backorderedWithDate', 'backorderedNoDate');
const anyLine = fc
  .record({
    supplierId: fc.constantFrom('Harbour Parts', 'Northern Glass', null),
    partKind: fc.constantFrom('glass', 'body'),
    orderedHour: fc.integer({ min: 0, max: 2_000 }),
    leadHours: fc.option(fc.integer({ min: 0, max: 1_500 })),
    words: fc.array(
      fc.record({
        after: fc.integer({ min: -40, max: 900 }),
        state,
        ahead: fc.option(fc.integer({ min: -3, max: 60 })),
      }),
      { maxLength: 4 },
    ),
  })
  .map(({ orderedHour, leadHours, words, supplierId, partKind }): Omit<OrderedLine, 'lineId'> => {
    const orderedAt = at('2026-01-05T07:00') + orderedHour * hourMs;
    return {
      orderId: `order ${String(orderedHour % 3)}`,
      supplierId,
      partKind,
      family: partKind === 'body' ? 'bumper' : null,
      orderedAt,
      words: words.map((one) => {
        const givenAt = orderedAt + one.after * hourMs;
        return {
          givenAt,
          state: one.state,
          dueOn: one.ahead === null ? null : calendar.dateOf(givenAt + one.ahead * dayMs),
        };
      }),
      goodAt: leadHours === null ? null : orderedAt + leadHours * hourMs,
      closedAt: null,
    };
  });
const history = fc
  .array(anyLine, { minLength: 1, maxLength: 30 })
  .map((all) => all.map((one, i): OrderedLine => ({ ...one, lineId: `line ${String(i)}` })));
const now = at('2026-02-26T12:20');
const onTheWay = (lines: readonly OrderedLine[]) =>
  lines.filter((one) => one.orderedAt <= now && (one.goodAt ?? Infinity) > now);

describe('whatever the history', () => {
  it('gives dates that come after now, at a time when the shop is open, the surer the later', () => {
    fc.assert(
      fc.property(history, (lines) => {
        const model = fitArrivals(lines, { calendar, runs, now });
        for (const line of onTheWay(lines)) {
          const { p50, p80, p95 } = arrivalOf(model, line, now);
          const instants = [p50, p80, p95].flatMap((one) => (one.kind === 'noDate' ? [] : [one.at]));
          expect(instants).toEqual([...instants].sort((a, b) => a - b));
          for (const one of instants) expect([one > now, calendar.isOpen(one)]).toEqual([true, true]);
        }
      }),
    );
  });

  it('sees nothing that happened or was said after now', () => {
    fc.assert(
      fc.property(history, (lines) => {
        const past = lines
          .filter((one) => one.orderedAt <= now)
          .map((one) => ({
            ...one,
            words: one.words.filter((word) => word.givenAt <= now),
            goodAt: (one.goodAt ?? Infinity) <= now ? one.goodAt : null,
          }));
        const answers = (all: readonly OrderedLine[]) => {
          const model = fitArrivals(all, { calendar, runs, now });
          return onTheWay(all).map((line) => arrivalOf(model, line, now));
        };
        expect(answers(lines)).toEqual(answers(past));
      }),
    );
  });

  it('gives a job of one line the dates of the line, and a job of many none earlier than any of its lines', () => {
    fc.assert(
      fc.property(history, (lines) => {
        const model = fitArrivals(lines, { calendar, runs, now });
        const open = onTheWay(lines);
        for (const line of open) {
          const { p50, p80, p95 } = arrivalOf(model, line, now);
          expect(allHere(model, [line], now)).toMatchObject({ p50, p80, p95, range: null });
        }
        const job = allHere(model, open, now);
        for (const line of open) {
          const { p80 } = arrivalOf(model, line, now);
          if (job.p80.kind === 'date') expect(p80.kind === 'date' && p80.at <= job.p80.at).toBe(true);
        }
      }),
    );
  });

  it('keeps the dates of a job inside the range of what hangs together, and its chance inside theirs', () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 0, max: 60 }), (lines, days) => {
        const model = fitArrivals(lines, { calendar, runs, now });
        const open = onTheWay(lines);
        const { low, chance, high } = chanceAllHere(model, open, now, now + days * dayMs);
        expect(low).toBeLessThanOrEqual(chance + 1e-9);
        expect(chance).toBeLessThanOrEqual(high + 1e-9);
        const { p80, range } = allHere(model, open, now);
        if (range === null) return;
        const { earliest, latest } = range;
        if (p80.kind === 'date') expect(earliest.p80.kind === 'date' && earliest.p80.at <= p80.at).toBe(true);
        if (latest.p80.kind === 'date') expect(p80.kind === 'date' && p80.at <= latest.p80.at).toBe(true);
      }),
    );
  });

  it('reaches the probability of a job date on that date and not at any earlier minute', () => {
    fc.assert(
      fc.property(history, (lines) => {
        const model = fitArrivals(lines, { calendar, runs, now });
        const open = onTheWay(lines);
        const { p80 } = allHere(model, open, now);
        if (p80.kind !== 'date' || open.length === 0) return;
        expect(chanceAllHere(model, open, now, p80.at).chance).toBeGreaterThanOrEqual(0.8 - 1e-6);
        expect(chanceAllHere(model, open, now, p80.at - 60_000).chance).toBeLessThan(0.8);
      }),
    );
  });
});

describe('delivery runs counted', () => {
  it('finds the run that an order makes as the shop calendar does, across a change of the clock', () => {
    const days = dayClock(calendar, at('2026-03-20T00:00'));
    const clock = runClock(van, days, at('2026-03-20T00:00'));
    fc.assert(
      fc.property(fc.integer({ min: -100, max: 20 * 24 * 4 }), (quarters) => {
        const orderedAt = at('2026-03-20T00:00') + quarters * 900_000;
        const made = clock.firstMade(orderedAt);
        const expected = nextRun(van, calendar, orderedAt);
        expect(made === null ? null : clock.receivedAt(made)).toBe(expected?.receivedAt ?? null);
        if (made !== null && expected !== null) {
          expect(clock.runsBy(expected.runAt)).toBe(made + 1);
          expect(clock.runsBy(expected.runAt - 1)).toBe(made);
        }
      }),
    );
  });
});
