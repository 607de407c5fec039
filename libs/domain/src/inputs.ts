/**
 * What each command is told: the shapes that decisions read. The wire schemas of the contract satisfy these types.
 * Ids of what a command makes are UUIDv7 made by the client; the server makes one where it is left out.
 * `at` (epoch ms here, ISO on the wire) is the device's time of a fact that was kept in an outbox.
 */
import type {
  AddVehicle,
  CheckIn,
  ChangePromisedTime,
  RecordConcernOutcome,
  AddCaution,
  EndCaution,
  AddFinding,
  AttachPhoto,
  HandBack,
} from './inputs/job.js';
import type {
  AddLine,
  RecordGoAhead,
  StartWork,
  StopWork,
  FinishLine,
  CarryOverLine,
  DropLine,
} from './inputs/work.js';
import type { TakeIntoBay, MoveToYard, RecordRolls } from './inputs/place.js';
import type { OpenHold, EndHold } from './inputs/hold.js';
import type { WantPart, PlaceOrder, RecordDueIn, ReceiveParts, FitPart, CancelPart } from './inputs/parts.js';
import type {
  AddTemporaryFix,
  RecordSecondCheck,
  EndTemporaryFix,
  AddFollowUp,
  CloseFollowUp,
} from './inputs/outstanding.js';
import type { TakeBack, SettleCard } from './inputs/any.js';
import type {
  SetUpShop,
  AddPerson,
  ChangePerson,
  AddBay,
  ChangeBay,
  SetOpeningHours,
  SetSeasons,
  AddSupplier,
} from './inputs/shop.js';

export type * from './inputs/job.js';
export type * from './inputs/work.js';
export type * from './inputs/place.js';
export type * from './inputs/hold.js';
export type * from './inputs/parts.js';
export type * from './inputs/outstanding.js';
export type * from './inputs/any.js';
export type * from './inputs/shop.js';
export type { Turn } from './inputs/shapes.js';

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
