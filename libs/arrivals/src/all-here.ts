/**
 * When the last part that a job needs will be here.
 *
 * Hidden here: which lines travel together, and how the laws of single lines become the law of the last one. Guaranteed:
 * the dates are those of shipments that come independently of each other; where some hang together the range is given
 * as well in which the truth lies whatever the tie between them (Fréchet), and it always holds the dates.
 */
import { type ArrivalDate, dateKindAt, lawOf } from './arrival.js';
import { allIndependent, frechetRange } from './all-of.js';
import type { OrderedLine } from './history.js';
import type { LineLaw } from './line-law.js';
import type { ArrivalsModel } from './model.js';
import { shareAtStep, stepReaching } from './step-curve.js';

export interface ThreeDates {
  readonly p50: ArrivalDate;
  readonly p80: ArrivalDate;
  readonly p95: ArrivalDate;
}

export interface AllHere extends ThreeDates {
  /** lines that travel together: of one order, with one day named, or in stock */
  readonly shipments: readonly (readonly string[])[];
  /** lines of one maker or family that wait on a backorder in different shipments */
  readonly together: readonly { readonly family: string; readonly lineIds: readonly string[] }[];
  /** the dates if what hangs together comes as much at once as can be, and as little; null: nothing hangs together */
  readonly range: { readonly earliest: ThreeDates; readonly latest: ThreeDates } | null;
  /** the line whose own 80 % day is the latest, or that has none; null: all are here */
  readonly decidedBy: string | null;
  /** lines of which nothing at all is known: while there are any, there is no date */
  readonly withoutDate: readonly string[];
}

/** P(all here by an instant), 0 to 1: independent, and the Fréchet range where something hangs together. */
export interface ChanceAllHere {
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  /** false: beyond what the history reaches; the chance is then at least this */
  readonly known: boolean;
}

type Combine = 'independent' | 'low' | 'high';

interface Shipment {
  readonly laws: readonly LineLaw[];
  /** the backorder it hangs on; null: on none */
  readonly family: string | null;
}

/** A part on its way: what is here already does not decide. */
const awaited = (lines: readonly OrderedLine[], now: number): readonly OrderedLine[] =>
  lines.filter((one) => (one.goodAt ?? Infinity) > now && (one.closedAt ?? Infinity) > now);

function shipmentsOf(laws: readonly LineLaw[]): Shipment[] {
  const groups = new Map<string, LineLaw[]>();
  for (const law of laws) {
    const { line, word } = law;
    const tie = word.dueDay ?? (word.state === 'inStock' ? 'inStock' : null);
    const key = line.orderId === null || tie === null ? `line ${line.lineId}` : `order ${line.orderId} ${tie}`;
    groups.set(key, [...(groups.get(key) ?? []), law]);
  }
  return [...groups.values()].map((all) => ({ laws: all, family: familyOf(all) }));
}

function familyOf(laws: readonly LineLaw[]): string | null {
  const waiting = laws.find(
    ({ line, word }) =>
      line.family !== null && (word.state === 'backorderedWithDate' || word.state === 'backorderedNoDate'),
  );
  return waiting?.line.family ?? null;
}

/** Shipments by what they hang on; each that hangs on nothing is alone. */
function tiesOf(shipments: readonly Shipment[]): Shipment[][] {
  const ties = new Map<string | Shipment, Shipment[]>();
  for (const one of shipments) {
    const key = one.family ?? one;
    ties.set(key, [...(ties.get(key) ?? []), one]);
  }
  return [...ties.values()];
}

/**
 * P(this line by an instant). Beyond what its history reaches: at least what was reached, and with `hopeful` all that
 * can be.
 */
function shareBy(law: LineLaw, at: number, hopeful: boolean): number {
  if (hopeful && law.notBefore !== null && law.notBefore <= at) return 1;
  const step = lastStepBy(law, at);
  return step === null || law.remaining === null ? 0 : shareAtStep(law.remaining, step);
}

/** The last step still to come whose instant has come at `at`; null if none has. */
function lastStepBy({ remaining, stepInstant }: LineLaw, at: number): number | null {
  if (remaining === null) return null;
  let low = remaining.first;
  let high = remaining.curve.times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((stepInstant(middle) ?? Infinity) <= at) low = middle + 1;
    else high = middle;
  }
  return low === remaining.first ? null : low - 1;
}

/** The lines of one shipment come at once: the slowest of their laws is the shipment's. */
function chanceBy(ties: readonly (readonly Shipment[])[], at: number, combine: Combine, hopeful: boolean): number {
  const shares = ties.map((tie) =>
    tie.map((shipment) => Math.min(...shipment.laws.map((law) => shareBy(law, at, hopeful)))),
  );
  if (combine === 'independent') return allIndependent(shares.flat());
  return allIndependent(shares.map((tie) => frechetRange(tie)[combine]));
}

/** When this line alone reaches a share; with `hopeful` no later than its history reaches. */
function reaches(law: LineLaw, p: number, hopeful: boolean): number | null {
  const step = law.remaining === null ? null : stepReaching(law.remaining, p);
  if (step !== null) return law.stepInstant(step);
  return hopeful ? law.notBefore : null;
}

