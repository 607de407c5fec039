/** Suppliers whose law is known: do the dates hold as often as they say? */
import { describe, expect, it } from '@jest/globals';
import { calendarOf, dateOfDayNumber, sameHours, weekdays } from '@holdfast/shop-calendar';
import { arrivalOf } from './arrival.js';
import type { OrderedLine, SupplierState, SupplierWord } from './history.js';
import { fitArrivals } from './model.js';

const dayMs = 86_400_000;
const calendar = calendarOf({
  zone: 'Europe/London',
  hours: [{ validFrom: '2000-01-01', week: sameHours(weekdays, [['08:00', '18:00']]), breaks: sameHours([], []) }],
  exceptions: [],
});
const start = Date.parse('2023-01-01T12:00:00Z');
const cuts = [700, 760, 820, 880, 940].map((day) => start + day * dayMs);

/** Mulberry32 (Tommy Ettinger, public domain). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const logNormal = (random: () => number, median: number, sigma: number): number =>
  median * Math.exp(sigma * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()));

interface Told {
  readonly state: SupplierState;
  /** what a supplier says of a part that will take so many days, as days after the order: when said, which day named */
  says(leadDays: number, random: () => number): readonly (readonly [saidAfter: number, namedAfter: number | null])[];
  leadDays(random: () => number): number;
}

/** Orders one after the other over a thousand days; some are called off before they come. */
function orders(told: Told, count: number, seed: number): OrderedLine[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, i) => {
    const orderedAt = Math.floor(start + random() * 1000 * dayMs);
    const lead = told.leadDays(random);
    const goodAt = Math.floor(orderedAt + lead * dayMs);
    const words: SupplierWord[] = told.says(lead, random).map(([after, named]) => {
      const givenAt = Math.floor(orderedAt + after * dayMs);
      const dueOn = named === null ? null : dateOfDayNumber(Math.floor((orderedAt + named * dayMs) / dayMs));
      return { givenAt, state: told.state, dueOn };
    });
    const cancelled = random() < 0.1 ? Math.floor(orderedAt + random() * 90 * dayMs) : null;
    const closedAt = cancelled !== null && cancelled < goodAt ? cancelled : null;
    return {
      lineId: `line ${String(i)}`,
      orderId: null,
      supplierId: `supplier ${String(i % 5)}`,
      partKind: i % 2 === 0 ? 'glass' : 'body',
      family: null,
      orderedAt,
      words,
      goodAt,
      closedAt,
    };
  });
}

/** The share of lines on their way at the cuts that came by the 80 % date then given, and the share without one. */
function held(lines: readonly OrderedLine[], believeLastDayOnly = false): { by: number; asked: number; none: number } {
  let by = 0;
  let asked = 0;
  let none = 0;
  for (const now of cuts) {
    // Cancelled lines teach as cancelled ones; what would have become of them is known here, and asked all the same.
    const known = lines.map((line) => ({ ...line, goodAt: line.closedAt === null ? line.goodAt : null }));
    const history = believeLastDayOnly ? known.map(lastDayOnly) : known;
    const model = fitArrivals(history, { calendar, now });
    for (const line of lines) {
      if (line.orderedAt > now || (line.goodAt ?? 0) <= now || (line.closedAt ?? Infinity) <= now) continue;
      const { p80 } = arrivalOf(model, line, now);
      if (p80.kind !== 'date') none += 1;
      else {
        asked += 1;
        if (calendar.dateOf(line.goodAt ?? 0) <= p80.day) by += 1;
      }
    }
  }
  return { by: by / asked, asked, none: none / (asked + none) };
}

/** A shop that overwrites each day named with the next. */
const lastDayOnly = (line: OrderedLine): OrderedLine => ({ ...line, words: line.words.slice(-1) });

const slow: Told = {
  state: 'backorderedNoDate',
  says: () => [[0, null]],
  leadDays: (random) => logNormal(random, 50, 0.6),
};

/** Names a day ten days off, and each time it passes a day a fortnight off, until it happens to come. */
const putsOff: Told = {
  state: 'backorderedWithDate',
  says: (lead) => {
    const words: [number, number][] = [[0, 10]];
    for (let passed = 10; passed < lead; passed += 14) words.push([passed, passed + 14]);
    return words;
  },
  leadDays: (random) => logNormal(random, 55, 0.5),
};

/** Names the same two or three months for everything; it comes when it comes. */
const byTheBook: Told = {
  state: 'specialOrder',
  says: (_lead, random) => [[0, random() < 0.5 ? 60 : 90]],
  leadDays: (random) => logNormal(random, 80, 0.4),
};

describe('dates of suppliers whose law is known', () => {
  for (const [name, told] of Object.entries({ slow, putsOff, byTheBook })) {
    it(`supplier ${name}: 80 % dates hold in 80 ± 3 % of cases`, () => {
      const result = held(orders(told, 6_000, 7));
      expect(result.asked).toBeGreaterThan(1_000);
      expect(result.none).toBeLessThan(0.02);
      expect(result.by).toBeGreaterThan(0.77);
      expect(result.by).toBeLessThan(0.83);
    });
  }

  it('would not hold if only the last day named were kept: a supplier then looks punctual by construction', () => {
    expect(held(orders(putsOff, 6_000, 7), true).by).toBeLessThan(0.7);
  });
});
