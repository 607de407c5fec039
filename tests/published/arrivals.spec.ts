import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import {
  type Observation,
  type QuantileType,
  allIndependent,
  kaplanMeier,
  midpointQuantile,
  quantileLimits,
  sampleQuantile,
  survivalAt,
} from '@holdfast/arrivals';
import { benchArrivals } from '../bench/arrivals.js';
import { readLeadTimes } from '../bench/lead-time-file.js';
import { seededRandom } from '../kit/seeded-random.js';

/** 'a' ended then, 'a+' was still open then. */
const observed = (text: string): Observation[] =>
  text.split(',').map((one) => ({ time: Number.parseFloat(one), event: !one.endsWith('+') }));

/**
 * Weeks of remission, Gehan 1965; as printed in Le, Introductory Biostatistics, example 11.1, and on the `gehan` page
 * of MASS (Cox & Oakes 1984, p. 7).
 */
const sixMp = observed('6,6,6,7,10,13,16,22,23,6+,9+,10+,11+,17+,19+,20+,25+,32+,32+,34+,35+');
const placebo = observed('1,1,2,2,3,4,4,5,5,8,8,8,8,11,11,12,12,15,17,22,23');
/** `aml` of therneau/survival, tests/difftest.Rout.save. */
const maintained = observed('9,13,13+,18,23,28+,31,34,45+,48,161+');
const nonmaintained = observed('5,5,8,8,12,16+,23,27,30,33,43,45');

const groups: Readonly<Record<string, readonly Observation[]>> = {
  '6-MP': sixMp,
  placebo,
  Maintained: maintained,
  Nonmaintained: nonmaintained,
};

/** The tables as R prints them; kept outside the repository. */
const tables = fileURLToPath(new URL('../../../shared/reference/data/km/published-tables.csv', import.meta.url));

/** Half a unit of the last digit printed. */
const tolerance = (printed: string): number => 0.5001 * 10 ** -(printed.split('.')[1]?.length ?? 0);
const near = (value: number, printed: string): boolean => Math.abs(value - Number(printed)) <= tolerance(printed);

const isPrinted = (value: number, printed: string): boolean =>
  /^Na?[NA]$/i.test(printed) ? Number.isNaN(value) : near(value, printed);

