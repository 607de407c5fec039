/**
 * Who may do what: one table. The server refuses by it, the web client hides by it, a test tries every role against
 * every command. A person has several roles; one that may is enough. What depends on the row (one's own caution, one's
 * own hold, what the shop allows its floor) is decided in the domain, beside the rule.
 */
import type { CommandName, Role } from '@holdfast/domain';

const owner = ['owner'] as const;
const lead = ['owner', 'manager'] as const;
const front = ['owner', 'manager', 'desk'] as const;
const floor = ['owner', 'manager', 'technician'] as const;
const frontAndFloor = ['owner', 'manager', 'desk', 'technician'] as const;
const partsDesk = ['owner', 'manager', 'partsClerk'] as const;
const staff = ['owner', 'manager', 'desk', 'technician', 'partsClerk'] as const;

export const mayDo: { readonly [N in CommandName]: readonly Role[] } = {
  addCustomer: front,
  changeCustomer: front,
  addContact: front,
  changeContact: front,
  giveStandingGoAhead: front,
  endStandingGoAhead: front,
  recordContact: staff,
  addVehicle: front,
  bookJob: front,
  changeBooking: front,
  recordArrival: front,
  cancelJob: front,
  correctVehicle: front,
  changeOwner: front,
  recordOdometer: frontAndFloor,
  setBoardNote: staff,
  checkIn: front,
  changePromisedTime: front,
  recordConcernOutcome: frontAndFloor,
  addCaution: staff,
  endCaution: staff,
  addFinding: floor,
  attachPhoto: frontAndFloor,
  handBack: front,
  releaseUnfinished: lead,
  undoHandBack: front,
  addLine: floor,
  changeLine: floor,
  makeChoice: floor,
  recordGoAhead: staff,
  withdrawGoAhead: staff,
  startWork: floor,
  stopWork: floor,
  finishLine: floor,
  carryOverLine: floor,
  dropLine: floor,
  reopenLine: floor,
  recordAttempt: frontAndFloor,
  recordCause: floor,
  changeCause: floor,
  recordWheelOff: floor,
  recordWheelOn: floor,
  recordTorque: floor,
  recordRetorque: floor,
  takeIntoBay: floor,
  moveToYard: floor,
  recordRolls: floor,
  swapBays: floor,
  takeOnRoadTest: floor,
  returnFromRoadTest: floor,
  arrangeSublet: front,
  changeSublet: front,
  cancelSublet: front,
  sendAway: front,
  sendComponentAway: front,
  letOutsiderIn: front,
  bringBack: front,
  openHold: staff,
  changeHold: staff,
  endHold: staff,
  askQuestion: staff,
  answerQuestion: staff,
  wantPart: staff,
  placeOrder: partsDesk,
  recordDueIn: partsDesk,
  receiveParts: partsDesk,
  fitPart: floor,
  cancelPart: partsDesk,
  addTemporaryFix: floor,
  recordSecondCheck: floor,
  endTemporaryFix: floor,
  addFollowUp: frontAndFloor,
  closeFollowUp: frontAndFloor,
  takeBack: staff,
  settleCard: floor,
  clearFlag: lead,
  strikeEntry: lead,
  mergeVehicles: lead,
  mergeCustomers: lead,
  erasePersonalData: owner,
  setUpShop: [],
  addPerson: owner,
  changePerson: owner,
  addBay: lead,
  changeBay: lead,
  setOpeningHours: lead,
  setSeasons: lead,
  addSupplier: partsDesk,
  changeSupplier: partsDesk,
  changeShop: owner,
  changeSettings: owner,
  setException: lead,
  endException: lead,
  recordLiftInspection: lead,
  allowOverdueLift: lead,
  takeOutOfUse: floor,
  putBackInUse: lead,
  nameLiftingPoints: lead,
  recordAttendance: staff,
  addAttendance: staff,
  correctAttendance: staff,
  addClock: floor,
  correctClock: staff,
  addStay: lead,
  correctStay: lead,
  correctHold: staff,
  closeMonth: lead,
  reopenMonth: owner,
  acceptImport: lead,
};

export type ReadName =
  | 'board'
  | 'jobs'
  | 'vehicles'
  | 'parts'
  | 'customers'
  | 'dayLoad'
  | 'outstanding'
  | 'bayTime'
  | 'times'
  | 'shop'
  | 'changeLog'
  | 'imports'
  | 'find';

/** Reads by role; the wall screen has the board alone, without names, telephone numbers and prices. */
export const mayRead: { readonly [N in ReadName]: readonly Role[] } = {
  board: [...staff, 'wallScreen'],
  jobs: staff,
  vehicles: staff,
  customers: staff,
  dayLoad: staff,
  parts: staff,
  outstanding: staff,
  bayTime: lead,
  /** Everybody's for owner and manager, else one's own. */
  times: staff,
  shop: staff,
  changeLog: lead,
  imports: lead,
  find: staff,
};

export function may(roles: readonly Role[], allowed: readonly Role[]): boolean {
  return roles.some((role) => allowed.includes(role));
}
