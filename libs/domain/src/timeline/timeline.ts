/**
 * timeline/ hides how intervals of one lane are put beside each other: the places of a vehicle, the uses of one spot, the
 * clocks of a person. It guarantees rule 1 for moves, reports from an outbox, corrections and cards alike: two intervals
 * of a lane never share an instant, and what does not fit is said to clash instead of being squeezed in.
 *
 * Instants are epoch milliseconds. Intervals are half-open, `toAt` null while they run, and at least 1 ms long, so that
 * neighbours may touch. A row is only closed or voided, never shifted: what has to become shorter is voided, and what is
 * left of it is put in as a new row like it.
 */
export interface Span {
  readonly fromAt: number;
  readonly toAt: number | null;
}
export interface Interval extends Span {
  readonly id: string;
}

export type TimelineEdit =
  | { readonly do: 'close'; readonly id: string; readonly toAt: number }
  | { readonly do: 'void'; readonly id: string }
  /** A new row; `like` names the row whose other columns it takes over, null is the row that the caller brings. */
  | { readonly do: 'insert'; readonly like: string | null; readonly span: Span };

export type Fit =
  | { readonly fits: true; readonly edits: readonly TimelineEdit[] }
  | { readonly fits: false; readonly clash: readonly Interval[] };

const endOf = (span: Span): number => span.toAt ?? Infinity;

export const isRunning = (span: Span): boolean => span.toAt === null;

export const overlap = (one: Span, other: Span): boolean => one.fromAt < endOf(other) && other.fromAt < endOf(one);

/** The rows of the lane that share an instant with the span. */
export function clashes<I extends Interval>(lane: readonly I[], span: Span): I[] {
  return lane.filter((one) => overlap(one, span));
}

/**
 * The earliest instant, `at` or later, at which the owner of the lane can have gone on to something else: no earlier than
 * every end, and after the start of what still runs.
 */
export function earliest(lane: readonly Span[], at: number): number {
  return lane.reduce((least, one) => Math.max(least, one.toAt ?? one.fromAt + 1), at);
}

/** Puts a new interval in where it fits; otherwise names what it clashes with and changes nothing. */
export function insert(lane: readonly Interval[], span: Span): Fit {
  if (endOf(span) <= span.fromAt) throw new RangeError('An interval ends at least a millisecond after it begins.');
  const clash = clashes(lane, span);
  return clash.length > 0 ? { fits: false, clash } : { fits: true, edits: [{ do: 'insert', like: null, span }] };
}

/** Ends a running interval, at least 1 ms after its start. */
export function close(interval: Interval, at: number): TimelineEdit {
  if (!isRunning(interval)) throw new RangeError('An interval that has ended is not closed again.');
  return { do: 'close', id: interval.id, toAt: Math.max(at, interval.fromAt + 1) };
}

function strike(interval: Interval): TimelineEdit {
  return { do: 'void', id: interval.id };
}

/** The owner of the lane goes on to the next interval: what runs ends, the new one begins there. */
export function follow(
  lane: readonly Interval[],
  at: number,
): { readonly from: number; readonly edits: readonly TimelineEdit[] } {
  const from = earliest(lane, at);
  const edits: TimelineEdit[] = lane.filter(isRunning).map((one) => close(one, from));
  return { from, edits: [...edits, { do: 'insert', like: null, span: { fromAt: from, toAt: null } }] };
}

/** Makes room for the span: what runs into it ends where it begins, what lies in it is voided, the ends that are left stay. */
export function clear(lane: readonly Interval[], span: Span): TimelineEdit[] {
  return clashes(lane, span).flatMap((one) => {
    const edits: TimelineEdit[] = [];
    const begunBefore = one.fromAt < span.fromAt;
    if (begunBefore && isRunning(one)) edits.push(close(one, span.fromAt));
    else {
      edits.push(strike(one));
      if (begunBefore) edits.push({ do: 'insert', like: one.id, span: { fromAt: one.fromAt, toAt: span.fromAt } });
    }
    if (span.toAt !== null && endOf(one) > span.toAt) {
      edits.push({ do: 'insert', like: one.id, span: { fromAt: span.toAt, toAt: one.toAt } });
    }
    return edits;
  });
}

/** The span is what happened, whatever stood there. */
export function replace(lane: readonly Interval[], span: Span): TimelineEdit[] {
  if (endOf(span) <= span.fromAt) throw new RangeError('An interval ends at least a millisecond after it begins.');
  return [...clear(lane, span), { do: 'insert', like: null, span }];
}
