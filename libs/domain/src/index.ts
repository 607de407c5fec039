export * from './kernel/column.js';
export * from './kernel/decision.js';
export * from './kernel/refusal.js';
export * from './kernel/refusal-codes.js';
export * from './kernel/rows.js';
export * from './kernel/slices.js';
export * from './tables/tables.js';
export * from './tables/words.js';
export type { EquipmentItem, HoursOfDay, HoursOfWeek } from './tables/shop.js';
export type * from './inputs.js';
export { rules } from './families.js';
export { settle } from './settle.js';
export type { CommandRule } from './kernel/family.js';
export { flag, flagRules, type FlagRule } from './kernel/flags.js';
export { foldKey } from './kernel/fold.js';
export { compare, minus, plus, sum } from './kernel/amounts.js';
export {
  isHere,
  isStillWanted,
  linesOf,
  missingParts,
  neededNow,
  openHolds,
  partsOf,
} from './questions/parts-and-holds.js';
export {
  decisionOn,
  type Due,
  inspectionDue,
  type Inspected,
  intervalOf,
  isOverdue,
  lastInspection,
  lifts,
  outOfUseByOutage,
  overdueUndecided,
  runningOutage,
  usableEquipment,
} from './questions/bay-use.js';
export { hoursOfPerson, hoursOfShop, zoneAt, zonesOf } from './questions/hours.js';
export { erasedText } from './any/erase-personal-data.js';
export { mostDaysOverdue } from './lift/inspections.js';
export { capacityKg, hasSkill, settingOn, specOn, validOn } from './questions/people-and-shop.js';
export { givenInstead, lineSettledByChoice, othersOfChoice } from './questions/choices.js';
export { standingFor, type StandingLeft } from './customer/standing.js';
export { mayAgree } from './customer/may-agree.js';
export { agreedTo, isPutBack, type Totals, totalsOf } from './questions/totals.js';
export { isOff, retorqueSettled, wheelsNow, wheelsOff, wheelsUntorqued, wheelsWereOff } from './questions/wheels.js';
export {
  clocksRunningOn,
  expectedJobsOf,
  isOnPremises,
  lineEnded,
  openJobOf,
  placeOf,
  runningClockOf,
} from './questions/place-and-work.js';
export { boundsOfMonth, flagClosedMonth } from './time/months.js';
export { presenceOf } from './time/presence.js';
export { bayAndNeighbours } from './cautions/hot-work-near.js';
export {
  type AskedHandBack,
  handBackBlockers,
  isReady,
  lineSettled,
  releaseBlockers,
} from './job/hand-back-blockers.js';
export {
  type Act,
  acts,
  cautionTable,
  type Ender,
  enders,
  forbidsKey,
  type Verdict,
  verdictOf,
} from './cautions/caution-table.js';
export { forbidding } from './cautions/against-cautions.js';
export type { SheetContent } from './job/sheet-content.js';
