/**
 * `arrivals`: refit on 10 000 lines of history and the dates of 500 open lines and of their jobs, all of it in one
 * process with nothing else running. `arrivals --history FILE.csv`: the same library tried on a past, at cuts of 28
 * days, each time with nothing but what was known then.
 */
import { readFileSync } from 'node:fs';
import { type OrderedLine, allHere, arrivalOf, fitArrivals, trackRecord } from '@holdfast/arrivals';
import { type Calendar, calendarOf, sameHours, weekdays } from '@holdfast/shop-calendar';
import { inventedHistory, inventedRuns, inventedShop } from './invented-orders.js';
import { readLeadTimes } from './lead-time-file.js';
import { type BenchLine, percentile, round } from './measure.js';

const targetMs = 50;
const openLines = 500;
const dayMs = 86_400_000;

interface Timed {
  readonly lines: number;
  readonly medianMs: number;
  readonly leastMs: number;
  /** processor time, the collector's helpers counted: what a busy machine does not change much */
  readonly cpuMs: number;
  readonly firstMs: number;
}

/** The calendar is kept from fit to fit, as a server keeps it; the first run pays for what it works out. */
function timed(lines: number, runs: number): Timed {
  const { history, open, now } = inventedHistory(lines, openLines, 20_260_301);
  const calendar = inventedShop();
  const times: number[] = [];
  const cpuBefore = process.cpuUsage();
  for (let run = 0; run < runs; run += 1) {
    const started = performance.now();
    const model = fitArrivals(history, { calendar, now, runs: inventedRuns });
    for (const line of open) arrivalOf(model, line, now);
    for (let job = 0; job < open.length; job += 4) allHere(model, open.slice(job, job + 4), now);
    times.push(performance.now() - started);
  }
  const cpu = process.cpuUsage(cpuBefore);
  const sorted = [...times].sort((a, b) => a - b);
  return {
    lines,
    medianMs: percentile(sorted, 0.5),
    leastMs: sorted[0] ?? Number.NaN,
    cpuMs: (cpu.user + cpu.system) / 1000 / runs,
    firstMs: times[0] ?? Number.NaN,
  };
}

function benchSpeed(): BenchLine {
  timed(1_000, 5);
  const all = [2_500, 5_000, 10_000, 20_000, 40_000].map((lines) => timed(lines, 15));
  const asked = all.find((one) => one.lines === 10_000);
  if (asked === undefined) throw new Error('10 000 lines were not tried.');
  const { medianMs } = asked;
  return {
    name: 'arrivals',
    ratio: null,
    medianMs: round(medianMs, 1),
    leastMs: round(asked.leastMs, 1),
    cpuMs: round(asked.cpuMs, 1),
    firstMs: round(asked.firstMs, 1),
    growth: all.map(({ lines, medianMs: ms, leastMs }) => ({
      lines,
      medianMs: round(ms, 1),
      leastMs: round(leastMs, 1),
      nanosecondsPerNLogN: round((leastMs * 1e6) / (lines * Math.log2(lines)), 1),
    })),
    target: `refit on 10 000 lines and all dates of ${String(openLines)} open ones in ${String(targetMs)} ms; n log n`,
    holds: medianMs <= targetMs,
  };
}

/** Freight arrives on any day of the week. */
const everyDay: Calendar = calendarOf({
  zone: 'UTC',
  hours: [{ validFrom: '1970-01-01', week: sameHours(weekdays, [['08:00', '17:00']]), breaks: sameHours([], []) }],
  exceptions: [],
});

function cutsOf(history: readonly OrderedLine[]): { readonly cuts: readonly number[]; readonly until: number } {
  const instants = history.flatMap((one) => [one.orderedAt, one.goodAt ?? one.orderedAt]).sort((a, b) => a - b);
  const until = instants.at(-1) ?? 0;
  const cuts: number[] = [];
  for (let at = (instants[0] ?? 0) + 365 * dayMs; at < until; at += 28 * dayMs) cuts.push(at);
  return { cuts, until };
}

function countBy(names: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const one of names) counts[one] = (counts[one] ?? 0) + 1;
  return counts;
}

function benchHistory(file: string): BenchLine {
  const { history, rejected } = readLeadTimes(readFileSync(file, 'utf8'));
  const { cuts, until } = cutsOf(history);
  const record = trackRecord(history, { calendar: everyDay, cuts, until });
  const points = (share: number | null): number | null => (share === null ? null : round(share * 100, 1));
  const within = record.levels.every(
    ({ level, before, by }) => before !== null && by !== null && before - 0.05 <= level && level <= by + 0.05,
  );
  const { loss } = record;
  const rounded = (one: typeof loss) =>
    one && {
      ours: round(one.ours, 3),
      dayNamed: round(one.dayNamed, 3),
      dayNamedPlusSlip: round(one.dayNamedPlusSlip, 3),
    };
  return {
    name: 'arrivals --history',
    ratio: loss && round(loss.ours / Math.min(loss.dayNamed, loss.dayNamedPlusSlip)),
    rows: history.length + rejected.length,
    rejected: countBy(rejected.map((one) => one.reason)),
    rejectedRows: rejected.slice(0, 20),
    cuts: cuts.length,
    asked: record.asked,
    undecided: record.undecided,
    levels: record.levels.map((one) => ({
      percent: one.level * 100,
      beforePercent: points(one.before),
      byPercent: points(one.by),
      dated: one.dated,
      notBeforePercent: points(one.notBefore),
      cameBeforeNotBeforePercent: points(one.cameBeforeNotBefore),
      noDatePercent: points(one.noDate),
      loss: rounded(one.loss),
    })),
    compared: record.compared,
    lossDays: rounded(loss),
    target: 'each level within 5 points of P(T < d) to P(T ≤ d); mean pinball loss below both other ways',
    holds: within && loss !== null && loss.ours < loss.dayNamed && loss.ours < loss.dayNamedPlusSlip,
  };
}

export function benchArrivals(options: readonly string[] = []): Promise<BenchLine> {
  const [option, file] = options;
  if (option === undefined) return Promise.resolve(benchSpeed());
  if (option !== '--history' || file === undefined) {
    throw new RangeError('Say `arrivals`, or `arrivals --history FILE.csv`.');
  }
  return Promise.resolve(benchHistory(file));
}
