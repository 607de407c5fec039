import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { HeldPart, JobHold, JobLine, SpotInput } from './account-input.js';
import { type HoldTimes, holdTimesOfAccount, holdTimesPer, sumHoldTimes } from './hold-times.js';
import { partition } from './partition.js';

const line = (lineId: string, change: Partial<JobLine> = {}): JobLine => ({
  jobId: 'van',
  lineId,
  addedAt: 0,
  endedAt: null,
  after: null,
  goAhead: [{ at: 0, answer: 'given' }],
  ...change,
});
const hold = (holdId: string, from: number, to: number | null, change: Partial<JobHold> = {}): JobHold => ({
  holdId,
  jobId: 'van',
  lineIds: [],
  reason: 'parts',
  from,
  to,
  ...change,
});
const part = (partLineId: string, supplierId: string | null, from: number, to: number | null): HeldPart => ({
  partLineId,
  supplierId,
  from,
  to,
});
/** One bay open from 0 to 1000 with the van in it all the time. */
const bay = (change: Partial<SpotInput>): SpotInput => ({
  window: { from: 0, to: 1000 },
  open: [{ from: 0, to: 1000 }],
  outOfUse: [],
  stays: [{ jobId: 'van', kind: 'stands', from: 0, to: null }],
  clocks: [],
  holds: [],
  lines: [line('bumper')],
  storedJobs: [],
  breaks: [],
  graceMs: 0,
  now: 1000,
  ...change,
});
const times = (change: Partial<SpotInput>): HoldTimes => holdTimesOfAccount(partition(bay(change)));

describe('sole and shared held time', () => {
  it('of two reasons: each alone where the other was not holding, both where both were', () => {
    const holds = [hold('a', 100, 600), hold('b', 400, 900, { reason: 'tool' })];
    expect(times({ holds })).toMatchObject({
      heldMs: 800,
      severalReasonsMs: 200,
      byReason: { parts: { soleMs: 300, sharedMs: 200 }, tool: { soleMs: 300, sharedMs: 200 } },
    });
  });

  it('two holds of one reason are alone as that reason, and the parts of them are not', () => {
    const holds = [
      hold('a', 100, 600, { parts: [part('step', 'north', 100, 600)] }),
      hold('b', 400, 900, { parts: [part('lamp', 'south', 400, 900)] }),
    ];
    expect(times({ holds })).toMatchObject({
      severalReasonsMs: 0,
      byReason: { parts: { soleMs: 800, sharedMs: 0 } },
      bySupplier: { north: { soleMs: 300, sharedMs: 200 }, south: { soleMs: 300, sharedMs: 200 } },
      byPart: { step: { soleMs: 300, sharedMs: 200 }, lamp: { soleMs: 300, sharedMs: 200 } },
    });
  });

  it('one hold that waits for three parts: a part stops counting when it arrives, a supplier with its last', () => {
    const parts = [
      part('step', 'north', 0, 300),
      part('bracket', 'north', 0, 500),
      part('lens', 'south', 0, 700),
      part('screws', null, 0, 200),
    ];
    const { bySupplier, byPart } = times({ holds: [hold('a', 0, 1000, { parts })] });
    expect(byPart).toEqual({
      bracket: { soleMs: 0, sharedMs: 500 },
      lens: { soleMs: 200, sharedMs: 500 },
      screws: { soleMs: 0, sharedMs: 200 },
      step: { soleMs: 0, sharedMs: 300 },
    });
    expect(bySupplier).toEqual({ north: { soleMs: 0, sharedMs: 500 }, south: { soleMs: 200, sharedMs: 500 } });
  });

  it('parts of one supplier together are its alone', () => {
    const parts = [part('step', 'north', 0, 300), part('bracket', 'north', 0, 500)];
    expect(times({ holds: [hold('a', 0, 500, { parts })] }).bySupplier).toEqual({
      north: { soleMs: 500, sharedMs: 0 },
    });
  });

  it('a part that is looked for elsewhere counts for each supplier in its time', () => {
    const parts = [part('step', 'north', 0, 400), part('step', 'south', 400, null)];
    const { bySupplier, byPart } = times({ holds: [hold('a', 0, 1000, { parts })] });
    expect(bySupplier).toEqual({ north: { soleMs: 400, sharedMs: 0 }, south: { soleMs: 600, sharedMs: 0 } });
    expect(byPart).toEqual({ step: { soleMs: 1000, sharedMs: 0 } });
  });

  it('the customer’s word counts where no hold binds', () => {
    const lines = [line('bumper'), line('lamp', { goAhead: [] })];
    const holds = [hold('a', 200, 700, { lineIds: ['bumper'] })];
    const work = { ...line('bumper'), endedAt: 800 };
    expect(times({ lines: [work, line('lamp', { goAhead: [] })], holds }).byReason).toEqual({
      goAhead: { soleMs: 200, sharedMs: 0 },
      parts: { soleMs: 500, sharedMs: 0 },
    });
    expect(times({ lines, holds }).byReason).toEqual({ parts: { soleMs: 500, sharedMs: 0 } });
  });

  it('time that a line could be worked, or is worked, or the shop is closed, is nobody’s', () => {
    const holds = [hold('a', 0, null, { lineIds: ['bumper'], parts: [part('step', 'north', 0, null)] })];
    const lines = [line('bumper'), line('brakes', { endedAt: 300 })];
    const clocks = [{ jobId: 'van', personId: 'Rhona', from: 500, to: 600, bench: false }];
    const open = [{ from: 0, to: 800 }];
    expect(times({ holds, lines, clocks, open }).byPart).toEqual({ step: { soleMs: 400, sharedMs: 0 } });
  });
});

