/**
 * What the screens read off a board. Everything that follows from time (a setting hold that is over, an age, a limit
 * passed) is derived here from `now`, epoch milliseconds of the shop; nothing is written because time passed.
 *
 * The rules are not said a second time: a board gives a bag of rows, and the domain's own questions are asked of it.
 */
import { type Row, Rows } from '@holdfast/domain';
import { type Calendar, calendarOf } from '@holdfast/shop-calendar';
import { type Board, type BoardTables } from '../board.js';
import { boardTables } from '../visible.js';

const bags = new WeakMap<BoardTables, Rows>();

/** The board's rows as the domain sees them. Columns that the audience does not have are missing in them. */
export function rowsOf(board: Board): Rows {
  let rows = bags.get(board.tables);
  if (!rows) {
    const content = Object.fromEntries(
      boardTables(board.audience).map((name) => [name, [...board.tables[name].values()]]),
    );
    rows = Rows.of(content);
    bags.set(board.tables, rows);
  }
  return rows;
}

export function shopOf(board: Board): Row<'shop'> {
  const [shop] = board.tables.shop.values();
  if (!shop) throw new Error('a board without its shop');
  return shop;
}

const calendars = new WeakMap<object, Calendar>();

/** The shop's calendar; the same one as long as the hours on the board are the same. */
export function calendarOfBoard(board: Board): Calendar {
  const hours = board.tables.openingHours;
  let calendar = calendars.get(hours);
  if (!calendar) {
    calendar = calendarOf({
      zone: shopOf(board).zone,
      hours: [...hours.values()].map(({ validFrom, week, breaks }) => ({ validFrom, week, breaks })),
      exceptions: [],
    });
    calendars.set(hours, calendar);
  }
  return calendar;
}
