/** Hours of people: present, clocked, and the book hours of what they finished. */
import { type Interval, tidy } from '@holdfast/shop-calendar';
import { type Span, allEndedBy, isOutsider } from './account-input.js';
import type { Presence } from './bay-figures.js';
import { shareOut } from './periods.js';

/** A person's clock on a work line, at the bench or in a bay. */
export interface LineClock extends Span {
  readonly personId: string;
  readonly lineId: string;
}

/** A work line that is done: not one dropped or carried over. */
export interface FinishedLine {
  readonly lineId: string;
  readonly doneAt: number;
  /** milliseconds of book time; null: it has none */
  readonly bookMs: number | null;
}

export interface HoursOfPeople {
  readonly presentMs: number;
  /** clocks added up, inside opening time or not */
  readonly clockedMs: number;
  /** of these, clocked on lines that have no book hours: they pull the efficiency down */
  readonly clockedWithoutBookMs: number;
  /** book time of the lines finished in the period */
  readonly bookMs: number;
  /** book / clocked; null where nothing was clocked */
  readonly efficiency: number | null;
  /** clocked / present; null where nobody was present */
  readonly productivity: number | null;
}

export interface PeopleFigures {
  readonly period: Interval;
  readonly shop: HoursOfPeople;
  /** by person id, sorted; those with anything to show in any of the periods */
  readonly people: readonly { readonly personId: string; readonly hours: HoursOfPeople }[];
  /** book time of lines finished in the period on which nobody was clocked: nobody's, and in no figure above */
  readonly bookWithoutClockMs: number;
}

export interface PeopleInput {
  readonly presence: readonly Presence[];
  /** with all clocks of the lines finished in the periods, however long ago: they share out the book time */
  readonly clocks: readonly LineClock[];
  readonly finished: readonly FinishedLine[];
  /** lines that have book hours, finished or not; a clock on any other is one without book hours */
  readonly linesWithBook: ReadonlySet<string>;
  /** in order, without overlap */
  readonly periods: readonly Interval[];
  /** epoch milliseconds; clocks and presence without an end, or dated past it, end here */
  readonly now: number;
}

interface Sums {
  presentMs: number;
  clockedMs: number;
  clockedWithoutBookMs: number;
  bookMs: number;
}

const noSums = (): Sums => ({ presentMs: 0, clockedMs: 0, clockedWithoutBookMs: 0, bookMs: 0 });

function hoursOf(sums: Sums): HoursOfPeople {
  const { presentMs, clockedMs, bookMs } = sums;
  return {
    ...sums,
    efficiency: clockedMs === 0 ? null : bookMs / clockedMs,
    productivity: presentMs === 0 ? null : clockedMs / presentMs,
  };
}

/** Whole milliseconds in proportion to the parts, adding up to the total exactly: the largest remainders get one more. */
function inProportion(total: number, parts: readonly (readonly [personId: string, ms: number])[]): Map<string, number> {
  const all = parts.reduce((sum, [, ms]) => sum + ms, 0);
  const shares = parts.map(([personId, ms]) => {
    const exact = (total * ms) / all;
    return { personId, whole: Math.floor(exact), rest: exact - Math.floor(exact) };
  });
  let left = total - shares.reduce((sum, { whole }) => sum + whole, 0);
  shares.sort((a, b) => b.rest - a.rest || (a.personId < b.personId ? -1 : 1));
  return new Map(shares.map(({ personId, whole }) => [personId, whole + (left-- > 0 ? 1 : 0)]));
}

/** Who was clocked how long on each finished line. */
function clockedOnLines(clocks: readonly (LineClock & Interval)[], finished: readonly FinishedLine[]) {
  const byLine = new Map<string, Map<string, number>>(finished.map(({ lineId }) => [lineId, new Map()]));
  for (const { lineId, personId, from, to } of clocks) {
    const people = byLine.get(lineId);
    people?.set(personId, (people.get(personId) ?? 0) + to - from);
  }
  return byLine;
}

