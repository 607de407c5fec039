/** Lines that are ways to the same end: at most one of a choice is given, and then nobody asks about the others. */
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** The other lines of the line's choice, on its visit. */
export function othersOfChoice(rows: Rows, line: Row<'workLine'>): Row<'workLine'>[] {
  const { choiceId } = line;
  if (choiceId === null) return [];
  return rows.list('workLine', (one) => one.id !== line.id && one.jobId === line.jobId && one.choiceId === choiceId);
}

/** The line of the same choice that has the go-ahead, if another one has it and was not dropped. */
export function givenInstead(rows: Rows, line: Row<'workLine'>): Row<'workLine'> | undefined {
  return othersOfChoice(rows, line).find((one) => one.goAhead === 'given' && one.progress !== 'dropped');
}

/**
 * The customer chose another way, so this line is neither asked for nor owed. One that was started is never settled like
 * that: what was begun has to come to an end of its own.
 */
export function lineSettledByChoice(rows: Rows, line: Row<'workLine'>): boolean {
  if (line.goAhead === 'given' || line.startedAt !== null || line.progress !== 'planned') return false;
  return givenInstead(rows, line) !== undefined;
}
