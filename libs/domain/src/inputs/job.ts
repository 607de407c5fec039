import type * as w from '../tables/words.js';
import type { ContactFacts, StandingFacts } from './customer.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface VehicleFacts {
  plate: string;
  vin?: Opt<string>;
  description: string;
  kind: Word<typeof w.vehicleKinds>;
  drive: Word<typeof w.drives>;
  curbKg?: Opt<number>;
  curbSource?: Opt<Word<typeof w.massSources>>;
  grossKg?: Opt<number>;
  grossSource?: Opt<Word<typeof w.massSources>>;
  weighedKg?: Opt<number>;
  rolls?: Opt<boolean>;
  mayBeDriven?: Opt<boolean>;
  notes?: Opt<string>;
}
export interface AddVehicle extends VehicleFacts {
  vehicleId?: Opt<string>;
  customerId?: Opt<string>;
}
export interface Concerned {
  concernId?: Opt<string>;
  words: string;
  conditions?: Opt<string>;
}
export interface CheckIn {
  jobId?: Opt<string>;
  /** The visit that was booked and now begins; its number, lines and concerns stay. */
  expectedJobId?: Opt<string>;
  vehicleId: string;
  kind?: Opt<Word<typeof w.jobKinds>>;
  comebackOfLineId?: Opt<string>;
  /** A known customer, or a new one by name; neither for an internal job. */
  customerId?: Opt<string>;
  customer?: Opt<{ customerId?: Opt<string>; name: string; fleet?: Opt<string> }>;
  contactId?: Opt<string>;
  contact?: Opt<ContactFacts>;
  /** At least one, but for a booked visit that has some already. */
  concerns: Concerned[];
  standingGoAheads?: Opt<StandingFacts[]>;
  odometer?: Opt<{ value?: Opt<number>; unit: Word<typeof w.distanceUnits>; source: Word<typeof w.readingSources> }>;
  keyTag?: Opt<string>;
  yardSpot?: Opt<string>;
  promisedAt?: Opt<number>;
  waitsHere?: Opt<boolean>;
  boardNote?: Opt<string>;
  rolls?: Opt<boolean>;
  mayBeDriven?: Opt<boolean>;
}
/** A visit that is expected: made by telephone, for a vehicle known or just added. */
export interface BookJob {
  jobId?: Opt<string>;
  vehicleId: string;
  kind?: Opt<Word<typeof w.jobKinds>>;
  comebackOfLineId?: Opt<string>;
  customerId?: Opt<string>;
  customer?: Opt<{ customerId?: Opt<string>; name: string; fleet?: Opt<string> }>;
  contactId?: Opt<string>;
  contact?: Opt<ContactFacts>;
  expectedAt: number;
  promisedAt?: Opt<number>;
  waitsHere?: Opt<boolean>;
  boardNote?: Opt<string>;
  concerns?: Opt<Concerned[]>;
  lines?: Opt<{ lineId?: Opt<string>; title: string; bookMinutes?: Opt<number>; price?: Opt<string> }[]>;
}
export interface ChangeBooking extends Turn {
  jobId: string;
  expectedAt?: Opt<number>;
  promisedAt?: Opt<number | null>;
  waitsHere?: Opt<boolean>;
}
/** It stands here, and nobody has checked it in yet: left before opening, the key in the box. */
export interface RecordArrival {
  placeId?: Opt<string>;
  jobId: string;
  yardSpot?: Opt<string>;
  keyTag?: Opt<string>;
  at?: Opt<number>;
}
export interface CancelJob extends Turn {
  jobId: string;
  words: string;
}
/** What was wrong or unknown about a vehicle. Masses: by manager or owner, with where they come from. */
export interface CorrectVehicle extends Turn {
  vehicleId: string;
  plate?: Opt<string>;
  vin?: Opt<string | null>;
  description?: Opt<string>;
  kind?: Opt<Word<typeof w.vehicleKinds>>;
  drive?: Opt<Word<typeof w.drives>>;
  curbKg?: Opt<number>;
  curbSource?: Opt<Word<typeof w.massSources>>;
  grossKg?: Opt<number>;
  grossSource?: Opt<Word<typeof w.massSources>>;
  weighedKg?: Opt<number>;
  notes?: Opt<string | null>;
  words?: Opt<string>;
}
/** The vehicle has another owner from now on; its history stays. */
export interface ChangeOwner extends Turn {
  vehicleId: string;
  customerId: string;
  words?: Opt<string>;
}
export interface RecordOdometer {
  vehicleId: string;
  jobId?: Opt<string>;
  value?: Opt<number>;
  unit: Word<typeof w.distanceUnits>;
  source: Word<typeof w.readingSources>;
  at?: Opt<number>;
}
export interface SetBoardNote extends Turn {
  jobId: string;
  note: string | null;
}
export interface ChangePromisedTime extends Turn {
  jobId: string;
  promisedAt: number | null;
}
export interface RecordConcernOutcome extends Turn {
  concernId: string;
  outcome: Word<typeof w.concernOutcomes>;
  conditions?: Opt<string>;
  words?: Opt<string>;
}
export interface AddCaution {
  cautionId?: Opt<string>;
  vehicleId: string;
  jobId?: Opt<string>;
  standing: boolean;
  code: w.CautionCode;
  words?: Opt<string>;
  secondId?: Opt<string>;
  at?: Opt<number>;
}
export interface EndCaution extends Turn {
  cautionId: string;
  words?: Opt<string>;
  /** The done line that mended it (standing cautions). */
  lineId?: Opt<string>;
}
export interface AddFinding {
  findingId?: Opt<string>;
  jobId: string;
  concernId?: Opt<string>;
  place: string;
  kind: Word<typeof w.findingKinds>;
  words?: Opt<string>;
  measure?: Opt<string>;
  unit?: Opt<string>;
  at?: Opt<number>;
}
export interface AttachPhoto {
  photoId?: Opt<string>;
  jobId: string;
  findingId?: Opt<string>;
  temporaryFixId?: Opt<string>;
  /** Answer of the upload: SHA-256 of the stored image and its size. */
  content: string;
  width: number;
  height: number;
  caption?: Opt<string>;
  moment?: Opt<'walkRound' | 'before' | 'after' | 'other'>;
  showsPeople?: Opt<boolean>;
  at?: Opt<number>;
}
export interface HandBack extends Turn {
  jobId: string;
  leavesBy: Word<typeof w.leavesBy>;
  receivedBy: string;
  receivedHow: 'there' | 'telephone';
  odometer?: Opt<number>;
  /** Tier-1 fixes that leave by road: allowed by name with words by owner or manager, signed for by the receiver there. */
  byRoad?: Opt<{ temporaryFixId: string; words: string; receiverSigned: boolean }[]>;
}
/** The other door: it leaves apart, by manager or owner. What is open becomes follow-ups with what is needed for each. */
export interface ReleaseUnfinished extends Turn {
  jobId: string;
  leavesBy: Word<typeof w.leavesBy>;
  receivedBy: string;
  receivedHow: 'there' | 'telephone';
  words: string;
  odometer?: Opt<number>;
  byRoad?: Opt<{ temporaryFixId: string; words: string; receiverSigned: boolean }[]>;
}
/** Within the hour: the visit goes on, in its bay where the spot is free, else in the yard; the sheet is marked void. */
export interface UndoHandBack {
  jobId: string;
  words: string;
}

export interface JobInputs {
  addVehicle: AddVehicle;
  checkIn: CheckIn;
  bookJob: BookJob;
  changeBooking: ChangeBooking;
  recordArrival: RecordArrival;
  cancelJob: CancelJob;
  correctVehicle: CorrectVehicle;
  changeOwner: ChangeOwner;
  recordOdometer: RecordOdometer;
  setBoardNote: SetBoardNote;
  changePromisedTime: ChangePromisedTime;
  recordConcernOutcome: RecordConcernOutcome;
  addCaution: AddCaution;
  endCaution: EndCaution;
  addFinding: AddFinding;
  attachPhoto: AttachPhoto;
  handBack: HandBack;
  releaseUnfinished: ReleaseUnfinished;
  undoHandBack: UndoHandBack;
}