/** The first of a line's own instants in (from, before) at which it is enough; null if there is none. */
function firstOwn(law: LineLaw, from: number, before: number, enough: (at: number) => boolean): number | null {
  const { remaining } = law;
  if (remaining === null) return null;
  let low = (lastStepBy(law, from) ?? remaining.first - 1) + 1;
  const end = before === Infinity ? remaining.curve.times.length : (lastStepBy(law, before - 1) ?? low - 1) + 1;
  let high = end;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (enough(law.stepInstant(middle) ?? Infinity)) high = middle;
    else low = middle + 1;
  }
  return low < end ? law.stepInstant(low) : null;
}

/**
 * The first instant by which all are here with probability `p`; null if the curves end before. It is an instant at which
 * one of the lines can come, so each line's own are searched by halving.
 */
function firstInstant(
  ties: readonly (readonly Shipment[])[],
  p: number,
  combine: Combine,
  hopeful: boolean,
): number | null {
  const laws = ties.flat().flatMap((one) => one.laws);
  // None of them can be slower than p.
  const alone = laws.map((law) => reaches(law, p, hopeful));
  if (alone.includes(null)) return null;
  const from = Math.max(...alone.map((one) => one ?? 0));
  const enough = (at: number): boolean => chanceBy(ties, at, combine, hopeful) >= p - 1e-9;
  if (enough(from)) return from;
  let found = Infinity;
  for (const law of laws) {
    const ends = hopeful ? (law.notBefore ?? Infinity) : Infinity;
    if (ends < found && enough(ends)) found = ends;
    found = Math.min(found, firstOwn(law, from, found, enough) ?? Infinity);
  }
  return found === Infinity ? null : found;
}

function threeDates(model: ArrivalsModel, ties: readonly (readonly Shipment[])[], combine: Combine): ThreeDates {
  const date = (p: number): ArrivalDate => {
    const sure = firstInstant(ties, p, combine, false);
    if (sure !== null) return dateKindAt(model, 'date', sure);
    const hoped = firstInstant(ties, p, combine, true);
    return hoped === null ? { kind: 'noDate' } : dateKindAt(model, 'notBefore', hoped);
  };
  return { p50: date(0.5), p80: date(0.8), p95: date(0.95) };
}

function lawsOf(model: ArrivalsModel, lines: readonly OrderedLine[], now: number): LineLaw[] {
  return awaited(lines, now).map((line) => {
    const law = lawOf(model, line, now);
    if (law === null) throw new RangeError(`Line ${line.lineId} had not been ordered by then.`);
    return law;
  });
}

/**
 * When all of these lines are here, as seen at `now` (epoch ms). Lines that are here, cancelled or replaced do not count;
 * with none left the day is today's. A line that had not been ordered is refused with a RangeError: what is only wanted
 * has no date, and the caller says so.
 */
export function allHere(model: ArrivalsModel, lines: readonly OrderedLine[], now: number): AllHere {
  const laws = lawsOf(model, lines, now);
  const shipments = shipmentsOf(laws);
  const ties = tiesOf(shipments);
  const withoutDate = laws
    .filter((one) => one.remaining === null && one.notBefore === null)
    .map((one) => one.line.lineId);
  const hanging = ties.filter((tie) => tie.length > 1);
  const ids = (shipment: Shipment): string[] => shipment.laws.map((one) => one.line.lineId);
  const here = dateKindAt(model, 'date', now);
  const none: ArrivalDate = { kind: 'noDate' };
  const all = (one: ArrivalDate): ThreeDates => ({ p50: one, p80: one, p95: one });
  const dates =
    laws.length === 0 ? all(here) : withoutDate.length > 0 ? all(none) : threeDates(model, ties, 'independent');
  return {
    ...dates,
    shipments: shipments.map(ids),
    together: hanging.map((tie) => ({ family: tie[0]?.family ?? '', lineIds: tie.flatMap(ids) })),
    range:
      hanging.length === 0 || withoutDate.length > 0
        ? null
        : { earliest: threeDates(model, ties, 'high'), latest: threeDates(model, ties, 'low') },
    decidedBy: decidingLine(laws),
    withoutDate,
  };
}

function decidingLine(laws: readonly LineLaw[]): string | null {
  const late = (law: LineLaw): number => reaches(law, 0.8, false) ?? Infinity;
  let last: LineLaw | null = null;
  for (const law of laws) if (last === null || late(law) > late(last)) last = law;
  return last?.line.lineId ?? null;
}

/** P(all of these lines are here by `at`), as seen at `now` (both epoch ms); refuses what `allHere` refuses. */
export function chanceAllHere(
  model: ArrivalsModel,
  lines: readonly OrderedLine[],
  now: number,
  at: number,
): ChanceAllHere {
  const laws = lawsOf(model, lines, now);
  const ties = tiesOf(shipmentsOf(laws));
  const by = (combine: Combine): number => chanceBy(ties, at, combine, false);
  return {
    chance: by('independent'),
    low: by('low'),
    high: by('high'),
    known: laws.every((law) => shareBy(law, at, true) === shareBy(law, at, false)),
  };
}
