/**
 * The visit from the desk's side: vehicle and customer, check-in, promised time, what was reported, seen and warned of, and
 * both doors out, and the way back within the hour. Hidden here: how a check-in becomes rows, and everything that a
 * hand-back weighs. Guaranteed: a check-in is never stopped by a wrong VIN, a falling reading or an unknown mass (rule 15); a
 * vehicle is handed back only when nothing of rule 9 is open, and by road with a tier-1 fix only as rule 7 says; the
 * sheet says what was recorded and who signed, and never that a vehicle is safe.
 */
import type { JobInputs } from '../inputs.js';
import type { Family } from '../kernel/family.js';
import { addVehicle } from './add-vehicle.js';
import { bookJob, changeBooking, recordArrival } from './bookings.js';
import { cancelJob } from './cancel-job.js';
import { changeOwner } from './change-owner.js';
import { addCaution, endCaution } from './cautions.js';
import { changePromisedTime } from './change-promised-time.js';
import { checkIn } from './check-in.js';
import { correctVehicle } from './correct-vehicle.js';
import { addFinding, attachPhoto } from './findings-and-photos.js';
import { handBack } from './hand-back.js';
import { releaseUnfinished } from './release-unfinished.js';
import { undoHandBack } from './undo-hand-back.js';
import { recordConcernOutcome } from './record-concern-outcome.js';
import { recordOdometer } from './record-odometer.js';
import { setBoardNote } from './set-board-note.js';

export const jobFamily: Family<keyof JobInputs> = {
  addVehicle,
  checkIn,
  bookJob,
  changeBooking,
  recordArrival,
  cancelJob,
  correctVehicle,
  changeOwner,
  recordOdometer,
  setBoardNote,
  changePromisedTime,
  recordConcernOutcome,
  addCaution,
  endCaution,
  addFinding,
  attachPhoto,
  handBack,
  releaseUnfinished,
  undoHandBack,
};
