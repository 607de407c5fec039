import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { SpotInput } from './account-input.js';
import { type Presence, bayFigures } from './bay-figures.js';
import { partition } from './partition.js';

const end = 60;
const bay = (change: Partial<SpotInput> = {}): SpotInput => ({
  window: { from: 0, to: end },
  open: [{ from: 0, to: end }],
  outOfUse: [],
  stays: [{ jobId: 'van', kind: 'stands', from: 0, to: null }],
  clocks: [],
  holds: [],
  lines: [],
  storedJobs: [],
  breaks: [],
  graceMs: 0,
  now: end,
  ...change,
});
const spot = (bayId: string, equipment: string[], input: SpotInput) => ({
  bayId,
  equipment,
  account: partition(input),
});
const there = (personId: string, from: number, to: number): Presence => ({ personId, from, to });
const works = (personId: string, from: number, to: number) => ({ jobId: 'van', personId, from, to, bench: false });
const whole = [{ from: 0, to: end }];

describe('manned bay time', () => {
  it('six bays and four people all day: two thirds of bay use are all that can be had', () => {
    const people = ['a', 'b', 'c', 'd'];
    const bays = Array.from({ length: 6 }, (_, i) => {
      const person = people[i];
      return spot(`bay ${i}`, ['flat'], bay({ clocks: person === undefined ? [] : [works(person, 0, end)] }));
    });
    const [figures] = bayFigures(
      bays,
      people.map((id) => there(id, 0, end)),
      whole,
    );
    expect(figures?.shop).toMatchObject({ mannedMs: 4 * end, mannedUtilisation: 1 });
    expect(figures?.shop.totals.utilisation).toBeCloseTo(2 / 3, 12);
  });

  it('the smaller of bays and people at each instant, not of their sums', () => {
    const bays = [spot('one', [], bay()), spot('two', [], bay({ outOfUse: [{ from: 30, to: 60 }] }))];
    const presence = [there('a', 0, 10), there('b', 0, 10), there('c', 5, 60), there('d', 40, 50)];
    // 0-10: two bays, two or three people; 10-30: one person; 30-60: one bay
    expect(bayFigures(bays, presence, whole)[0]?.shop.mannedMs).toBe(2 * 10 + 20 + 30);
  });

  it('a person given twice is one person, and closed time is no bay time', () => {
    const presence = [there('a', 0, 40), there('a', 20, 50)];
    const bays = [spot('one', [], bay({ open: [{ from: 10, to: 60 }] })), spot('two', [], bay())];
    expect(bayFigures(bays, presence, whole)[0]?.shop.mannedMs).toBe(50);
  });

  it('nobody there: no share, not a share of nought', () => {
    expect(bayFigures([spot('one', [], bay())], [], whole)[0]?.shop).toMatchObject({
      mannedMs: 0,
      mannedUtilisation: null,
    });
  });
});

describe('figures by bay and equipment', () => {
  it('a bay counts under each kind of its equipment, and once in the shop', () => {
    const bays = [
      spot('lift', ['two-post lift'], bay({ clocks: [works('a', 0, 30)] })),
      spot('rack', ['alignment rack', 'four-post lift'], bay({ clocks: [works('b', 0, 60)] })),
    ];
    const [figures] = bayFigures(bays, [there('a', 0, 60)], whole);
    expect(figures?.equipment.map(({ kind, figures: of }) => [kind, of.totals.utilisation])).toEqual([
      ['alignment rack', 1],
      ['four-post lift', 1],
      ['two-post lift', 0.5],
    ]);
    expect(figures?.bays.map(({ bayId, figures: of }) => [bayId, of.totals.classMs.worked])).toEqual([
      ['lift', 30],
      ['rack', 60],
    ]);
    expect(figures?.shop.totals).toMatchObject({ openMs: 120, utilisation: 0.75 });
  });
});

const instant = fc.integer({ min: 0, max: end });
const interval = fc.tuple(instant, instant).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }));
const presence = fc.array(
  fc.tuple(fc.constantFrom('a', 'b', 'c'), interval).map(([id, one]) => there(id, one.from, one.to)),
  { maxLength: 6 },
);
const spots = fc.array(
  fc
    .record({ open: fc.array(interval, { maxLength: 3 }), outOfUse: fc.array(interval, { maxLength: 1 }) })
    .map((change) => bay(change)),
  { maxLength: 4 },
);

describe('manned bay time, for any input', () => {
  it('is what each millisecond says, and no more than bays and people', () => {
    fc.assert(
      fc.property(spots, presence, (inputs, people) => {
        const bays = inputs.map((input, i) => spot(`${i}`, [], input));
        let expected = 0;
        let personMs = 0;
        for (let t = 0; t < end; t += 1) {
          const holds = (one: { from: number; to: number }): boolean => one.from <= t && t < one.to;
          const open = inputs.filter((input) => input.open.some(holds) && !input.outOfUse.some(holds)).length;
          const here = new Set(people.filter(holds).map(({ personId }) => personId)).size;
          expected += Math.min(open, here);
          personMs += here;
        }
        const shop = bayFigures(bays, people, whole)[0]?.shop;
        expect(shop?.mannedMs).toBe(expected);
        expect(expected).toBeLessThanOrEqual(Math.min(shop?.totals.availableMs ?? 0, personMs));
      }),
      { numRuns: 300 },
    );
  });

  it('work by people who are present, one bay at a time, is never more than it', () => {
    const shift = fc.array(fc.tuple(fc.constantFrom('a', 'b', 'c'), fc.integer({ min: 0, max: 3 }), interval), {
      maxLength: 8,
    });
    fc.assert(
      fc.property(shift, (rows) => {
        const busyUntil = new Map<string, number>();
        const own = [...rows]
          .sort((x, y) => x[2].from - y[2].from)
          .flatMap(([id, at, { from, to }]) => {
            const start = Math.max(from, busyUntil.get(id) ?? 0);
            if (start >= to) return [];
            busyUntil.set(id, to);
            return [{ at, clock: works(id, start, to) }];
          });
        const bays = [0, 1, 2, 3].map((n) =>
          spot(`${n}`, [], bay({ clocks: own.filter(({ at }) => at === n).map(({ clock }) => clock) })),
        );
        const people = own.map(({ clock }) => there(clock.personId, clock.from, clock.to));
        const shop = bayFigures(bays, people, whole)[0]?.shop;
        expect(shop?.totals.classMs.worked).toBeLessThanOrEqual(shop?.mannedMs ?? -1);
      }),
      { numRuns: 300 },
    );
  });

  it('adds up over a window cut in two, whatever the order of the rows', () => {
    fc.assert(
      fc.property(spots, presence, instant, (inputs, people, cut) => {
        const pieces = [
          { from: 0, to: cut },
          { from: cut, to: end },
        ];
        const bays = inputs.map((input, i) => spot(`${i}`, ['flat'], input));
        const mannedMs = bayFigures(bays, people, whole)[0]?.shop.mannedMs;
        const cutInTwo = bayFigures([...bays].reverse(), [...people].reverse(), pieces);
        expect(cutInTwo.reduce((sum, one) => sum + one.shop.mannedMs, 0)).toBe(mannedMs);
        const ofEach = pieces.map((window) =>
          bayFigures(
            inputs.map((input, i) => spot(`${i}`, ['flat'], { ...input, window })),
            people,
            [window],
          ),
        );
        expect(ofEach.map(([one]) => one?.shop.totals)).toEqual(cutInTwo.map((one) => one.shop.totals));
      }),
      { numRuns: 200 },
    );
  });
});
