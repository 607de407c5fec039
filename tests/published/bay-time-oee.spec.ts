/**
 * Worked examples of overall equipment effectiveness. The product is no figure of ours, but its three factors are, with
 * a bay in the place of the machine (our reading): availability is bay use, performance the efficiency of people, quality
 * the share of jobs that do not come back.
 */
import { describe, expect, it } from '@jest/globals';
import { flowOf, partition, peopleFigures, totalsOfAccount, type Visit } from '@holdfast/bay-time';

const minute = 60_000;

interface Example {
  readonly plannedMinutes: number;
  readonly runMinutes: number;
  readonly perMinute: number;
  readonly made: number;
  readonly bad: number;
}

function bayUse({ plannedMinutes, runMinutes }: Example): number | null {
  const opening = { from: 0, to: plannedMinutes * minute };
  const account = partition({
    window: opening,
    open: [opening],
    outOfUse: [],
    stays: [{ jobId: 'run', kind: 'stands', ...opening }],
    clocks: [{ jobId: 'run', personId: 'a', bench: false, from: 0, to: runMinutes * minute }],
    holds: [{ holdId: 'down', jobId: 'run', lineIds: [], reason: 'tool', from: runMinutes * minute, to: null }],
    lines: [],
    storedJobs: [],
    breaks: [],
    graceMs: 0,
    now: opening.to,
  });
  return totalsOfAccount(account).utilisation;
}

function efficiency({ runMinutes, perMinute, made }: Example): number | null {
  const end = runMinutes * minute;
  const [figures] = peopleFigures({
    presence: [{ personId: 'a', from: 0, to: end }],
    clocks: [{ personId: 'a', lineId: 'run', from: 0, to: end }],
    finished: [{ lineId: 'run', doneAt: end - 1, bookMs: Math.round((made / perMinute) * minute) }],
    linesWithBook: new Set(['run']),
    periods: [{ from: 0, to: end }],
    now: end,
  });
  return figures?.shop.efficiency ?? null;
}

function firstTimeRight({ made, bad }: Example): number | null {
  const window = { from: 0, to: made };
  const visits = Array.from({ length: made }, (_, i): Visit => {
    const kind = i < bad ? 'comeback' : 'normal';
    return { jobId: `${i}`, vehicleId: `${i}`, fleet: null, kind, from: i, to: i + 1 };
  });
  const nothing = { open: [], clocks: [], holds: [], lines: [], storedJobs: [] };
  const { perHundred } = flowOf({ window, now: made, days: [window], visits, ...nothing }).comebacks;
  return perHundred === null ? null : 1 - perHundred / 100;
}

/** The three factors and their product, in per cent. */
function factors(example: Example): number[] {
  const [a, p, q] = [bayUse(example) ?? NaN, efficiency(example) ?? NaN, firstTimeRight(example) ?? NaN];
  return [a, p, q, a * p * q].map((share) => share * 100);
}

describe('worked examples of OEE, by our figures', () => {
  // ISO-3. Source: OEE worksheet after Vorne (docs.google.com/spreadsheets/d/1CTm7r8-…): a shift of 480 min less 30 and
  // 30 min of breaks, 47 min down, 60 a minute, 19 271 made, 423 of them bad.
  it('88.81 % x 86.11 % x 97.80 % = 74.79 %', () => {
    const planned = 480 - 30 - 30;
    const example = { plannedMinutes: planned, runMinutes: planned - 47, perMinute: 60, made: 19_271, bad: 423 };
    expect(factors(example).map((share) => share.toFixed(2))).toEqual(['88.81', '86.11', '97.80', '74.79']);
  });

  // ISO-4. Source: Vorne worksheet (scribd 436966062): 2 780 min planned, 1 820 run, 1.041 a minute, 1 626 made, 8 bad.
  // The sheet rounds the first two factors and cuts off the last two figures (99.508 and 55.909), so the unit of the
  // last digit is what can be asked.
  it('65.47 %, 85.82 %, 99.50 % and 55.90 %, to the last digit printed', () => {
    const found = factors({ plannedMinutes: 2_780, runMinutes: 1_820, perMinute: 1.041, made: 1_626, bad: 8 });
    for (const [at, printed] of [65.47, 85.82, 99.5, 55.9].entries()) {
      expect(Math.abs((found[at] ?? NaN) - printed)).toBeLessThan(0.01);
    }
  });
});