describe('Kaplan–Meier, against R survfit', () => {
  // Klein & Moeschberger example 4.1 (KMsurv drug6mp), printed R output.
  it('KM-1: survival of the 6-MP group is the exact fractions 6/7 … 160/357', () => {
    const steps = kaplanMeier(sixMp);
    expect(steps.map((one) => one.time)).toEqual([6, 7, 10, 13, 16, 22, 23]);
    const exact = [6 / 7, 96 / 119, 64 / 85, 176 / 255, 32 / 51, 64 / 119, 160 / 357];
    steps.forEach((one, i) => expect(one.survival).toBeCloseTo(exact[i] ?? 0, 12));
    const printed = ['.857', '.807', '.753', '.690', '.627', '.538', '.448'];
    expect(steps.map((one, i) => near(one.survival, printed[i] ?? ''))).toEqual(printed.map(() => true));
  });

  it("KM-2: Greenwood's standard errors of the 6-MP group to every printed digit", () => {
    const printed = ['.0764', '.0869', '.0963', '.1068', '.1141', '.1282', '.1346'];
    const steps = kaplanMeier(sixMp);
    expect(steps.map((one, i) => near(one.standardError, printed[i] ?? ''))).toEqual(printed.map(() => true));
  });

  it('KM-3: 95 % limits of type log, the upper one cut at 1, of the 6-MP group', () => {
    const printed = '.720,1.000 .653,.996 .586,.968 .510,.935 .439,.896 .337,.858 .249,.807'.split(' ');
    kaplanMeier(sixMp).forEach((one, i) => {
      const [lower = '', upper = ''] = printed[i]?.split(',') ?? [];
      expect([near(one.lower, lower), near(one.upper, upper)]).toEqual([true, true]);
    });
  });

  it('KM-4, KM-6: all rows of placebo and aml as R prints them; at 0 there is no standard error and no limit', () => {
    if (!existsSync(tables)) {
      console.log('KM-4, KM-6: the printed tables are absent; only the rows carried over are checked.');
    }
    const carriedOver = [
      'placebo,8,12,4,.3810,.1060,.22085,.657',
      'placebo,22,2,1,.0476,.0465,.00703,.322',
      'placebo,23,1,1,0,NaN,NA,NA',
      'Maintained,18,8,1,.716,.1397,.4884,1.000',
      'Maintained,48,2,1,.184,.1535,.0359,.944',
      'Nonmaintained,43,2,1,.0972,.0919,.0153,.620',
    ];
    const rows = existsSync(tables) ? readFileSync(tables, 'utf8').trim().split(/\s*\n/).slice(1) : carriedOver;
    expect(rows.length).toBeGreaterThanOrEqual(carriedOver.length);
    for (const row of rows) {
      const cells = row.split(',');
      const [group = '', time] = cells;
      const step = kaplanMeier(groups[group] ?? []).find((one) => one.time === Number(time));
      if (step === undefined) throw new Error(`There is no step for ${row}.`);
      const { atRisk, events, survival, standardError, lower, upper } = step;
      const told = [atRisk, events, survival, standardError, lower, upper].map((value, i) =>
        isPrinted(value, cells[i + 2] ?? ''),
      );
      expect([row, ...told]).toEqual([row, true, true, true, true, true, true]);
    }
  });

  it('KM-5: placebo at 10 weeks is 8/21, standard error .106 (Cox & Oakes, table 1.1, worked by hand)', () => {
    expect(survivalAt(kaplanMeier(placebo), 10)).toBeCloseTo(8 / 21, 12);
    expect(near(kaplanMeier(placebo).find((one) => one.time === 8)?.standardError ?? 0, '.106')).toBe(true);
  });

  it('KM-7: medians 31 and 23 with lower limits 18 and 8 (therneau/survival tests/doaml.Rout.save)', () => {
    expect([maintained, nonmaintained].map((one) => midpointQuantile(kaplanMeier(one), 0.5))).toEqual([31, 23]);
    expect([maintained, nonmaintained].map((one) => quantileLimits(kaplanMeier(one), 0.5).lower)).toEqual([18, 8]);
  });

  it('KM-9: a flat step at exactly the level gives its midpoint, past the end nothing (tests/quantile.Rout.save)', () => {
    const steps = kaplanMeier(observed('9,1,1+,6,6,8+,10+'));
    const levels = [13 / 14, 6 / 7, 2 / 3, 0.5, 9 / 35, 0.1];
    const found = levels.map((survival) => midpointQuantile(steps, 1 - survival, 10));
    expect(found).toEqual([1, 3.5, 6, 9, 9.5, null]);
  });

  it('KM-10: what has waited: P(T > 16 | T > 7) = 7/9, P(T ≤ 22 | T > 10) = 2/7 (ratios of KM-1)', () => {
    const steps = kaplanMeier(sixMp);
    expect(survivalAt(steps, 16) / survivalAt(steps, 7)).toBeCloseTo(7 / 9, 12);
    expect(1 - survivalAt(steps, 22) / survivalAt(steps, 10)).toBeCloseTo(2 / 7, 12);
  });
});

describe('the last of several, elementary order statistics', () => {
  it('MAX-1: two fair dice: P(max ≤ 4) = 4/9, mean of the greater 161/36', () => {
    const both = (t: number): number => allIndependent([t / 6, t / 6]);
    expect(both(4)).toBeCloseTo(4 / 9, 12);
    const mean = [0, 1, 2, 3, 4, 5].reduce((sum, t) => sum + 1 - both(t), 0);
    expect(mean).toBeCloseTo(161 / 36, 12);
  });

  it('MAX-2: mean of the greatest of three exponential times is 11/6 (harmonic number)', () => {
    const step = 0.001;
    let mean = 0;
    for (let t = step / 2; t < 40; t += step) {
      const share = 1 - Math.exp(-t);
      mean += (1 - allIndependent([share, share, share])) * step;
    }
    expect(mean).toBeCloseTo(11 / 6, 5);
  });
});

