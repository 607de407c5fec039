/** What every correction asks and keeps: whose time it is, which times it says, the version before it and why. */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { isLead } from '../questions/people-and-shop.js';
import type { Row } from '../tables/tables.js';
import { isRunning, type Span } from '../timeline/timeline.js';
import { againstClosedMonth } from './months.js';

/** Times as a correction says them: what is left out stays, `toAt` null runs on. Epoch ms. */
export interface TimesSaid {
  readonly fromAt?: number | undefined;
  readonly toAt?: number | null | undefined;
}

export const iso = (instant: number): string => new Date(instant).toISOString();

/** An interval as the facts of a refusal tell it. */
export function told({ fromAt, toAt }: Span) {
  return { fromAt: iso(fromAt), toAt: toAt === null ? null : iso(toAt), runs: toAt === null } as const;
}

/** The instants that are said, for what a command has to load around them. */
export function instantsOf({ fromAt, toAt }: TimesSaid): number[] {
  return [fromAt, toAt].filter((one) => typeof one === 'number');
}

export function spanSaid(row: Span, said: TimesSaid): Span {
  return { fromAt: said.fromAt ?? row.fromAt, toAt: said.toAt === undefined ? row.toAt : said.toAt };
}

/** An interval that has not happened, or ends before it begins. */
export function againstSpan({ fromAt, toAt }: Span, at: Circumstances): Refused | null {
  const last = Math.max(fromAt, toAt ?? fromAt);
  if (last > at.now) return refuse('time.inFuture', { at: iso(last), now: iso(at.now) });
  if (toAt !== null && toAt <= fromAt) return refuse('time.endBeforeStart', { fromAt: iso(fromAt), toAt: iso(toAt) });
  return null;
}

/**
 * Own times are corrected on the working day of the shop that they are of; all others, and later, by manager or owner.
 * `starts`: when the stretch begins, as it was and as it is said to have been.
 */
export function mayCorrect(at: Circumstances, personId: string | null, starts: readonly number[]): Refused | null {
  if (isLead(at.by)) return null;
  if (personId === null || personId !== at.by.personId) return refuse('time.notYours');
  const today = at.calendar.workingDayOf(at.now);
  return starts.every((start) => at.calendar.workingDayOf(start) === today) ? null : refuse('time.dayIsOver');
}

/** Only the end that is missing: whoever it belongs to may say it whenever they are asked. */
export function onlyEnds(row: Span, said: TimesSaid): said is { readonly toAt: number } {
  return isRunning(row) && typeof said.toAt === 'number' && (said.fromAt === undefined || said.fromAt === row.fromAt);
}

/** Nothing of a closed month changes: neither the stretch as it was nor as it is to be; of a missing end, what it takes off. */
export function againstMonths(rows: Rows, at: Circumstances, before: Span, after: Span, said: TimesSaid) {
  const touched = onlyEnds(before, said) ? [{ fromAt: said.toAt, toAt: null }] : [before, after];
  return againstClosedMonth(rows, at, touched);
}

type Corrected = Row<'correction'>['tableName'];
type AnyEntry = Row<Corrected>;

/** The row as it stood before (null: there was none), the row that stands now (null: none), and why. */
export function keepCorrection(
  rows: Rows,
  at: Circumstances,
  kept: {
    readonly kind: Row<'correction'>['kind'];
    readonly table: Corrected;
    readonly before: AnyEntry | null;
    readonly after: AnyEntry | null;
    readonly words: string;
  },
): void {
  const { kind, table, before, after, words } = kept;
  const of = (after ?? before ?? {}) as {
    jobId?: string | null;
    vehicleId?: string | null;
    personId?: string | null;
  };
  rows.add('correction', {
    id: at.newId(),
    ...recordedBy(at),
    kind,
    tableName: table,
    rowId: before?.id ?? null,
    newRowId: after?.id ?? null,
    before: before && { ...before },
    jobId: of.jobId ?? null,
    vehicleId: of.vehicleId ?? null,
    personId: of.personId ?? null,
    words,
  });
}
