/** Fitting: every word of every supplier becomes an observation, and the observations become groups. */
import type { Calendar, DeliveryRules } from '@holdfast/shop-calendar';
import { type DayClock, dayClock } from './day-clock.js';
import { type HeardWord, type KnownLine, type LeftOut, type OrderedLine, faultOf, knownAt } from './history.js';
import type { LineLaw } from './line-law.js';
import { type RunClock, runClock } from './runs.js';
import { codeOf } from './step-curve.js';
import { type Measure, Numbering, type Observed, type Strata, type Stratum, horizons, strataOf } from './strata.js';

export interface FitOptions {
  /** the shop's opening hours and zone; kept by the caller from one fit to the next, for what it has worked out is kept */
  readonly calendar: Calendar;
  /** epoch ms; what happened or was said after it is not seen */
  readonly now: number;
  /** delivery runs by supplier; a supplier that is absent comes at any open hour */
  readonly runs?: ReadonlyMap<string, DeliveryRules>;
  /** as many observations as a coarser group counts for behind a finer one; 8 unless told, not below 0 */
  readonly priorWeight?: number;
}

/** Everything learned from a history. Made by `fitArrivals`; asked by `arrivalOf`, `allHere` and the others. */
export interface ArrivalsModel {
  /** epoch ms; until when the history was seen */
  readonly fittedAt: number;
  /** lines with at least one observation */
  readonly lines: number;
  readonly leftOut: readonly LeftOut[];
  readonly days: DayClock;
  readonly numbering: Numbering;
  readonly strata: Readonly<Record<Measure, Strata>>;
  runsOf(supplierId: string | null): RunClock | null;
  /** what was last asked about each line */
  readonly laws: WeakMap<OrderedLine, { readonly now: number; readonly law: LineLaw | null }>;
}

const usualPriorWeight = 8;
/** open minutes in one step of the measure `hours` */
export const quarterHour = 15;
/** The group a word belongs to. */
export function stratumOf(days: DayClock, line: OrderedLine, word: HeardWord): Required<Stratum> {
  const ahead = word.dueDay === null ? 0 : days.workingDay(word.dueDay) - days.workingDay(days.dayOf(word.from));
  return {
    supplierId: line.supplierId,
    state: word.state,
    partKind: line.partKind,
    ordinal: word.ordinal >= 3 ? 3 : word.ordinal === 2 ? 2 : 1,
    horizon: horizons.find((upTo) => ahead <= upTo) ?? Infinity,
    later: word.from > line.orderedAt,
  };
}

/** The measure that serves a word: a day or two from somebody who has it in stock says the next run in other words. */
export function measureOf(days: DayClock, word: HeardWord, runs: RunClock | null): Measure {
  if (word.state === 'inStock') {
    const ahead = word.dueDay === null ? 0 : days.workingDay(word.dueDay) - days.workingDay(days.dayOf(word.from));
    if (ahead <= 1) return runs?.runs ? 'runs' : 'hours';
  }
  return word.dueDay === null ? 'wait' : 'slip';
}

/** The number of the first run that could bring it; with none in sight the next after those that have come. */
export const firstRun = (runs: RunClock | null, word: HeardWord): number =>
  runs === null ? 0 : (runs.firstMade(word.from) ?? runs.runsBy(word.from));

/**
 * The coordinate of an instant on a measure. For what is still open it is the greatest that is surely over: a working
 * day, or the time from one run to the next, is over when the next has begun.
 */
export function coordinateOf(
  measure: Measure,
  word: HeardWord,
  instant: number,
  over: boolean,
  clocks: Clocks,
): number {
  const { days, runs } = clocks;
  switch (measure) {
    case 'slip':
    case 'wait': {
      const origin = measure === 'slip' && word.dueDay !== null ? word.dueDay : days.dayOf(word.from);
      return days.workingDay(days.dayOf(instant)) - days.workingDay(origin) - (over ? 0 : 1);
    }
    case 'runs': {
      const run = (runs?.runsBy(instant) ?? 0) - firstRun(runs, word);
      return over ? Math.max(1, run) : Math.max(0, run - 1);
    }
    case 'hours': {
      const steps = days.calendar.openMinutes(word.from, instant) / quarterHour;
      return over ? Math.ceil(steps) : Math.floor(steps);
    }
  }
}

