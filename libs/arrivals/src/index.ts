/**
 * Arrivals: when a part on its way will really be here, and when a job has all the parts it needs.
 *
 * Hidden here: survival curves of suppliers' words, which orders are like which, how thin history leans on what stands
 * behind it, and how a count of working days or runs becomes a time at which somebody can receive the part. Guaranteed:
 * every day that a supplier named counts from when it was named, the superseded ones too; a part that is late is judged
 * by what else was as late; nothing later than `now` is seen; where the history ends above a level the answer is "not
 * before", never an invented day. It knows no rows of the domain.
 */
export { allHere, chanceAllHere } from './all-here.js';
export type { AllHere, ChanceAllHere, ThreeDates } from './all-here.js';
export { allIndependent, frechetRange } from './all-of.js';
export { arrivalOf } from './arrival.js';
export type { Arrival, ArrivalDate } from './arrival.js';
export type { Basis } from './line-law.js';
export { supplierStates } from './history.js';
export type { LeftOut, LeftOutReason, OrderedLine, SupplierState, SupplierWord } from './history.js';
export { kaplanMeier, midpointQuantile, quantileLimits, survivalAt } from './kaplan-meier.js';
export type { Observation, SurvivalStep } from './kaplan-meier.js';
export { fitArrivals } from './model.js';
export type { ArrivalsModel, FitOptions } from './model.js';
export { pinballLoss, sampleQuantile } from './sample-quantile.js';
export type { QuantileType } from './sample-quantile.js';
export type { Counted, Horizon, Measure, Ordinal, Stratum } from './strata.js';
export { supplierRecords } from './supplier-record.js';
export type { SupplierRecord } from './supplier-record.js';
export { trackRecord } from './track-record.js';
export type { LevelRecord, Losses, TrackOptions, TrackRecord } from './track-record.js';
