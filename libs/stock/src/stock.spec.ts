import { describe, expect, it } from '@jest/globals';
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { normalQuantile, poissonLoss, poissonQuantile, poissonShare } from './distributions.js';
import { type Movement, type Step, counting, taking, takingTheLast, tallyOf } from './movements.js';
import { type StockItem, proposalFor } from './proposal.js';
import { normalReorderPoint, poissonReorderPoint, spreadOf } from './reorder.js';
import { usageOf } from './usage.js';

const weekMs = 7 * 86_400_000;
const now = 200 * weekMs;
const quantity = fc.integer({ min: 1, max: 4_000 }).map((one) => new Decimal(one).div(100).toFixed());
const act = fc.oneof(
  fc.record({ act: fc.constant('receive' as const), quantity }),
  fc.record({ act: fc.constant('take' as const), quantity }),
  fc.record({ act: fc.constant('takeTheLast' as const), quantity }),
  fc.record({ act: fc.constant('count' as const), quantity }),
);

describe('the count of a bin', () => {
  it('never goes below zero whatever is taken, and each act leaves it where a hand would find it', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 30 }), (acts) => {
        const steps: Step[] = [];
        for (const one of acts) {
          const before = tallyOf(steps).count;
          if (one.act === 'receive') steps.push({ kind: 'received', quantity: one.quantity });
          else if (one.act === 'take') steps.push(...taking(before, one.quantity));
          else if (one.act === 'takeTheLast') steps.push(...takingTheLast(before, one.quantity));
          else steps.push(...counting(before, one.quantity));
          const { count, faults } = tallyOf(steps);
          expect(faults).toEqual([]);
          const left = new Decimal(before).minus(one.quantity);
          const expected = {
            receive: new Decimal(before).plus(one.quantity),
            take: Decimal.max(0, left),
            takeTheLast: new Decimal(0),
            count: new Decimal(one.quantity),
          };
          expect(count).toBe(expected[one.act].toFixed());
        }
      }),
    );
  });

  it('writes the find down with what is taken from a bin that the book has empty', () => {
    expect(taking('1', '3')).toEqual([
      { kind: 'found', quantity: '2' },
      { kind: 'took', quantity: '3' },
    ]);
    expect(takingTheLast('5', '2')).toEqual([
      { kind: 'took', quantity: '2' },
      { kind: 'missing', quantity: '3' },
    ]);
    expect(counting('4', '4.0')).toEqual([]);
  });

  it('adds decimals exactly, and tells movements that cannot be', () => {
    const steps: Step[] = [
      { kind: 'received', quantity: '0.1' },
      { kind: 'received', quantity: '0.2' },
      { kind: 'took', quantity: '-1' },
      { kind: 'sentBack', quantity: '0.4' },
      { kind: 'putBack', quantity: '0.3' },
    ];
    expect(tallyOf(steps)).toEqual({
      count: '0.3',
      faults: [
        { index: 2, fault: 'notAboveZero' },
        { index: 3, fault: 'belowZero' },
      ],
    });
    expect(() => taking('1', '0')).toThrow(RangeError);
  });
});