describe('sample quantiles', () => {
  it('Q-1: p = 0.4 of 15, 20, 35, 40, 50 by the nine types of Hyndman & Fan (NumPy test_linear_interpolation)', () => {
    const types: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];
    const found = types.map((type) => sampleQuantile([40, 15, 50, 20, 35], 0.4, type) ?? 0);
    [20, 27.5, 20, 20, 27.5, 26, 29, 27, 27.125].forEach((value, i) => expect(found[i]).toBeCloseTo(value, 9));
  });
});

describe('the file of lead times', () => {
  it('takes quoted vendors and open orders, and rejects each dirty row with its reason', () => {
    const { history, rejected } = readLeadTimes(
      [
        'id,vendor,mode,po_sent,scheduled,delivered',
        '1,"ORGENICS, ""LTD""",Air,2007-01-10,2007-03-19,2007-03-19',
        '2,B,Air,2007-01-10,2007-03-19,',
        '3,B,Air,2007-01-10,,2007-02-01',
        '4,B,Air,2007-01-10,2007-03-19,2007-01-09',
        '5,B,Air,2007-01-10,2007-01-09,2007-03-01',
        '6,B,Air,2007-02-30,2007-03-19,2007-03-01',
        '1,B,Air,2007-01-10,2007-03-19,2007-03-01',
        ',B,Air,2007-01-10,2007-03-19,2007-03-01',
        '7,,Air,2007-01-10,2007-03-19,2007-03-01',
        '8,B,Air,2007-01-10,2007-03-19',
        '',
      ].join('\r\n'),
    );
    expect(history.map((one) => [one.lineId, one.supplierId, one.goodAt === null, one.words.length])).toEqual([
      ['1', 'ORGENICS, "LTD"', false, 1],
      ['2', 'B', true, 1],
      ['3', 'B', false, 0],
    ]);
    expect(rejected.map((one) => [one.row, one.reason])).toEqual([
      [5, 'deliveredBeforeSent'],
      [6, 'scheduledBeforeSent'],
      [7, 'notADate'],
      [8, 'idTwice'],
      [9, 'noId'],
      [10, 'noVendor'],
      [11, 'columns'],
    ]);
  });

  it('refuses a file with other columns', () => {
    expect(() => readLeadTimes('id,supplier\n')).toThrow(RangeError);
  });

  it('refuses an option it does not know', () => {
    expect(() => benchArrivals(['--future'])).toThrow(RangeError);
  });
});

/** USAID SCMS delivery history, orders sent before 2011: open data of the US government, kept outside the repository. */
const leadTimes = fileURLToPath(
  new URL('../../../shared/reference/data/leadtimes/scms-po-leadtimes.csv', import.meta.url),
);

/** Five vendors who mostly keep their day and are up to seven weeks late else, as a file of the same columns. */
function inventedFile(): string {
  const random = seededRandom(11);
  const date = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);
  const rows = Array.from({ length: 800 }, (_, i) => {
    const sent = 13_000 + Math.floor(random() * 1_400);
    const scheduled = sent + 40 + Math.floor(random() * 60);
    const slip = random() < 0.7 ? 0 : Math.floor(random() * 50) - 5;
    return [i, `vendor ${String(i % 5)}`, 'Air', date(sent), date(scheduled), date(scheduled + slip)].join(',');
  });
  const file = join(mkdtempSync(join(tmpdir(), 'holdfast-lead-times-')), 'invented.csv');
  writeFileSync(file, ['id,vendor,mode,po_sent,scheduled,delivered', ...rows].join('\n'));
  return file;
}

describe('the back-test', () => {
  it('puts each level between its two shares within 5 points, and its mean loss below both other ways', async () => {
    const invented = inventedFile();
    const line = await benchArrivals(['--history', invented]);
    rmSync(dirname(invented), { recursive: true });
    expect(line).toMatchObject({ holds: true, rows: 800, rejected: {} });
    if (!existsSync(leadTimes)) {
      console.log('Back-test: the data set of lead times is absent; only an invented file is tried.');
      return;
    }
    const real = await benchArrivals(['--history', leadTimes]);
    expect(real).toMatchObject({ holds: true, rows: 1_675, rejected: { deliveredBeforeSent: 2 }, undecided: 0 });
    const days = real['lossDays'] as { ours: number; dayNamed: number; dayNamedPlusSlip: number };
    expect(days.ours).toBeLessThan(0.9 * Math.min(days.dayNamed, days.dayNamedPlusSlip));
  });
});
