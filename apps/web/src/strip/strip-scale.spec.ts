import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';

import { axisTicks, nowShare, stripScale, stripWindow } from './strip-scale.js';

const now = Date.UTC(2026, 10, 25, 14, 7);
const hour = 3_600_000;

describe('the time axis of the strips', () => {
  it('has now at one fixed place whatever the window and the width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 72 * 60 }),
        fc.integer({ min: 1, max: 72 * 60 }),
        fc.integer({ min: 120, max: 4000 }),
        (before, after, width) => {
          const scale = stripScale({ from: now - before * 60_000, to: now + after * 60_000, now }, width);
          expect(scale(now)).toBeCloseTo(width * nowShare, 6);
        },
      ),
    );
  });

  it('never draws outside its width and never turns time around', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), fc.integer({ min: 0, max: 200 }), (start, length) => {
        const scale = stripScale({ ...stripWindow(now, 600), now }, 1000);
        const [left, right] = [scale(now + start * 600_000), scale(now + (start + length) * 600_000)];
        expect(left).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(1000);
        expect(right).toBeGreaterThanOrEqual(left);
      }),
    );
  });

  it('runs past and future at one pace in the standard window', () => {
    const scale = stripScale({ ...stripWindow(now, 600), now }, 1000);
    expect(scale(now) - scale(now - hour)).toBeCloseTo(scale(now + hour) - scale(now), 6);
  });

  it('runs evenly over a day that is past', () => {
    const scale = stripScale({ from: now - 30 * hour, to: now - 20 * hour, now }, 1000);
    expect(scale(now - 25 * hour)).toBeCloseTo(500, 6);
  });

  it('has its ticks on whole steps of the shop, far enough apart to be read', () => {
    const window = stripWindow(now, 600);
    const ticks = axisTicks(window, 390, 330);
    expect(ticks.length).toBeGreaterThan(2);
    const step = (ticks[1] ?? 0) - (ticks[0] ?? 0);
    expect((step / (window.to - window.from)) * 390).toBeGreaterThanOrEqual(76);
    for (const tick of ticks) expect((tick + 330 * 60_000) % step).toBe(0);
  });
});
