/**
 * The visit from the desk's side: vehicle and customer, check-in, promised time, what was reported, seen and warned of, and
 * the hand-back. Hidden here: how a check-in becomes rows, who may end which caution, and everything that a hand-back
 * weighs. Guaranteed: a check-in is never stopped by a wrong VIN, a falling reading or an unknown mass (rule 15); a
 * vehicle is handed back only when nothing of rule 9 is open, and by road with a tier-1 fix only as rule 7 says; the
 * sheet says what was recorded and who signed, and never that a vehicle is safe.
 */
import type { Family } from '../kernel/family.js';
import { addVehicle } from './add-vehicle.js';
import { addCaution, endCaution } from './cautions.js';
import { changePromisedTime } from './change-promised-time.js';
import { checkIn } from './check-in.js';
import { addFinding, attachPhoto } from './findings-and-photos.js';
import { handBack } from './hand-back.js';
import { recordConcernOutcome } from './record-concern-outcome.js';

export const jobFamily: Family<
  | 'addVehicle'
  | 'checkIn'
  | 'changePromisedTime'
  | 'recordConcernOutcome'
  | 'addCaution'
  | 'endCaution'
  | 'addFinding'
  | 'attachPhoto'
  | 'handBack'
> = {
  addVehicle,
  checkIn,
  changePromisedTime,
  recordConcernOutcome,
  addCaution,
  endCaution,
  addFinding,
  attachPhoto,
  handBack,
};
