/**
 * What the screens read off a board. Everything that follows from time (a setting hold that is over, an age, a limit
 * passed) is derived here from `now`, epoch milliseconds of the shop; nothing is written because time passed.
 *
 * The rules are not said a second time: a board gives a bag of rows, and the domain's own questions are asked of it.
 */
import { hoursOfShop, type Row, Rows, zoneAt } from '@holdfast/domain';
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

/** The zone that the shop's clock follows at an instant (epoch ms), which is what times are written in then. */
export function zoneOfBoard(board: Board, instant: number): string {
  return zoneAt(rowsOf(board), instant);
}

interface Kept {
  readonly from: readonly object[];
  readonly calendar: Calendar;
}
const calendars = new WeakMap<object, Kept>();

/** The shop's calendar; the same one as long as zone, hours and other hours on the board are the same. */
export function calendarOfBoard(board: Board): Calendar {
  const { openingHours, hoursException, shopZone, shop } = board.tables;
  const from = [hoursException, shopZone, shop];
  const known = calendars.get(openingHours);
  if (known?.from.every((one, at) => one === from[at])) return known.calendar;
  const calendar = calendarOf(hoursOfShop(rowsOf(board)));
  calendars.set(openingHours, { from, calendar });
  return calendar;
}
