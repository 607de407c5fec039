/** When one part line will be here: its law, its three dates, and where they come from. */
import type { LocalDate } from '@holdfast/shop-calendar';
import { type DayClock, memoised } from './day-clock.js';
import { type HeardWord, type OrderedLine, knownAt } from './history.js';
import type { Basis, LineLaw } from './line-law.js';
import { type ArrivalsModel, coordinateOf, firstRun, measureOf, quarterHour, stratumOf } from './model.js';
import type { RunClock } from './runs.js';
import { remainingAfter, stepReaching } from './step-curve.js';
import type { Measure } from './strata.js';

/**
 * A day by which it is here with the probability asked for; or a day before which it is not said to be; or neither.
 * `at`: epoch ms, a time at which somebody can receive it (that day's last run, or its last open minute). `day`: that
 * day in the shop's zone.
 */
export type ArrivalDate =
  | { readonly kind: 'date'; readonly at: number; readonly day: LocalDate }
  | { readonly kind: 'notBefore'; readonly at: number; readonly day: LocalDate }
  | { readonly kind: 'noDate' };

export interface Arrival {
  readonly lineId: string;
  readonly p50: ArrivalDate;
  readonly p80: ArrivalDate;
  readonly p95: ArrivalDate;
  readonly basis: Basis;
}

export const dateKindAt = (model: ArrivalsModel, kind: 'date' | 'notBefore', at: number): ArrivalDate => ({
  kind,
  at,
  day: model.days.date(model.days.dayOf(at)),
});

/** When what came on a working day of that number is received: the supplier's last run of the day, or closing time. */
function receivedOn(model: ArrivalsModel, runs: RunClock | null, workingDay: number): number | null {
  const day = model.days.dayOfWorkingDay(Math.max(0, workingDay));
  if (day === null) return null;
  return runs?.lastOn(day) ?? model.days.lastOpenMinute(day);
}

/** Instants of the coordinates of a measure, from the word that they are counted from. */
function instants(
  model: ArrivalsModel,
  measure: Measure,
  word: HeardWord,
  runs: RunClock | null,
): (coordinate: number) => number | null {
  const { days } = model;
  if (measure === 'runs') {
    const first = firstRun(runs, word);
    return (coordinate) => runs?.receivedAt(first + coordinate - 1) ?? null;
  }
  if (measure === 'hours') {
    return (coordinate) => {
      const at = days.calendar.instantAfter(word.from, Math.max(0, coordinate) * quarterHour);
      return at === null ? null : days.calendar.nextOpen(at);
    };
  }
  const origin = days.workingDay(measure === 'slip' && word.dueDay !== null ? word.dueDay : days.dayOf(word.from));
  return (coordinate) => receivedOn(model, runs, origin + coordinate);
}

/** Coordinates tried before one is given up that always lies before now: a long run of days off. */
const triesAfterNow = 400;

/**
 * The law of a line that is still on its way at `now` (epoch ms); null if it had not been ordered by then. Kept by the
 * model for as long as it is asked about the same instant.
 */
export function lawOf(model: ArrivalsModel, line: OrderedLine, now: number): LineLaw | null {
  const kept = model.laws.get(line);
  if (kept?.now === now) return kept.law;
  const law = makeLaw(model, line, now);
  model.laws.set(line, { now, law });
  return law;
}

function makeLaw(model: ArrivalsModel, line: OrderedLine, now: number): LineLaw | null {
  const { days } = model;
  const known = knownAt(line, now, days, () => undefined);
  const word = known?.words.at(-1);
  if (known === null || word === undefined) return null;
  const runs = model.runsOf(line.supplierId);
  const measure = measureOf(days, word, runs);
  const facts = stratumOf(days, line, word);
  const stratum = {
    who: model.numbering.who(line.supplierId, line.partKind),
    what: model.numbering.what(facts),
  };
  const curve = model.strata[measure].curve(stratum);
  const over = overBy(days, measure, word, runs, now);
  const received = instants(model, measure, word, runs);
  const after = (coordinate: number): number | null => {
    for (let tried = coordinate; tried < coordinate + triesAfterNow; tried += 1) {
      const at = received(tried);
      if (at === null || at > now) return at;
    }
    return null;
  };
  const remaining = curve === null ? null : remainingAfter(curve, over);
  const named = known.words.findLast((one) => one.dueDay !== null);
  return {
    line,
    word,
    basis: {
      measure,
      ...model.strata[measure].source(stratum, facts),
      named: named?.dueDay == null ? null : { dueOn: days.date(named.dueDay), ordinal: named.ordinal },
    },
    remaining,
    notBefore: knownUntil(),
    stepInstant: memoised((step) => after(remaining?.curve.times[step] ?? over + 1)),
  };

  function knownUntil(): number | null {
    if (remaining !== null && remaining.curve.until === Infinity) return null;
    const ended = curve !== null && curve.times.length > 0;
    if (ended) return after(remaining?.curve.until ?? over + 1);
    // Nothing of the kind has ever come: how long the others have waited, and the day named, are all there is.
    const waited = remaining === null ? null : after(remaining.curve.until);
    const said = word?.dueDay == null ? null : after(measure === 'slip' ? 0 : over + 1);
    return waited === null || said === null ? (waited ?? said) : Math.max(waited, said);
  }
}

/** The greatest coordinate that is over; today as well once the shop has shut. */
function overBy(days: DayClock, measure: Measure, word: HeardWord, runs: RunClock | null, now: number): number {
  const over = coordinateOf(measure, word, now, false, { days, runs });
  const shut = (days.lastOpenMinute(days.dayOf(now)) ?? Infinity) < now;
  return (measure === 'slip' || measure === 'wait') && shut ? over + 1 : over;
}

/** The date at one level. */
export function dateOf(model: ArrivalsModel, law: LineLaw, p: number): ArrivalDate {
  const step = law.remaining === null ? null : stepReaching(law.remaining, p);
  const at = step === null ? law.notBefore : law.stepInstant(step);
  return at === null ? { kind: 'noDate' } : dateKindAt(model, step === null ? 'notBefore' : 'date', at);
}

/**
 * When an ordered line will be good, with 50, 80 and 95 %, as seen at `now` (epoch ms, not before the order: refused
 * with a RangeError). The law is that of the supplier's last word, given that it has not come yet; a line that is here
 * has its day three times. A day named by a supplier of whom nothing is known is a "not before".
 */
export function arrivalOf(model: ArrivalsModel, line: OrderedLine, now: number): Arrival {
  if (line.goodAt !== null && line.goodAt <= now) {
    const here = dateKindAt(model, 'date', line.goodAt);
    const basis: Basis = { measure: 'here', own: null, pooledFrom: null, named: null };
    return { lineId: line.lineId, p50: here, p80: here, p95: here, basis };
  }
  const law = lawOf(model, line, now);
  if (law === null) throw new RangeError(`Line ${line.lineId} had not been ordered by then.`);
  return {
    lineId: line.lineId,
    p50: dateOf(model, law, 0.5),
    p80: dateOf(model, law, 0.8),
    p95: dateOf(model, law, 0.95),
    basis: law.basis,
  };
}
