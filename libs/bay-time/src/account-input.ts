/** What the account of one spot is made from: plain intervals and ids, as the database holds them. */
import type { Interval } from '@holdfast/shop-calendar';

/** From an instant to an instant, epoch milliseconds, half-open; `to` null: still going on. */
export interface Span {
  readonly from: number;
  readonly to: number | null;
}

/** A job has the spot: its vehicle stands there, or it is on a road test or at another firm and the spot is kept for it. */
export interface SpotStay extends Span {
  readonly jobId: string;
  readonly kind: 'stands' | 'kept';
}

/**
 * A person works on a job; at the bench it counts for the person and not for the bay. Somebody of another firm who works
 * here counts for the bay and is nobody of the shop: their `personId` is `outsiderId` of the sublet.
 */
export interface JobClock extends Span {
  readonly jobId: string;
  readonly personId: string;
  readonly bench: boolean;
}

const outsider = 'outsider:';

/** Who works on a sublet of the form "somebody comes in". */
export function outsiderId(subletId: string): string {
  return `${outsider}${subletId}`;
}

export function isOutsider(personId: string): boolean {
  return personId.startsWith(outsider);
}

/** What a parts hold waits for, from when to when: until the part is here, cancelled, or wanted from another supplier. */
export interface HeldPart extends Span {
  readonly partLineId: string;
  /** null: no supplier (shop stock, the customer's own, taken from another job, not decided yet) */
  readonly supplierId: string | null;
}

export interface JobHold extends Span {
  readonly holdId: string;
  readonly jobId: string;
  /** the lines it holds; empty: the whole job */
  readonly lineIds: readonly string[];
  /** the word of the domain: `parts`, `goAhead`, `sublet` …; `collection` on a whole job makes it stored */
  readonly reason: string;
  /**
   * The parts it waits for over time; what of these spans lies outside the hold says nothing. A part that changes its
   * supplier is given once for each. While none is still to come, the hold itself is what is waited for.
   */
  readonly parts?: readonly HeldPart[];
}

export type GoAheadAnswer = 'withCustomer' | 'given' | 'deferred' | 'declined';

export interface JobLine {
  readonly jobId: string;
  readonly lineId: string;
  readonly addedAt: number;
  /** done, carried over or dropped at; null: still open */
  readonly endedAt: number | null;
  /** the line that has to be ended before this one can be worked */
  readonly after: string | null;
  /** lines with the same word here are ways to one end: while one has the go-ahead nobody is asked about the others */
  readonly choice?: string | null;
  /** every answer with its instant, in any order; before the first the line is with the customer */
  readonly goAhead: readonly { readonly at: number; readonly answer: GoAheadAnswer }[];
}

/** An internal job marked stored (a shop's own vehicle that waits its turn). */
export interface StoredMark extends Span {
  readonly jobId: string;
}

export interface SpotInput {
  /** what is to be accounted for; the part after `now` has not happened and is left out */
  readonly window: Interval;
  /**
   * Opening time, also that before the window back to the start of the earliest stay that reaches into it: the grace
   * of a gap is measured in opening time from the gap's start.
   */
  readonly open: readonly Interval[];
  readonly outOfUse: readonly Interval[];
  readonly stays: readonly SpotStay[];
  /** the clocks of these jobs, also those before the window that end in the stays that reach into it */
  readonly clocks: readonly JobClock[];
  readonly holds: readonly JobHold[];
  readonly lines: readonly JobLine[];
  readonly storedJobs: readonly StoredMark[];
  /** the breaks of the shop */
  readonly breaks: readonly Interval[];
  /** the breaks of people, by person id */
  readonly personBreaks?: Readonly<Record<string, readonly Interval[]>>;
  /** milliseconds at the start of each gap without a clock that count as a break; the shop sets it */
  readonly graceMs: number;
  /** epoch milliseconds; what has no end yet ends here */
  readonly now: number;
}

/** The first quarter of an hour of a gap, unless the shop says otherwise. */
export const usualGraceMs = 15 * 60_000;

/** The same span with an end: what is still going on, or is dated past now, ends now. Null if nothing of it is over. */
export function endedBy<T extends Span>(span: T, now: number): (T & Interval) | null {
  const to = span.to === null ? now : Math.min(span.to, now);
  return span.from < to ? { ...span, to } : null;
}

/** All of them that have begun, with an end. */
export function allEndedBy<T extends Span>(spans: readonly T[], now: number): (T & Interval)[] {
  const out: (T & Interval)[] = [];
  for (const span of spans) {
    const ended = endedBy(span, now);
    if (ended !== null) out.push(ended);
  }
  return out;
}

/** The rows of each job, in the order given. */
export function byJob<T extends { readonly jobId: string }>(rows: readonly T[]): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const row of rows) {
    const list = map.get(row.jobId);
    if (list === undefined) map.set(row.jobId, [row]);
    else list.push(row);
  }
  return map;
}
