/**
 * What each command is told: the shapes that decisions read. The wire schemas of the contract satisfy these types.
 * Ids of what a command makes are UUIDv7 made by the client; the server makes one where it is left out.
 * `at` (epoch ms here, ISO on the wire) is the device's time of a fact that was kept in an outbox.
 */
import type { EquipmentItem, HoursOfWeek } from './tables/shop.js';
import type * as w from './tables/words.js';

type Word<L extends readonly string[]> = L[number];
type Opt<T> = T | undefined;

/** A turn carries the version of the row it acts on, or the key of one's own earlier command that last changed it. */
export interface Turn {
  version?: Opt<number>;
  afterKey?: Opt<string>;
}
interface Limits {
  beforeDay?: Opt<string>;
  beforeOdometer?: Opt<number>;
  withinDistance?: Opt<number>;
  withinDays?: Opt<number>;
  seasonId?: Opt<string>;
  distanceUnit?: Opt<Word<typeof w.distanceUnits>>;
}
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

// --- job
export interface AddVehicle extends VehicleFacts {
  vehicleId?: Opt<string>;
  customerId?: Opt<string>;
}
export interface CheckIn {
  jobId?: Opt<string>;
  vehicleId: string;
  kind?: Opt<Word<typeof w.jobKinds>>;
  comebackOfLineId?: Opt<string>;
  /** A known customer, or a new one by name; neither for an internal job. */
  customerId?: Opt<string>;
  customer?: Opt<{ customerId?: Opt<string>; name: string; fleet?: Opt<string> }>;
  contactId?: Opt<string>;
  contact?: Opt<{
    contactId?: Opt<string>;
    name: string;
    phone?: Opt<string>;
    mail?: Opt<string>;
    mayBring?: Opt<boolean>;
    mayAgreeUpTo?: Opt<string>;
    mayAgreeAny?: Opt<boolean>;
    mayCollect?: Opt<boolean>;
  }>;
  concerns: { concernId?: Opt<string>; words: string; conditions?: Opt<string> }[];
  odometer?: Opt<{ value?: Opt<number>; unit: Word<typeof w.distanceUnits>; source: Word<typeof w.readingSources> }>;
  keyTag?: Opt<string>;
  yardSpot?: Opt<string>;
  promisedAt?: Opt<number>;
  waitsHere?: Opt<boolean>;
  boardNote?: Opt<string>;
  rolls?: Opt<boolean>;
  mayBeDriven?: Opt<boolean>;
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

// --- work
export interface AddLine {
  lineId?: Opt<string>;
  jobId: string;
  title: string;
  bookMinutes?: Opt<number>;
  equipment?: Opt<Word<typeof w.equipmentKinds>>;
  skill?: Opt<Word<typeof w.skills>>;
  payer?: Opt<Word<typeof w.payers>>;
  concernId?: Opt<string>;
  findingId?: Opt<string>;
  price?: Opt<string>;
  choiceId?: Opt<string>;
  afterLineId?: Opt<string>;
  fromFollowUpId?: Opt<string>;
}
export interface RecordGoAhead extends Turn {
  lineId: string;
  answer: w.GoAheadAnswer;
  byName?: Opt<string>;
  how?: Opt<Word<typeof w.goAheadWays>>;
  upTo?: Opt<string>;
  words?: Opt<string>;
  at?: Opt<number>;
}
export interface StartWork {
  clockId?: Opt<string>;
  lineId: string;
  /** Whose clock; the sender's where left out. */
  personId?: Opt<string>;
  bench?: Opt<boolean>;
  /** A report of what happened (offline, or entered after the fact): recorded and flagged instead of refused. */
  alreadyStarted?: Opt<boolean>;
  at?: Opt<number>;
}
export interface StopWork extends Turn {
  clockId: string;
  handover?: Opt<string>;
  at?: Opt<number>;
}
export interface FinishLine extends Turn {
  lineId: string;
  words?: Opt<string>;
  at?: Opt<number>;
}
export interface CarryOverLine extends Turn {
  lineId: string;
  followUpId?: Opt<string>;
  done: string;
  remaining: string;
  remainingMinutes?: Opt<number>;
  urgency?: Opt<Word<typeof w.urgencies>>;
  limits?: Opt<Limits>;
}
export interface DropLine extends Turn {
  lineId: string;
  words: string;
}

// --- place
export interface TakeIntoBay {
  placeId?: Opt<string>;
  jobId: string;
  bayId: string;
  spot?: Opt<number>;
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  /** Answer to "loaded or empty?" at a lift, and the load's kilograms where known. */
  loaded?: Opt<boolean>;
  loadKg?: Opt<number>;
  /** It stands there already: a fact, recorded and flagged, not refused. */
  alreadyThere?: Opt<boolean>;
  at?: Opt<number>;
}
export interface MoveToYard {
  placeId?: Opt<string>;
  jobId: string;
  yardSpot?: Opt<string>;
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  at?: Opt<number>;
}
export interface RecordRolls {
  vehicleId: string;
  rolls: boolean;
  mayBeDriven: boolean;
  at?: Opt<number>;
}

// --- hold
export interface OpenHold {
  holdId?: Opt<string>;
  jobId: string;
  reason: w.HoldReason;
  /** Empty: the whole job. */
  lineIds?: Opt<string[]>;
  partLineIds?: Opt<string[]>;
  words?: Opt<string>;
  moveOfId?: Opt<string>;
  moveOf?: Opt<string>;
  endsAt?: Opt<number>;
  at?: Opt<number>;
}
export interface EndHold extends Turn {
  holdId: string;
  words?: Opt<string>;
  at?: Opt<number>;
}

// --- parts
export interface WantPart {
  partLineId?: Opt<string>;
  /** Its purpose: a work line of a job, or a follow-up of a vehicle that may have left. */
  lineId?: Opt<string>;
  followUpId?: Opt<string>;
  number?: Opt<string>;
  description: string;
  quantity: string;
  unit?: Opt<string>;
  unitPrice?: Opt<string>;
  needed: Word<typeof w.neededTimes>;
  supplierId?: Opt<string>;
  at?: Opt<number>;
}
export interface DueDate {
  state: Word<typeof w.supplierStates>;
  dueOn?: Opt<string>;
  words?: Opt<string>;
}
export interface PlaceOrder {
  orderId?: Opt<string>;
  supplierId: string;
  reference: string;
  words?: Opt<string>;
  lines: { partLineId: string; version?: Opt<number>; unitPrice?: Opt<string>; due?: Opt<DueDate> }[];
}
export interface RecordDueIn extends DueDate {
  partLineIds: string[];
  at?: Opt<number>;
}
export interface ReceiveParts {
  deliveryId?: Opt<string>;
  supplierId?: Opt<string>;
  orderId?: Opt<string>;
  note?: Opt<string>;
  items: {
    partLineId: string;
    quantity: string;
    verdict: Word<typeof w.verdicts>;
    foundAtVehicle?: Opt<boolean>;
    bin?: Opt<string>;
    words?: Opt<string>;
  }[];
  at?: Opt<number>;
}
export interface FitPart extends Turn {
  partLineId: string;
  quantity?: Opt<string>;
}
export interface CancelPart extends Turn {
  partLineId: string;
  words: string;
}

// --- outstanding
export interface AddTemporaryFix extends Limits {
  temporaryFixId?: Opt<string>;
  jobId: string;
  lineId?: Opt<string>;
  kind: Word<typeof w.fixKinds>;
  standsInFor: string;
  place: string;
  heldWith?: Opt<string>;
  system: w.System;
  endedByWhat: string;
  removedPieceAt?: Opt<string>;
  followUpId?: Opt<string>;
  at?: Opt<number>;
}
export interface RecordSecondCheck extends Turn {
  secondCheckId?: Opt<string>;
  temporaryFixId: string;
  words?: Opt<string>;
}
export interface EndTemporaryFix extends Turn {
  temporaryFixId: string;
  /** `failed` and `removed` do not end it: its follow-up becomes urgent and stays open. */
  how: Word<typeof w.fixEnds> | 'failed' | 'removed';
  toldHow?: Opt<Word<typeof w.toldWays>>;
  lineId?: Opt<string>;
  words?: Opt<string>;
}
export interface AddFollowUp extends Limits {
  followUpId?: Opt<string>;
  vehicleId: string;
  jobId?: Opt<string>;
  kind: Word<typeof w.followUpKinds>;
  title: string;
  words?: Opt<string>;
  urgency?: Opt<Word<typeof w.urgencies>>;
  temporaryFixId?: Opt<string>;
  lineId?: Opt<string>;
  partLineIds?: Opt<string[]>;
  remainingMinutes?: Opt<number>;
  needsGoAhead?: Opt<boolean>;
  needsFollowUpId?: Opt<string>;
  at?: Opt<number>;
}
export interface CloseFollowUp extends Turn {
  followUpId: string;
  how: 'done' | 'dropped';
  lineId?: Opt<string>;
  words?: Opt<string>;
}

// --- any
export interface TakeBack {
  /** Number of one's own change, at most ten minutes old. */
  seq: number;
}
export interface SettleCard extends Turn {
  reportId: string;
  /** Take the report as what happened (what it clashes with is ended or voided), or leave what is settled. */
  take: boolean;
  words: string;
}

// --- shop
export interface SetUpShop {
  code: string;
  shop: {
    name: string;
    zone: string;
    currency: string;
    units: 'metric' | 'us';
    locale: 'en-GB' | 'en-US';
  };
  owner: { name: string; password: string };
}
export interface AddPerson {
  personId?: Opt<string>;
  name: string;
  roles: w.Role[];
  password?: Opt<string>;
  homeBayId?: Opt<string>;
  skills?: Opt<{ skill: string; until?: Opt<string> }[]>;
  hours?: Opt<PersonHours>;
}
export interface PersonHours {
  validFrom: string;
  week: HoursOfWeek;
  breaks: HoursOfWeek;
}
export interface ChangePerson extends Turn {
  personId: string;
  name?: Opt<string>;
  roles?: Opt<w.Role[]>;
  active?: Opt<boolean>;
  homeBayId?: Opt<string | null>;
  /** The whole list; a skill left out ends. */
  skills?: Opt<{ skill: string; until?: Opt<string> }[]>;
  hours?: Opt<PersonHours>;
  password?: Opt<string>;
}
export interface BayFacts {
  spots: number;
  equipment: EquipmentItem[];
  capacity?: Opt<string>;
  capacityUnit?: Opt<Word<typeof w.massUnits>>;
  maxLengthMm?: Opt<number>;
  maxHeightMm?: Opt<number>;
  maxWheelbaseMm?: Opt<number>;
  inspectedOn?: Opt<string>;
  inspectionOutcome?: Opt<'passed' | 'failed'>;
  inspectionIntervalMonths?: Opt<number>;
  outOfUse?: Opt<boolean>;
  outOfUseWords?: Opt<string>;
}
export interface AddBay extends BayFacts {
  bayId?: Opt<string>;
  name: string;
  position?: Opt<number>;
  validFrom?: Opt<string>;
}
export interface ChangeBay extends Turn {
  bayId: string;
  name?: Opt<string>;
  position?: Opt<number>;
  endedOn?: Opt<string | null>;
  /** Facts of the bay from a day on (today where left out); last year's figures keep the old ones. */
  validFrom?: Opt<string>;
  facts?: Opt<BayFacts>;
}
export interface SetOpeningHours {
  validFrom: string;
  week: HoursOfWeek;
  breaks: HoursOfWeek;
}
export interface SetSeasons {
  seasons: { seasonId?: Opt<string>; name: string; fromDay: string; toDay: string; validFrom: string }[];
}
export interface AddSupplier {
  supplierId?: Opt<string>;
  name: string;
  phone?: Opt<string>;
  mail?: Opt<string>;
  cutOff?: Opt<string>;
  runs?: Opt<HoursOfWeek>;
}

export interface CommandInputs {
  addVehicle: AddVehicle;
  checkIn: CheckIn;
  changePromisedTime: ChangePromisedTime;
  recordConcernOutcome: RecordConcernOutcome;
  addCaution: AddCaution;
  endCaution: EndCaution;
  addFinding: AddFinding;
  attachPhoto: AttachPhoto;
  handBack: HandBack;
  addLine: AddLine;
  recordGoAhead: RecordGoAhead;
  startWork: StartWork;
  stopWork: StopWork;
  finishLine: FinishLine;
  carryOverLine: CarryOverLine;
  dropLine: DropLine;
  takeIntoBay: TakeIntoBay;
  moveToYard: MoveToYard;
  recordRolls: RecordRolls;
  openHold: OpenHold;
  endHold: EndHold;
  wantPart: WantPart;
  placeOrder: PlaceOrder;
  recordDueIn: RecordDueIn;
  receiveParts: ReceiveParts;
  fitPart: FitPart;
  cancelPart: CancelPart;
  addTemporaryFix: AddTemporaryFix;
  recordSecondCheck: RecordSecondCheck;
  endTemporaryFix: EndTemporaryFix;
  addFollowUp: AddFollowUp;
  closeFollowUp: CloseFollowUp;
  takeBack: TakeBack;
  settleCard: SettleCard;
  setUpShop: SetUpShop;
  addPerson: AddPerson;
  changePerson: ChangePerson;
  addBay: AddBay;
  changeBay: ChangeBay;
  setOpeningHours: SetOpeningHours;
  setSeasons: SetSeasons;
  addSupplier: AddSupplier;
}
export type CommandName = keyof CommandInputs;
