/**
 * After every decision: what follows from the rows as they now are, so that no command has to remember it. Hidden in
 * settle/: when holds end by themselves and when a parts hold opens again (rule 6), that no hold outlives its lines or its
 * visit (rule 9), and when somebody has to be called. Guaranteed: settling twice is settling once, and nothing is written
 * because time passed.
 */
import type { Circumstances } from './kernel/decision.js';
import type { Rows } from './kernel/rows.js';
import { linesOf } from './questions/parts-and-holds.js';
import { lineEnded } from './questions/place-and-work.js';
import { settleCalls } from './settle/calls.js';
import { endHoldAt } from './settle/end-hold-at.js';
import { endGoAheadHold } from './settle/go-ahead-holds.js';
import { endPartsHold, openPartsHoldsAgain } from './settle/parts-holds.js';
import type { Row } from './tables/tables.js';

/** `whole`: the bag holds every table of the visits it has, so that what rests on all of them can be judged. */
export function settle(rows: Rows, at: Circumstances, { whole } = { whole: true }): void {
  for (const hold of rows.list('hold', (one) => one.toAt === null)) settleHold(rows, at, hold);
  openPartsHoldsAgain(rows, at);
  if (whole) settleCalls(rows, at);
}

function settleHold(rows: Rows, at: Circumstances, hold: Row<'hold'>): void {
  const job = rows.get('job', hold.jobId);
  const lines = linesOf(rows, hold);
  if (job.endedAt !== null) {
    rows.change('hold', hold.id, { toAt: Math.max(hold.fromAt, job.endedAt), endedHow: 'handedBack' });
  } else if (lines.length > 0 && lines.every((line) => line.void || lineEnded(line))) {
    endHoldAt(rows, at, hold, 'lineEnded');
  } else if (hold.reason === 'parts') {
    endPartsHold(rows, at, hold);
  } else if (hold.reason === 'goAhead') {
    endGoAheadHold(rows, at, hold, lines);
  }
}