describe('laws of demand', () => {
  it('has the normal quantile symmetric, rising, and refuses 0 and 1', () => {
    const share = fc.double({ min: 1e-12, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        expect(normalQuantile(a)).toBeCloseTo(-normalQuantile(1 - a), 3);
        if (a < b) expect(normalQuantile(a)).toBeLessThanOrEqual(normalQuantile(b));
      }),
    );
    expect(() => normalQuantile(1)).toThrow(RangeError);
    expect(() => normalQuantile(0)).toThrow(RangeError);
  });

  it('gives the least Poisson stock that serves the level, also where e^-mean is 0 as a number', () => {
    const mean = fc.double({ min: 0, max: 900, noNaN: true });
    fc.assert(
      fc.property(mean, fc.double({ min: 0.01, max: 0.999, noNaN: true }), (m, level) => {
        const s = poissonQuantile(m, level);
        expect(poissonShare(m, s)).toBeGreaterThanOrEqual(level - 1e-9);
        if (s > 0) expect(poissonShare(m, s - 1)).toBeLessThan(level + 1e-9);
      }),
    );
  });

  it('loses all of the demand with no stock and less with each piece', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), fc.integer({ min: 0, max: 60 }), (mean, stock) => {
        expect(poissonLoss(mean, 0)).toBe(mean);
        expect(poissonLoss(mean, stock + 1)).toBeLessThanOrEqual(poissonLoss(mean, stock));
      }),
    );
  });

  it('keeps no less the more the lead time varies, and is the simple formula where it does not', () => {
    const positive = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, positive, (mean, sd, lead, leadSd) => {
        const fixed = normalReorderPoint({ mean, sd }, { mean: lead, sd: 0 }, { level: 0.95 });
        const varied = normalReorderPoint({ mean, sd }, { mean: lead, sd: leadSd }, { level: 0.95 });
        expect(fixed.safety).toBeCloseTo(normalQuantile(0.95) * sd * Math.sqrt(lead), 6);
        expect(varied.safety).toBeGreaterThanOrEqual(fixed.safety - 1e-9);
        expect(varied.at).toBeCloseTo(varied.expected + varied.safety, 9);
      }),
    );
    expect(() => normalReorderPoint({ mean: -1, sd: 0 }, { mean: 1, sd: 0 }, { z: 1 })).toThrow(RangeError);
    expect(() => poissonReorderPoint(1, Number.NaN, 0.9)).toThrow(RangeError);
    expect(spreadOf([3])).toBeNull();
  });
});

const item = (over: Partial<StockItem> = {}): StockItem => ({
  itemId: 'clip',
  low: '10',
  full: '50',
  pack: null,
  onOrder: '0',
  ...over,
});
const moved = (weeksAgo: number, kind: Movement['kind'], amount: string): Movement => ({
  at: now - weeksAgo * weekMs,
  kind,
  quantity: amount,
});
/** Received a year ago, then taken each week as the list says, the last one this week. */
const weekly = (received: string, taken: readonly number[]): Movement[] => [
  moved(taken.length, 'received', received),
  ...taken.flatMap((one, i) => (one === 0 ? [] : [moved(taken.length - i - 0.5, 'took', String(one))])),
];
const options = { now, leadWeeks: { mean: 1, sd: 0 } };
const codes = (one: { reasons: readonly { code: string }[] }) => one.reasons.map((reason) => reason.code);

describe('usage', () => {
  it('counts whole weeks back from now, less what was put back, and nothing before the first movement', () => {
    const movements = [
      moved(4.2, 'received', '20'),
      moved(3.5, 'took', '4'),
      moved(1.5, 'took', '6'),
      moved(1.2, 'putBack', '2'),
    ];
    const usage = usageOf(movements, now);
    expect(usage).toMatchObject({ weeks: 4, takings: 2, wholePieces: true });
    expect(usage.perWeek?.mean).toBe(2);
    expect(usage.perWeek?.sd).toBeCloseTo(Math.sqrt(16 / 3), 9);
    expect(usageOf([], now)).toMatchObject({ weeks: 0, perWeek: null });
  });
});

