/**
 * Vehicle facts: what a VIN, a tyre code, a measurement and an odometer say, and what is in print about them.
 *
 * Hidden here: check digits and year codes, two ways to count weeks, the limits of several countries, robust lines through
 * readings, units. Guaranteed: a published limit is offered for its own class of vehicle and no other, compared in its own
 * unit and named with its source; whatever is read is kept as read, doubts stand beside it, and nothing is refused that
 * somebody saw; a guess says that it is one. No answer says that anything is safe or legal. Days are dates of the shop's
 * zone, handed in; nothing here knows the day.
 */
export {
  compareWithLimit,
  aboveGreatest,
  axleDifferenceInFrance,
  cutLimitInGreatBritainMm,
  verdictsOn,
} from './limits.js';
export type { Length, LimitOutcome, LimitVerdict, OwnLimits } from './limits.js';
export { leastSquares, median, theilSen } from './lines-through-points.js';
export type { LeastSquares, Point, TheilSen } from './lines-through-points.js';
export { lifetimeKm, mileagePrior, mileagePriors, priorFor } from './mileage-priors.js';
export type { MileagePrior, MileagePriorName } from './mileage-priors.js';
export { dayOfReading, drivenRate, projectedReading } from './odometer.js';
export type { DayOfReading, DrivenRate, ProjectedReading } from './odometer.js';
export { greatestKmPerDay, judgeReadings } from './odometer-readings.js';
export type { JudgedReading, OdometerDoubt, OdometerReading } from './odometer-readings.js';
export { partSeries, projectWear } from './part-series.js';
export type { PartEvent, PartSeries, PlacedReading, SeriesReading, WearProjection } from './part-series.js';
export { publishedLimits, wearIndicators } from './published-limits.js';
export type { LimitClass, MeasuredPart, MeasuredWhat, PublishedLimit } from './published-limits.js';
export { leftRightDifferenceMm, readPads, readTread } from './readings.js';
export type { PadReading, ReadingDoubt, TreadReading } from './readings.js';
export {
  leadingTyreFact,
  prohibitedByAgeInGreatBritain,
  tyreAdvisers,
  tyreAge,
  tyreAgeAdvice,
  tyreConditions,
} from './tyre-age.js';
export type { TyreAdviser, TyreAge, TyreAgeAdvice, TyreCondition, TyrePosition } from './tyre-age.js';
export { readTyreCode, tyreCodeOf, wholeYears } from './tyre-code.js';
export type { TyreCode, TyreCodeFault, TyreCodeReading } from './tyre-code.js';
export { compare, convert, equalWithin, readNumber, readTorqueUnit } from './units.js';
export type { DistanceUnit, LengthUnit, MassUnit, Quantity, TorqueUnit, TorqueUnitDoubt, Unit } from './units.js';
export { checkDigitOf, lightGrossRatingKg, readVin, suggestVin, yearsOfCode } from './vin.js';
export type { CheckDigit, ModelYear, VehicleKind, VinAbout, VinFacts, VinRegion, VinSuggestion } from './vin.js';
export { faultsInVinForm, hasVinForm, normaliseVin } from './vin-form.js';
export type { VinFormFault } from './vin-form.js';
export { weekOf, weekRange, weeksInYear } from './week.js';
export type { WeekRange, WeekRule } from './week.js';
export {
  daysUntil,
  exceedsRating,
  liftInspection,
  liftInspectionMonths,
  liftingPointsHold,
  retorqueAdvice,
  retorqueReadingHolds,
} from './wheels-and-lifts.js';
export type { LiftInspection, RetorqueAdvice } from './wheels-and-lifts.js';
