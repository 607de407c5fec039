/**
 * Why a job, or named lines of it, cannot go on, from when to when, and whose move it is. Hidden here: who may open and
 * end which hold, and what each reason has to say. Guaranteed: a parts hold names parts (rule 6), a setting hold its end,
 * "other" its words; a question is to one person who works here and is answered once, by that person or a lead. What ends a hold by itself stands in ../settle.
 */
import type { Family } from '../kernel/family.js';
import { changeHold } from './change-hold.js';
import { endHold } from './end-hold.js';
import { openHold } from './open-hold.js';
import { answerQuestion, askQuestion } from './questions.js';

export const holdFamily: Family<'openHold' | 'changeHold' | 'endHold' | 'askQuestion' | 'answerQuestion'> = {
  openHold,
  changeHold,
  endHold,
  askQuestion,
  answerQuestion,
};