describe('a proposal', () => {
  it('goes by the marks for a slow mover: at the low mark up to the full one, in whole packs', () => {
    const movements = [moved(30, 'received', '40'), moved(10, 'took', '30')];
    const proposal = proposalFor(item({ pack: '25' }), movements, options);
    expect(proposal).toMatchObject({ count: '10', method: 'marks', order: '50' });
    expect(proposal.reasons).toEqual([
      { code: 'slowMover', takings: 1, weeks: 30 },
      { code: 'atLowMark', low: '10', position: '10' },
      { code: 'upTo', quantity: '50', by: 'fullMark' },
      { code: 'wholePacks', pack: '25', packs: 2 },
    ]);
  });

  it('counts what is on order, and proposes nothing above the mark', () => {
    const movements = [moved(30, 'received', '40'), moved(10, 'took', '30')];
    const proposal = proposalFor(item({ onOrder: '25' }), movements, options);
    expect(proposal).toMatchObject({ position: '35', order: null });
    expect(codes(proposal)).toEqual(['onOrder', 'slowMover', 'aboveMark']);
  });

  it('says that no mark is set rather than guessing one', () => {
    const proposal = proposalFor(item({ low: null }), [], options);
    expect(proposal).toMatchObject({ count: '0', method: 'none', order: null });
    expect(codes(proposal)).toEqual(['emptyNow', 'slowMover', 'noMark']);
  });

  it('reckons Poisson demand for what goes piece by piece', () => {
    const taken = Array.from({ length: 40 }, (_, i) => [3, 5, 4, 2, 6][i % 5] ?? 0);
    const proposal = proposalFor(item({ full: null }), weekly('168', taken), options);
    // 4 a week, one week: 8 serve 95 %; 160 of 168 are gone.
    expect(proposal).toMatchObject({ count: '8', method: 'poisson', order: '16' });
    expect(proposal.reasons).toContainEqual({ code: 'mark', method: 'poisson', level: 0.95, expected: 4, safety: 4 });
    expect(codes(proposal)).toEqual(['usage', 'leadTime', 'mark', 'atReorderPoint', 'upTo']);
  });

  it('reckons normal demand with a lead time that varies, and orders no sooner than the mark', () => {
    const taken = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? 30 : 50));
    const lead = { mean: 2, sd: 0.5 };
    const point = normalReorderPoint(spreadOf(taken) ?? { mean: 0, sd: 0 }, lead, { level: 0.95 });
    const at = Math.ceil(point.at);
    const stock = (left: number) => weekly(String(1_600 + left), taken);
    expect(proposalFor(item({ full: '400' }), stock(at + 1), { now, leadWeeks: lead })).toMatchObject({ order: null });
    const proposal = proposalFor(item({ full: '400' }), stock(at), { now, leadWeeks: lead });
    expect(proposal).toMatchObject({ method: 'normal', count: String(at), order: String(400 - at) });
  });

  it('falls back on the marks and says so where no lead time is known', () => {
    const taken = Array.from({ length: 40 }, () => 4);
    const proposal = proposalFor(item(), weekly('165', taken), { now, leadWeeks: null });
    expect(proposal).toMatchObject({ method: 'marks', order: '45' });
    expect(codes(proposal)).toEqual(['leadTimeUnknown', 'atLowMark', 'upTo']);
  });

  it('whatever the movements: orders only at or below the mark, and then enough to pass it', () => {
    const line = fc.record({
      weeksAgo: fc.double({ min: 0, max: 60, noNaN: true }),
      kind: fc.constantFrom<Movement['kind']>('received', 'took', 'putBack', 'missing'),
      quantity: fc.integer({ min: 1, max: 20 }).map(String),
    });
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 40 }),
        fc.integer({ min: 0, max: 20 }),
        fc.option(fc.integer({ min: 1, max: 9 })),
        (lines, low, pack) => {
          const movements = lines
            .map((one) => moved(one.weeksAgo, one.kind, one.quantity))
            .map((one) => ({ ...one, at: Math.floor(one.at) }))
            .sort((a, b) => a.at - b.at);
          const asked = item({ low: String(low), full: null, pack: pack === null ? null : String(pack) });
          const { order, position, reasons } = proposalFor(asked, movements, options);
          const mark = reasons.flatMap((one) =>
            one.code === 'atLowMark'
              ? [one.low]
              : one.code === 'atReorderPoint'
                ? [one.at]
                : one.code === 'aboveMark'
                  ? [one.mark]
                  : [],
          )[0];
          if (mark === undefined) throw new Error('A mark was set.');
          expect(order === null).toBe(new Decimal(position).gt(mark));
          if (order !== null) expect(new Decimal(position).plus(order).gt(mark)).toBe(true);
          if (order !== null && pack !== null) expect(new Decimal(order).mod(pack).isZero()).toBe(true);
        },
      ),
    );
  });
});
