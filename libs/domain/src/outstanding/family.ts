/**
 * What is still on or owed after today. Hidden here: how a temporary fix, its second check and its follow-up hang
 * together. Guaranteed: a fix has a limit and is checked by another person (rule 7); it ends only as repaired for good,
 * mended elsewhere, vehicle gone or refused by the owner, and until then its follow-up cannot be closed (rule 8).
 */
import type { Family } from '../kernel/family.js';
import { addFollowUp } from './add-follow-up.js';
import { addTemporaryFix } from './add-temporary-fix.js';
import { closeFollowUp } from './close-follow-up.js';
import { endTemporaryFix } from './end-temporary-fix.js';
import { recordSecondCheck } from './record-second-check.js';

export const outstandingFamily: Family<
  'addTemporaryFix' | 'recordSecondCheck' | 'endTemporaryFix' | 'addFollowUp' | 'closeFollowUp'
> = {
  addTemporaryFix,
  recordSecondCheck,
  endTemporaryFix,
  addFollowUp,
  closeFollowUp,
};
