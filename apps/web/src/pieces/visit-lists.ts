import { rowsOf, type Board, type Visit } from '@holdfast/board';
import { isHere, lineEnded } from '@holdfast/domain';

import type { Named } from './line-form.js';

/** The lines of a visit that are still to do, by title. */
export const openLines = (visit: Visit): Named[] =>
  visit.lines.filter((line) => !lineEnded(line)).map(({ id, title }) => ({ id, title }));

/** The parts of a visit that are wanted and not all here. */
export const awaitedParts = (board: Board, visit: Visit): Named[] =>
  rowsOf(board)
    .list('partLine', (part) => part.jobId === visit.job.id && part.state !== 'cancelled' && part.state !== 'fitted')
    .filter((part) => !isHere(part))
    .map(({ id, description }) => ({ id, title: description }));
