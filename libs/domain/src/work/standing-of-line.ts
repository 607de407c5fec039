/** What a standing go-ahead still has for one line: what the other lines of the visit took of it is gone. */
import { standingFor, type StandingLeft } from '../customer/standing.js';
import { compare } from '../kernel/amounts.js';
import type { Circumstances } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import type { Row } from '../tables/tables.js';

type Line = Row<'workLine'>;

/** Undefined where it does not cover this visit today. */
export function standingOfLine(
  rows: Rows,
  at: Circumstances,
  job: Row<'job'>,
  line: Line,
  standingId: string | null,
): StandingLeft | undefined {
  return standingFor(rows, job, line, todayOf(at)).find((one) => one.standing.id === standingId);
}

/** Whether the line rests on a standing go-ahead that has enough for it at this price. */
export function standingCovers(rows: Rows, at: Circumstances, job: Row<'job'>, line: Line, price: string): boolean {
  const found = standingOfLine(rows, at, job, line, line.standingId);
  return found !== undefined && compare(price, found.left) <= 0;
}
