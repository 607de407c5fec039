/**
 * work/ hides how lines, go-aheads and clocks depend on each other. It guarantees rule 5 (work starts on a line with a
 * go-ahead, by a person with the skill), the clock half of rule 1 (one clock for each person), rule 2 for lines (their
 * progress follows from clocks and from how they ended), and that a part line outlives the line it was wanted for.
 */
import type { Family } from '../kernel/family.js';
import { addLine } from './add-line.js';
import { carryOverLine, dropLine, finishLine } from './end-line.js';
import { recordGoAhead } from './record-go-ahead.js';
import { startWork } from './start-work.js';
import { stopWork } from './stop-work.js';

export const workFamily: Family<
  'addLine' | 'recordGoAhead' | 'startWork' | 'stopWork' | 'finishLine' | 'carryOverLine' | 'dropLine'
> = { addLine, recordGoAhead, startWork, stopWork, finishLine, carryOverLine, dropLine };
