import type { Circumstances } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { lineSettledByChoice, othersOfChoice } from '../questions/choices.js';
import { lineEnded } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';
import { endHoldAt } from './end-hold-at.js';

/**
 * A hold for a go-ahead ends when no line it names (of the whole job: no line at all) is with the customer any more, and
 * something was answered since it began. Opened where everything had its answer already, it waits for a new one: a price
 * may have moved.
 */
export function endGoAheadHold(
  rows: Rows,
  at: Circumstances,
  hold: Row<'hold'>,
  named: readonly Row<'workLine'>[],
): void {
  const lines = named.length > 0 ? named : rows.list('workLine', (line) => line.jobId === hold.jobId);
  const asked = (line: Row<'workLine'>) => line.goAhead === 'withCustomer' && !lineSettledByChoice(rows, line);
  if (lines.some((line) => !line.void && !lineEnded(line) && asked(line))) return;
  // The answer to one line of a choice is the answer to the others.
  const ids = new Set(lines.flatMap((line) => [line, ...othersOfChoice(rows, line)]).map((line) => line.id));
  const answers = rows
    .list('goAhead', (one) => ids.has(one.lineId) && one.answer !== 'withCustomer')
    .filter((one) => one.recordedAt > hold.recordedAt || one.effectiveAt >= hold.fromAt)
    .map((one) => one.effectiveAt);
  // A line dropped while it was with the customer needs no answer any more.
  const ends = lines
    .filter((line) => lineEnded(line) && line.goAhead === 'withCustomer')
    .flatMap((line) => (line.endedAt !== null && line.endedAt >= hold.fromAt ? [line.endedAt] : []));
  if (answers.length > 0 || ends.length > 0) endHoldAt(rows, at, hold, 'goAheadAnswered', [...answers, ...ends]);
}
