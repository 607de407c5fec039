import { calendarOfBoard, rowsOf, type Board, type Visit } from '@holdfast/board';
import { compare, lineEnded, lineSettledByChoice, standingFor, type Row } from '@holdfast/domain';

import type { StandingLeft } from '../pieces/go-ahead-form.js';

/** Lines of a visit that wait for the customer's word; of several ways to one end, none once one was given. */
export const askedLines = (board: Board, visit: Visit): Row<'workLine'>[] =>
  visit.lines.filter(
    (line) => line.goAhead === 'withCustomer' && !lineEnded(line) && !lineSettledByChoice(rowsOf(board), line),
  );

/** Lines that may be taken back: given by the customer and not ended. */
export const givenLines = (visit: Visit): Row<'workLine'>[] =>
  visit.lines.filter((line) => line.goAhead === 'given' && line.payer === 'customer' && !lineEnded(line));

/** What is left of each standing go-ahead that covers the visit, without what the line itself takes; nothing below nought. */
export const standingLeft = (board: Board, visit: Visit, line: Row<'workLine'> | null, now: number): StandingLeft[] =>
  standingFor(rowsOf(board), visit.job, line, calendarOfBoard(board).dateOf(now)).map(({ standing, left }) => ({
    id: standing.id,
    kind: standing.kind,
    left: compare(left, '0') < 0 ? '0' : left,
  }));

/** The standing go-aheads that cover the visit, as its running total counts them. */
export const standingOfVisit = (board: Board, visit: Visit, now: number): Row<'standingGoAhead'>[] =>
  standingFor(rowsOf(board), visit.job, null, calendarOfBoard(board).dateOf(now)).map(({ standing }) => standing);
