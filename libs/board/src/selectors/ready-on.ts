/**
 * When a vehicle could be ready, from what is known now and no more: the dates that suppliers and other firms named, the
 * book hours that are left, the hours of the shop. Who works on what else, which bay is free, how late a supplier usually
 * is: not looked at, and the screens say so.
 */
import { handBackBlockers, isReady, isStillWanted, lineEnded, lineSettled, type Row } from '@holdfast/domain';
import type { Board } from '../board.js';
import { calendarOfBoard, rowsOf } from './rows-of.js';

export interface RestsOn {
  /** Book minutes of the lines with the go-ahead, less what was clocked on each. */
  readonly bookMinutesLeft: number;
  readonly linesWithoutHours: number;
  /** Parts that are not here and not "may follow", by the day they are due; those without a day first. */
  readonly parts: readonly {
    readonly partLineId: string;
    readonly description: string;
    readonly dueOn: string | null;
  }[];
  /** Lines that are still with the customer: they may add to it. */
  readonly asked: number;
  /** When another firm brings the vehicle or a component back; null where it named no day. */
  readonly away: readonly { readonly firm: string; readonly dueBackAt: number | null }[];
  /** Setting holds that run, epoch ms. */
  readonly settingUntil: number | null;
}

export type ReadyOn =
  | { readonly kind: 'ready' }
  /** Nothing is left to be worked, but the hand-back is not clear: `reasons` of them. */
  | { readonly kind: 'worked'; readonly reasons: number; readonly restsOn: RestsOn }
  | { readonly kind: 'about'; readonly at: number; readonly restsOn: RestsOn }
  /** A part or a firm has no date, or no line has book hours. */
  | { readonly kind: 'noDate'; readonly restsOn: RestsOn };

const minuteMs = 60_000;

/** Null where the visit is not on the board, not here, or has ended. Instants are epoch ms. */
export function readyOn(board: Board, jobId: string, now: number): ReadyOn | null {
  const rows = rowsOf(board);
  const job = rows.find('job', jobId);
  if (!job || job.endedAt !== null || job.arrivedAt === null) return null;
  if (isReady(rows, jobId)) return { kind: 'ready' };
  const restsOn = restsOnOf(board, job, now);
  const lines = rows.list('workLine', (line) => line.jobId === jobId && line.goAhead === 'given' && !lineEnded(line));
  if (lines.length === 0 && restsOn.asked === 0 && restsOn.parts.length === 0 && restsOn.away.length === 0) {
    const asked = { jobId, leavesBy: 'transporter', receivedHow: 'there' } as const;
    const reasons = handBackBlockers(rows, asked, { personId: null, name: '', roles: [] }).length;
    return { kind: 'worked', reasons, restsOn };
  }
  const unknown =
    restsOn.parts.some((part) => part.dueOn === null) ||
    restsOn.away.some((one) => one.dueBackAt === null) ||
    (lines.length > 0 && restsOn.linesWithoutHours === lines.length);
  if (unknown || lines.length === 0) return { kind: 'noDate', restsOn };
  return { kind: 'about', at: earliestEnd(board, restsOn, now), restsOn };
}

/** From when all that is awaited is there, the book minutes that are left, in the hours of the shop. */
function earliestEnd(board: Board, restsOn: RestsOn, now: number): number {
  const calendar = calendarOfBoard(board);
  const startOf = (day: string) => calendar.dayBounds(day).from;
  const from = Math.max(
    now,
    restsOn.settingUntil ?? now,
    ...restsOn.parts.map((part) => (part.dueOn === null ? now : startOf(part.dueOn))),
    ...restsOn.away.map((one) => one.dueBackAt ?? now),
  );
  return calendar.instantAfter(from, restsOn.bookMinutesLeft) ?? from;
}

function restsOnOf(board: Board, job: Row<'job'>, now: number): RestsOn {
  const rows = rowsOf(board);
  const open = rows.list('workLine', (line) => line.jobId === job.id && !lineEnded(line));
  const given = open.filter((line) => line.goAhead === 'given');
  const parts = rows
    .list('partLine', (part) => part.jobId === job.id && part.needed !== 'mayFollow' && isStillWanted(rows, part))
    .filter((part) => part.state === 'wanted' || part.state === 'ordered' || part.state === 'partArrived')
    .map(({ id, description, dueOn }) => ({ partLineId: id, description, dueOn }))
    .sort((a, b) => (a.dueOn ?? '').localeCompare(b.dueOn ?? ''));
  const setting = rows
    .list('hold', (hold) => hold.jobId === job.id && hold.toAt === null && hold.reason === 'setting')
    .map((hold) => hold.endsAt ?? 0)
    .filter((endsAt) => endsAt > now);
  return {
    bookMinutesLeft: given.reduce((sum, line) => sum + minutesLeft(board, line, now), 0),
    linesWithoutHours: given.filter((line) => line.bookMinutes === null).length,
    parts,
    asked: open.filter((line) => line.goAhead === 'withCustomer' && !lineSettled(rows, line)).length,
    away: rows
      .list('sublet', (one) => one.jobId === job.id && one.state === 'underWay')
      .map(({ firm, dueBackAt }) => ({ firm, dueBackAt })),
    settingUntil: setting.length === 0 ? null : Math.max(...setting),
  };
}

function minutesLeft(board: Board, line: Row<'workLine'>, now: number): number {
  const clocked = rowsOf(board)
    .list('clock', (clock) => clock.lineId === line.id)
    .reduce((sum, clock) => sum + ((clock.toAt ?? now) - clock.fromAt), 0);
  return Math.max(0, Math.round((line.bookMinutes ?? 0) - clocked / minuteMs));
}
