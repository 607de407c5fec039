/**
 * Why a job, or named lines of it, cannot go on, from when to when, and whose move it is. Hidden here: who may open and
 * end which hold, and what each reason has to say. Guaranteed: a parts hold names parts (rule 6), a setting hold its end,
 * "other" its words. What ends a hold by itself stands in ../settle.
 */
import type { Family } from '../kernel/family.js';
import { endHold } from './end-hold.js';
import { openHold } from './open-hold.js';

export const holdFamily: Family<'openHold' | 'endHold'> = { openHold, endHold };