class PeopleSweep {
  readonly sums: Map<string, Sums>[];
  readonly bookWithoutClockMs: number[];

  constructor(private readonly periods: readonly Interval[]) {
    this.sums = periods.map(() => new Map<string, Sums>());
    this.bookWithoutClockMs = periods.map(() => 0);
  }

  of(period: number, personId: string): Sums {
    const people = this.sums[period];
    const known = people?.get(personId);
    if (known !== undefined) return known;
    const made = noSums();
    people?.set(personId, made);
    return made;
  }

  addPresence(presence: readonly Presence[], now: number): void {
    const byPerson = new Map<string, Interval[]>();
    for (const one of allEndedBy(presence, now)) {
      const list = byPerson.get(one.personId);
      if (list === undefined) byPerson.set(one.personId, [one]);
      else list.push(one);
    }
    for (const [personId, list] of byPerson) {
      shareOut(tidy(list), this.periods, (at, _, ms) => (this.of(at, personId).presentMs += ms));
    }
  }

  addClocks(clocks: readonly (LineClock & Interval)[], linesWithBook: ReadonlySet<string>): void {
    shareOut(clocks, this.periods, (at, { personId, lineId }, ms) => {
      const sums = this.of(at, personId);
      sums.clockedMs += ms;
      if (!linesWithBook.has(lineId)) sums.clockedWithoutBookMs += ms;
    });
  }

  addFinished(finished: readonly FinishedLine[], clocks: readonly (LineClock & Interval)[]): void {
    const byLine = clockedOnLines(clocks, finished);
    const done = finished.map((line) => ({ ...line, from: line.doneAt, to: line.doneAt + 1 }));
    done.sort((a, b) => a.from - b.from);
    shareOut(done, this.periods, (at, { lineId, bookMs }) => {
      if (bookMs === null) return;
      const people = [...(byLine.get(lineId) ?? [])];
      if (people.length === 0) this.bookWithoutClockMs[at] = (this.bookWithoutClockMs[at] ?? 0) + bookMs;
      for (const [personId, ms] of inProportion(bookMs, people)) this.of(at, personId).bookMs += ms;
    });
  }
}

function sumOf(list: Iterable<Sums>): Sums {
  const all = noSums();
  for (const one of list) {
    all.presentMs += one.presentMs;
    all.clockedMs += one.clockedMs;
    all.clockedWithoutBookMs += one.clockedWithoutBookMs;
    all.bookMs += one.bookMs;
  }
  return all;
}

/**
 * Efficiency and productivity of each person and of all together, for each of several periods.
 *
 * A line counts whole in the period in which it was done; where several people worked on it, its book time is shared
 * out by their clocks on it. Short periods therefore swing: what was worked last week and is done today counts today.
 * In our reading, productivity is the worker efficiency of ISO 22400-2, APWT / APAT (actual personnel work time by
 * actual personnel attendance time), and efficiency its effectiveness (planned runtime of what was made by actual
 * production time), with people in the place of a machine. Work of outsiders is nobody's of the shop and left out.
 */
export function peopleFigures(input: PeopleInput): PeopleFigures[] {
  const { periods, now } = input;
  const clocks = allEndedBy(input.clocks, now)
    .filter(({ personId }) => !isOutsider(personId))
    .sort((a, b) => a.from - b.from);
  const sweep = new PeopleSweep(periods);
  sweep.addPresence(input.presence, now);
  sweep.addClocks(clocks, input.linesWithBook);
  sweep.addFinished(
    input.finished.filter(({ doneAt }) => doneAt < now),
    clocks,
  );
  const ids = [...new Set(sweep.sums.flatMap((people) => [...people.keys()]))].sort();
  return periods.map(({ from, to }, at) => ({
    period: { from, to },
    shop: hoursOf(sumOf(sweep.sums[at]?.values() ?? [])),
    people: ids.map((personId) => ({ personId, hours: hoursOf(sweep.of(at, personId)) })),
    bookWithoutClockMs: sweep.bookWithoutClockMs[at] ?? 0,
  }));
}
