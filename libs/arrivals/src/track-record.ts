/**
 * How the dates would have held: the past asked again, each time with nothing but what was known then.
 *
 * Many parts come exactly on their day, so no day can be right in exactly 80 % of cases. The honest form is that the
 * share that came before the day given is at most the level, and the share that came by it at least the level.
 */
import type { DeliveryRules, Calendar } from '@holdfast/shop-calendar';
import { type ArrivalDate, arrivalOf } from './arrival.js';
import { type OrderedLine, knownAt } from './history.js';
import { type ArrivalsModel, fitArrivals } from './model.js';
import { pinballLoss, sampleQuantile } from './sample-quantile.js';

export interface TrackOptions {
  readonly calendar: Calendar;
  readonly runs?: ReadonlyMap<string, DeliveryRules>;
  readonly priorWeight?: number;
  /** the instants (epoch ms) at which the past is asked */
  readonly cuts: readonly number[];
  /** epoch ms; until when it is known what became of the lines */
  readonly until: number;
}

/** Pinball loss on average, calendar days; over the questions in which a day had been named and all three gave one. */
export interface Losses {
  readonly ours: number;
  readonly dayNamed: number;
  /** the day named and the supplier's quantile (Hyndman & Fan type 7) of slips of lines finished by then */
  readonly dayNamedPlusSlip: number;
}

export interface LevelRecord {
  readonly level: number;
  /** of the questions that were given a day: the share that came before it, and by it; null if there was none */
  readonly before: number | null;
  readonly by: number | null;
  /** questions given a day, of which it is known how they ended */
  readonly dated: number;
  /** shares of all questions */
  readonly notBefore: number;
  readonly noDate: number;
  /** of the "not before" answers: the share that came before that day all the same; at most the level, if all is well */
  readonly cameBeforeNotBefore: number | null;
  readonly loss: Losses | null;
}

export interface TrackRecord {
  /** questions: a line on its way at a cut */
  readonly asked: number;
  /** questions of which it cannot be said how they ended */
  readonly undecided: number;
  readonly levels: readonly LevelRecord[];
  /** average of the levels; null where any has none */
  readonly loss: Losses | null;
  /** questions over which the losses are averaged */
  readonly compared: number;
}

const levels = [
  [0.5, 'p50'],
  [0.8, 'p80'],
  [0.95, 'p95'],
] as const;

/** One question at one level. Days are days since 1970-01-01 in the shop's zone. */
interface Answered {
  readonly said: ArrivalDate['kind'];
  readonly day: number;
  readonly came: number | null;
  readonly knownUntil: number;
  readonly losses: Losses | null;
}

/** The days a line had been given by a supplier when it came, less the day it came: calendar days, early is negative. */
function finishedSlips(history: readonly OrderedLine[], model: ArrivalsModel, cut: number): Map<string, number[]> {
  const slips = new Map<string, number[]>();
  for (const line of history) {
    if (line.goodAt === null || line.goodAt > cut || line.supplierId === null) continue;
    const named = knownAt(line, cut, model.days, () => undefined)?.words.findLast((one) => one.dueDay !== null);
    if (named?.dueDay == null) continue;
    const of = slips.get(line.supplierId) ?? [];
    of.push(model.days.dayOf(line.goodAt) - named.dueDay);
    slips.set(line.supplierId, of);
  }
  return slips;
}

interface Cut {
  readonly at: number;
  readonly model: ArrivalsModel;
  readonly slips: ReadonlyMap<string, readonly number[]>;
  readonly until: number;
}

