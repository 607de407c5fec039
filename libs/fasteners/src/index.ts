/**
 * Fasteners: what a bolt bears, which nut goes with it, how deep it has to sit, how tight it may be, and how a temporary
 * fixing compares with the original.
 *
 * Hidden here: the printed tables of ISO 898, ISO 261/262 and SAE J429 without their known misprints, and the books' rules
 * with their disagreements. Guaranteed: whatever is not known is said and never guessed in favour of the fixing; no torque
 * is ever computed for wheels, brakes, steering, restraints, seats, suspension, plastic or captive nuts in sheet, and no
 * computed one loads a bolt above 75 % of its proof load. The vehicle maker's figure always goes first. Answers are codes
 * and figures; none of them says that a joint holds.
 */
export { compareFixings } from './compare.js';
export type { FixingComparison, LoadRatio } from './compare.js';
export { engagementNeeded, engagementRules } from './engagement.js';
export type { Engagement, EngagementRule, TappedMaterial } from './engagement.js';
export { heldWithoutThread } from './fixing.js';
export type { CheckTopic, FixingCheck, Nut, OriginalFixing, TemporaryFixing } from './fixing.js';
export { nutClasses, pairNut } from './nuts.js';
export type { NutClass, NutDoubt, NutStyle } from './nuts.js';
export { inchGrades, loadsOf, propertyClasses, readMark, strengthOf } from './strength.js';
export type {
  BoltLoads,
  InchGrade,
  LoadCircumstances,
  MarkDoubt,
  MarkedBolt,
  PropertyClass,
  Strength,
  StrengthDoubt,
  StrengthMark,
} from './strength.js';
export {
  coarsePitchMm,
  diameterMmOf,
  pitchMmOf,
  readThread,
  sameThread,
  stressAreaByFormulaMm2,
  stressAreaOf,
} from './thread.js';
export type { MetricThread, StressArea, Thread, ThreadDoubt, UnifiedThread } from './thread.js';
export {
  greatestShareOfProof,
  materialsWithoutComputedTorque,
  placesWithoutComputedTorque,
  publishedK,
  surfaces,
  torqueAdvice,
  torqueAtBolt,
  torqueNewtonMetres,
  wrenchSetting,
} from './torque.js';
export type {
  Joint,
  JointPlace,
  NoTorqueReason,
  PublishedK,
  Surface,
  TorqueAdvice,
  TorqueBySource,
  TorqueEstimate,
} from './torque.js';
