/**
 * Clocks and presence that somebody forgot to end: they run on from an earlier working day of the shop. They are shown
 * and asked about, with an end to propose, and never ended by themselves.
 */
import { hoursOfPerson, type Row, type Rows } from '@holdfast/domain';
import { type Calendar, calendarOf } from '@holdfast/shop-calendar';
import type { Board } from '../board.js';
import { calendarOfBoard, rowsOf } from './rows-of.js';

export interface Forgotten<T extends 'clock' | 'attendance'> {
  readonly row: Row<T>;
  /**
   * Epoch ms: the end of the person's hours on the day it began, where none are known the shop's, or the last thing that
   * they recorded on that day if that was later. Null where nothing says more than that it began.
   */
  readonly proposedEnd: number | null;
}

function forgotten<T extends 'clock' | 'attendance'>(board: Board, table: T, now: number): Forgotten<T>[] {
  const calendar = calendarOfBoard(board);
  const today = calendar.workingDayOf(now);
  const running = rowsOf(board).list(table, (row) => row.toAt === null && calendar.workingDayOf(row.fromAt) < today);
  return running
    .sort((a, b) => a.fromAt - b.fromAt)
    .map((row) => ({ row, proposedEnd: proposedEnd(rowsOf(board), calendar, row) }));
}

/** The oldest first; `now` is epoch ms of the shop. */
export const forgottenClocks = (board: Board, now: number): Forgotten<'clock'>[] => forgotten(board, 'clock', now);

/** People who never said that they were gone, the oldest first. */
export const forgottenPresence = (board: Board, now: number): Forgotten<'attendance'>[] =>
  forgotten(board, 'attendance', now);

type Stretch = { readonly id: string; readonly personId: string; readonly fromAt: number };

function proposedEnd(rows: Rows, shop: Calendar, stretch: Stretch): number | null {
  const day = shop.workingDayBounds(shop.workingDayOf(stretch.fromAt));
  const own = hoursOfPerson(rows, stretch.personId);
  const person = own === null ? shop : calendarOf(own);
  const over = person.openIntervals(day.from, day.to).at(-1)?.to;
  const last = momentsOf(rows, stretch).filter((one) => one > stretch.fromAt && one < day.to);
  const ends = [...(over === undefined || over <= stretch.fromAt ? [] : [over]), ...last];
  return ends.length === 0 ? null : Math.max(...ends);
}

/** When the person is known to have recorded something, as far as the board tells. */
function momentsOf(rows: Rows, { id, personId }: Stretch): number[] {
  const edges = (table: 'clock' | 'attendance') =>
    rows
      .list(table, (one) => one.personId === personId && one.id !== id)
      .flatMap(({ fromAt, toAt }) => (toAt === null ? [fromAt] : [fromAt, toAt]));
  return [
    ...edges('clock'),
    ...edges('attendance'),
    ...rows.list('hold', (hold) => hold.openedById === personId).map((hold) => hold.fromAt),
    ...rows.list('question', (one) => one.askedById === personId).map((one) => one.effectiveAt),
    ...rows.list('question', (one) => one.answeredById === personId).flatMap(({ answeredAt }) => answeredAt ?? []),
    ...rows.list('report', (one) => one.byId === personId).map((one) => one.effectiveAt),
  ];
}