/** The answers about one line at one cut, one for each level. */
function ask(line: OrderedLine, { at, model, slips, until }: Cut): readonly Answered[] {
  const { days } = model;
  const arrival = arrivalOf(model, line, at);
  const came = line.goodAt !== null && line.goodAt <= until ? days.dayOf(line.goodAt) : null;
  const knownUntil = days.dayOf(Math.min(until, line.closedAt ?? until));
  const due = knownAt(line, at, days, () => undefined)?.words.findLast((one) => one.dueDay !== null)?.dueDay ?? null;
  const today = days.dayOf(at);
  const comparable = came !== null && due !== null && levels.every(([, name]) => arrival[name].kind !== 'noDate');
  const ofSupplier = slips.get(line.supplierId ?? '') ?? [];
  return levels.map(([level, name]) => {
    const said = arrival[name];
    const day = said.kind === 'noDate' ? today : days.dayNumber(said.day);
    const loss = (other: number): number => pinballLoss(level, other, came ?? 0);
    // A day that has passed is known to be wrong; nobody would still hold to it.
    const named = Math.max(today, due ?? today);
    const shifted = Math.max(today, (due ?? today) + (sampleQuantile(ofSupplier, level) ?? 0));
    const losses = comparable ? { ours: loss(day), dayNamed: loss(named), dayNamedPlusSlip: loss(shifted) } : null;
    return { said: said.kind, day, came, knownUntil, losses };
  });
}

const shareOf = (part: number, whole: number): number | null => (whole === 0 ? null : part / whole);

function meanLosses(all: readonly (Losses | null)[]): Losses | null {
  const given = all.filter((one) => one !== null);
  if (given.length === 0) return null;
  const mean = (pick: (one: Losses) => number): number => given.reduce((sum, one) => sum + pick(one), 0) / given.length;
  return {
    ours: mean((one) => one.ours),
    dayNamed: mean((one) => one.dayNamed),
    dayNamedPlusSlip: mean((one) => one.dayNamedPlusSlip),
  };
}

/** Whether it came before the day, on it, or after; null: nobody knows. */
function outcome({ came, day, knownUntil }: Answered): 'before' | 'on' | 'after' | null {
  if (came === null) return knownUntil > day ? 'after' : null;
  return came < day ? 'before' : came === day ? 'on' : 'after';
}

function recordOf(level: number, answers: readonly Answered[]): LevelRecord {
  const dated = answers
    .filter((one) => one.said === 'date')
    .map(outcome)
    .filter((one) => one !== null);
  const notBefore = answers.filter((one) => one.said === 'notBefore');
  const ended = notBefore.map(outcome).filter((one) => one !== null);
  const before = dated.filter((one) => one === 'before').length;
  const on = dated.filter((one) => one === 'on').length;
  return {
    level,
    before: shareOf(before, dated.length),
    by: shareOf(before + on, dated.length),
    dated: dated.length,
    notBefore: notBefore.length / Math.max(1, answers.length),
    noDate: answers.filter((one) => one.said === 'noDate').length / Math.max(1, answers.length),
    cameBeforeNotBefore: shareOf(ended.filter((one) => one === 'before').length, ended.length),
    loss: meanLosses(answers.map((one) => one.losses)),
  };
}

/**
 * Asks about every line that was on its way at each cut, with a model fitted to what was known then. In the losses a
 * "not before" counts as the day it names, which is never to our advantage. Cost: one fit for each cut.
 */
export function trackRecord(history: readonly OrderedLine[], options: TrackOptions): TrackRecord {
  const asked: (readonly Answered[])[] = [];
  const { cuts, until, ...fit } = options;
  for (const at of cuts) {
    const model = fitArrivals(history, { ...fit, now: at });
    const faulty = new Set(model.leftOut.filter((one) => one.reason !== 'dayBeforeItWasSaid').map((one) => one.lineId));
    const cut: Cut = { at, model, slips: finishedSlips(history, model, at), until };
    for (const line of history) {
      const open = line.orderedAt <= at && (line.goodAt ?? Infinity) > at && (line.closedAt ?? Infinity) > at;
      if (open && !faulty.has(line.lineId)) asked.push(ask(line, cut));
    }
  }
  const records = levels.map(([level], i) =>
    recordOf(
      level,
      asked.flatMap((one) => one[i] ?? []),
    ),
  );
  const whole = records.every((one) => one.loss !== null) ? meanLosses(records.map((one) => one.loss)) : null;
  return {
    asked: asked.length,
    undecided: asked.filter((one) => one.some((answer) => outcome(answer) === null)).length,
    levels: records,
    loss: whole,
    compared: asked.filter((one) => one[0]?.losses != null).length,
  };
}
