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
  addVehicle: front,
  checkIn: front,
  changePromisedTime: front,
  recordConcernOutcome: frontAndFloor,
  addCaution: staff,
  endCaution: staff,
  addFinding: floor,
  attachPhoto: frontAndFloor,
  handBack: front,
  addLine: floor,
  recordGoAhead: staff,
  startWork: floor,
  stopWork: floor,
  finishLine: floor,
  carryOverLine: floor,
  dropLine: floor,
  takeIntoBay: floor,
  moveToYard: floor,
  recordRolls: floor,
  openHold: staff,
  endHold: staff,
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
  setUpShop: [],
  addPerson: owner,
  changePerson: owner,
  addBay: lead,
  changeBay: lead,
  setOpeningHours: lead,
  setSeasons: lead,
  addSupplier: partsDesk,
};

export type ReadName =
  'board' | 'jobs' | 'vehicles' | 'parts' | 'outstanding' | 'bayTime' | 'shop' | 'changeLog' | 'find';

/** Reads by role; the wall screen has the board alone, without names, telephone numbers and prices. */
export const mayRead: { readonly [N in ReadName]: readonly Role[] } = {
  board: [...staff, 'wallScreen'],
  jobs: staff,
  vehicles: staff,
  parts: staff,
  outstanding: staff,
  bayTime: lead,
  shop: staff,
  changeLog: lead,
  find: staff,
};

export function may(roles: readonly Role[], allowed: readonly Role[]): boolean {
  return roles.some((role) => allowed.includes(role));
}
