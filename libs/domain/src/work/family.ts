/**
 * work/ hides how lines, go-aheads, clocks, causes and wheels depend on each other. It guarantees rule 5 (work starts on a
 * line with a go-ahead, by a person with the skill), the clock half of rule 1 (one clock for each person), rule 2 for
 * lines (their progress follows from clocks and from how they ended), that nobody pays for more than was agreed to
 * without being asked, and that a part line outlives the line it was wanted for.
 */
import type { WorkInputs } from '../inputs.js';
import type { Family } from '../kernel/family.js';
import { addLine } from './add-line.js';
import { changeCause, recordAttempt, recordCause } from './causes.js';
import { changeLine } from './change-line.js';
import { carryOverLine, dropLine, finishLine } from './end-line.js';
import { makeChoice } from './make-choice.js';
import { recordGoAhead } from './record-go-ahead.js';
import { recordRetorque } from './record-retorque.js';
import { reopenLine } from './reopen-line.js';
import { startWork } from './start-work.js';
import { stopWork } from './stop-work.js';
import { recordTorque, recordWheelOff, recordWheelOn } from './wheels.js';
import { withdrawGoAhead } from './withdraw-go-ahead.js';

export const workFamily: Family<keyof WorkInputs> = {
  addLine,
  changeLine,
  makeChoice,
  recordGoAhead,
  withdrawGoAhead,
  startWork,
  stopWork,
  finishLine,
  carryOverLine,
  dropLine,
  reopenLine,
  recordAttempt,
  recordCause,
  changeCause,
  recordWheelOff,
  recordWheelOn,
  recordTorque,
  recordRetorque,
};