/**
 * Learns from the lines as they were known at `now`: those on their way count as having taken longer than until then.
 * n log n in the observations. Refuses faulty delivery rules and a negative prior weight with a RangeError; lines and
 * words that cannot be true are left out and listed.
 */
export function fitArrivals(history: readonly OrderedLine[], options: FitOptions): ArrivalsModel {
  const { calendar, now, priorWeight = usualPriorWeight } = options;
  if (!(priorWeight >= 0)) throw new RangeError(`${priorWeight} is not a weight of 0 or more.`);
  const leftOut: LeftOut[] = [];
  const sound = history.filter((line) => {
    const reason = faultOf(line);
    if (reason !== null) leftOut.push({ lineId: line.lineId, reason });
    return reason === null;
  });
  const from = sound.reduce((least, line) => Math.min(least, line.orderedAt), now);
  const days = dayClock(calendar, from);
  const clocks = new Map([...(options.runs ?? [])].map(([id, rules]) => [id, runClock(rules, days, from)] as const));
  const runsOf = (supplierId: string | null): RunClock | null =>
    supplierId === null ? null : (clocks.get(supplierId) ?? null);

  const learned = learn(sound, now, { days, runsOf }, (one) => leftOut.push(one));
  const strata = (measure: Measure): Strata => strataOf(measure, learned.observed[measure], priorWeight);
  return {
    fittedAt: now,
    lines: learned.lines,
    leftOut,
    days,
    numbering: learned.numbering,
    strata: { slip: strata('slip'), wait: strata('wait'), runs: strata('runs'), hours: strata('hours') },
    runsOf,
    laws: new WeakMap(),
  };
}

interface Clocks {
  readonly days: DayClock;
  readonly runs: RunClock | null;
}

interface Learned {
  readonly observed: Readonly<Record<Measure, Observed>>;
  readonly numbering: Numbering;
  lines: number;
}

function learn(
  history: readonly OrderedLine[],
  now: number,
  { days, runsOf }: Pick<ArrivalsModel, 'days' | 'runsOf'>,
  leaveOut: (one: LeftOut) => void,
): Learned {
  const none = (): Observed => ({ who: [], what: [], codes: [] });
  const into: Learned = {
    observed: { slip: none(), wait: none(), runs: none(), hours: none() },
    numbering: new Numbering(),
    lines: 0,
  };
  for (const line of history) {
    const known = knownAt(line, now, days, leaveOut);
    if (known === null) continue;
    into.lines += 1;
    const clocks = { days, runs: runsOf(line.supplierId) };
    for (const word of known.words) observe(line, word, known, clocks, into);
  }
  into.numbering.stopLearning();
  return into;
}

/** What one word teaches. The order itself teaches how long such a thing takes, whatever day was named for it. */
function observe(
  line: OrderedLine,
  word: HeardWord,
  known: KnownLine,
  clocks: Clocks,
  { observed, numbering }: Learned,
): void {
  const stratum = stratumOf(clocks.days, line, word);
  const who = numbering.who(line.supplierId, line.partKind);
  const what = numbering.what(stratum);
  const event = known.goodAt !== null;
  const end = known.goodAt ?? known.openUntil;
  const add = (measure: Measure): void => {
    const into = observed[measure];
    into.who.push(who);
    into.what.push(what);
    into.codes.push(codeOf(coordinateOf(measure, word, end, event, clocks), event));
  };
  const measure = measureOf(clocks.days, word, clocks.runs);
  add(measure);
  if (measure !== 'wait' && !stratum.later) add('wait');
}
