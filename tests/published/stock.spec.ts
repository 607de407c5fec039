import { describe, expect, it } from '@jest/globals';
import {
  normalQuantile,
  normalReorderPoint,
  poissonLoss,
  poissonQuantile,
  poissonReorderPoint,
  poissonShare,
} from '@holdfast/stock';

const steady = 0;

describe('safety stock and reorder point, worked examples of the text books', () => {
  it('ST-1: 30 a day, sd 5, lead time 10 days, z 1.65: safety 26.1, order at 326.1 (Taylor & Russell ch. 16, Super Shag)', () => {
    const { safety, at } = normalReorderPoint({ mean: 30, sd: 5 }, { mean: 10, sd: steady }, { z: 1.65 });
    expect([safety.toFixed(1), at.toFixed(1)]).toEqual(['26.1', '326.1']);
  });

  it('ST-2: lead time demand 50, sd 5, risk 3 %: z 1.88, safety 9.40, order at 59.40 (Stevenson 14e, example 8)', () => {
    expect(normalQuantile(0.97).toFixed(2)).toBe('1.88');
    const { safety, at } = normalReorderPoint({ mean: 50, sd: 5 }, { mean: 1, sd: steady }, { level: 0.97 });
    expect([safety.toFixed(2), at.toFixed(2)]).toEqual(['9.40', '59.40']);
  });

  it('ST-3: 60 a week, lead time 6 weeks sd 2, z 1.28: 360 + 153.6 (Heizer & Render, solved problem 12)', () => {
    const point = normalReorderPoint({ mean: 60, sd: 0 }, { mean: 6, sd: 2 }, { z: 1.28 });
    expect(point.expected).toBe(360);
    expect(point.safety).toBeCloseTo(153.6, 9);
    expect(Math.ceil(point.at)).toBe(514);
  });

  it('ST-4: both vary, 30 sd 3, lead time 7 sd 4, z 1.28: safety 153.94 (worked example, ja3.jsfiddle.net/parte/16251922)', () => {
    const { safety } = normalReorderPoint({ mean: 30, sd: 3 }, { mean: 7, sd: 4 }, { z: 1.28 });
    expect(safety.toFixed(2)).toBe('153.94');
  });

  it('ST-5: both vary, 150 sd 16, lead time 5 sd 1, z 1.65: sd 154.2, order at 1004 (Heizer & Render; from memory)', () => {
    const { safety, at } = normalReorderPoint({ mean: 150, sd: 16 }, { mean: 5, sd: 1 }, { z: 1.65 });
    expect([(safety / 1.65).toFixed(1), Math.round(at)]).toEqual(['154.2', 1004]);
  });

  it('ST-6: 50 a week sd 3, two weeks, z 1.28: order at 105.43, with the unrounded z 105.44 (Stevenson, example 9)', () => {
    const at = (service: { z: number } | { level: number }): string =>
      normalReorderPoint({ mean: 50, sd: 3 }, { mean: 2, sd: steady }, service).at.toFixed(2);
    expect([at({ z: 1.28 }), at({ level: 0.9 })]).toEqual(['105.43', '105.44']);
  });
});

describe('laws of demand', () => {
  it('ST-7: z for .90 .95 .97 .98 .99 (SciPy 1.17.1 and @stdlib agree)', () => {
    const found = [0.9, 0.95, 0.97, 0.98, 0.99].map((level) => normalQuantile(level).toFixed(6));
    expect(found).toEqual(['1.281552', '1.644854', '1.880794', '2.053749', '2.326348']);
  });

  it('ST-8: Poisson mean 4.0: cumulative 0 … 5, and level .60 needs 4 (Stevenson 14e, example 15)', () => {
    const found = [0, 1, 2, 3, 4, 5].map((k) => poissonShare(4, k).toFixed(3));
    expect(found).toEqual(['0.018', '0.092', '0.238', '0.433', '0.629', '0.785']);
    expect(poissonQuantile(4, 0.6)).toBe(4);
  });

  it('ST-9: Poisson mean 1.25: shares and losses for 0 … 4 (order-up-to table, scribd 928380662)', () => {
    const stock = [0, 1, 2, 3, 4];
    const shares = ['0.286505', '0.644636', '0.868468', '0.961731', '0.990876'];
    const losses = ['1.25000', '0.53650', '0.18114', '0.04961', '0.01134'];
    expect(stock.map((s) => poissonShare(1.25, s).toFixed(6))).toEqual(shares);
    expect(stock.map((s) => poissonLoss(1.25, s).toFixed(5))).toEqual(losses);
  });

  it('ST-10: Poisson mean 4: least stock for .95, .98, .99 is 8, 9, 9 (SciPy and @stdlib agree)', () => {
    expect([0.95, 0.98, 0.99].map((level) => poissonQuantile(4, level))).toEqual([8, 9, 9]);
    expect(poissonReorderPoint(2, 2, 0.95)).toEqual({ expected: 4, safety: 4, at: 8 });
  });
});
