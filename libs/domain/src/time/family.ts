/**
 * time/ hides how the account of people and vehicles is put right afterwards: who may, on which day, with both versions
 * kept (rule 14). It guarantees that after a correction as before it nobody is on two clocks or in two states of
 * presence, no spot has two vehicles and every vehicle is somewhere (rule 1), that what is corrected gives the very
 * intervals that would be there had it been recorded right, and that a closed month stays as it is.
 */
import type { TimeInputs } from '../inputs.js';
import type { Family } from '../kernel/family.js';
import { addAttendance, correctAttendance } from './correct-attendance.js';
import { addClock, correctClock } from './correct-clock.js';
import { correctHold } from './correct-hold.js';
import { addStay, correctStay } from './correct-stay.js';
import { closeMonth, reopenMonth } from './months.js';
import { recordAttendance } from './record-attendance.js';

export const timeFamily: Family<keyof TimeInputs> = {
  recordAttendance,
  addAttendance,
  correctAttendance,
  addClock,
  correctClock,
  addStay,
  correctStay,
  correctHold,
  closeMonth,
  reopenMonth,
};