const end = 40;
const instant = fc.integer({ min: 0, max: end });
const spanOf = <T extends object>(rest: fc.Arbitrary<T>) =>
  fc
    .tuple(instant, fc.option(fc.integer({ min: 0, max: 25 }), { freq: 4 }), rest)
    .map(([from, length, more]) => ({ from, to: length === null ? null : from + length, ...more }));
const parts = fc.array(
  spanOf(fc.record({ partLineId: fc.constantFrom('p', 'q', 'r'), supplierId: fc.constantFrom('n', 's', null) })),
  { maxLength: 3 },
);
const given: fc.Arbitrary<SpotInput> = fc
  .record({
    window: fc.constant({ from: 0, to: end }),
    open: fc.array(
      fc.tuple(instant, instant).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) })),
      { maxLength: 3 },
    ),
    outOfUse: fc.constant([]),
    stays: fc.constant([{ jobId: 'van', kind: 'stands' as const, from: 0, to: null }]),
    clocks: fc.array(spanOf(fc.constant({ jobId: 'van', personId: 'Rhona', bench: false })), { maxLength: 2 }),
    holds: fc.array(
      spanOf(
        fc.record({
          jobId: fc.constant('van'),
          lineIds: fc.subarray(['a', 'b']),
          reason: fc.constantFrom('parts', 'tool', 'goAhead'),
          parts: fc.option(parts, { nil: [] }),
        }),
      ),
      { maxLength: 4 },
    ),
    lines: fc.constant([line('a'), line('b')]),
    storedJobs: fc.constant([]),
    breaks: fc.constant([]),
    graceMs: fc.constant(0),
    now: fc.integer({ min: 20, max: 50 }),
  })
  .map((all) => ({ ...all, holds: all.holds.map((one, i) => ({ ...one, holdId: `h${i}` })) }));

interface Cause {
  readonly reason: string;
  readonly supplier: string | null;
  readonly part: string | null;
}

/** What is waited for at an instant, read off the rows with no care for cost: reason, supplier and part of each cause. */
function waitedFor({ holds, now }: SpotInput, t: number): Cause[] {
  const runs = (one: { from: number; to: number | null }) => one.from <= t && t < Math.min(one.to ?? now, now);
  return holds.filter(runs).flatMap(({ reason, parts: list = [] }): Cause[] => {
    const awaited = list.filter((one) => one.from <= t && (one.to === null || t < one.to));
    if (awaited.length === 0) return [{ reason, supplier: null, part: null }];
    return awaited.map((one) => ({ reason, supplier: one.supplierId, part: one.partLineId }));
  });
}

interface Counted {
  soleMs: number;
  sharedMs: number;
}

/** One millisecond for each of the keys: alone where there is no other, not even one without a name. */
function count(sums: Map<string, Counted>, all: readonly (string | null)[]): void {
  const keys = new Set(all);
  for (const key of keys) {
    if (key === null) continue;
    const one = sums.get(key) ?? { soleMs: 0, sharedMs: 0 };
    one[keys.size === 1 ? 'soleMs' : 'sharedMs'] += 1;
    sums.set(key, one);
  }
}

const added = (list: Record<string, { soleMs: number }>): number =>
  Object.values(list).reduce((sum, one) => sum + one.soleMs, 0);

describe('sole and shared held time, for any input', () => {
  it('is what the rows of each millisecond say', () => {
    fc.assert(
      fc.property(given, (input) => {
        const account = partition(input);
        const expected = {
          byReason: new Map<string, Counted>(),
          bySupplier: new Map<string, Counted>(),
          byPart: new Map<string, Counted>(),
        };
        for (let t = 0; t < end; t += 1) {
          if (!account.segments.some((one) => one.class === 'held' && one.from <= t && t < one.to)) continue;
          const causes = waitedFor(input, t);
          count(
            expected.byReason,
            causes.map((one) => one.reason),
          );
          count(
            expected.bySupplier,
            causes.map((one) => one.supplier),
          );
          count(
            expected.byPart,
            causes.map((one) => one.part),
          );
        }
        const found = holdTimesOfAccount(account);
        for (const name of ['byReason', 'bySupplier', 'byPart'] as const) {
          expect(found[name]).toEqual(Object.fromEntries(expected[name]));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('sole is never more than what is held, and over reasons, with what several hold, it is all of it', () => {
    fc.assert(
      fc.property(given, (input) => {
        const { heldMs, severalReasonsMs, byReason, bySupplier, byPart } = holdTimesOfAccount(partition(input));
        expect(added(byReason) + severalReasonsMs).toBe(heldMs);
        expect(added(bySupplier)).toBeLessThanOrEqual(heldMs);
        expect(added(byPart)).toBeLessThanOrEqual(heldMs);
        for (const { soleMs, sharedMs } of Object.values(byReason)) {
          expect(soleMs + sharedMs).toBeLessThanOrEqual(heldMs);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('adds up over a window cut in two, cut before or after, whatever the order of the rows', () => {
    fc.assert(
      fc.property(given, instant, (input, cut) => {
        const pieces = [
          { from: 0, to: cut },
          { from: cut, to: end },
        ];
        const reversed = {
          ...input,
          holds: [...input.holds].reverse().map((one) => ({ ...one, parts: [...(one.parts ?? [])].reverse() })),
          clocks: [...input.clocks].reverse(),
          lines: [...input.lines].reverse(),
        };
        const whole = holdTimesOfAccount(partition(input));
        expect(sumHoldTimes(holdTimesPer(partition(input), pieces))).toEqual(whole);
        expect(sumHoldTimes(pieces.map((window) => holdTimesOfAccount(partition({ ...reversed, window }))))).toEqual(
          whole,
        );
      }),
      { numRuns: 400 },
    );
  });
});
