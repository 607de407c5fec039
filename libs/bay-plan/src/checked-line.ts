/** The words of the checker. */
import type { PlanJob, PlanLine } from './model.js';
import type { PlannedLine } from './plan.js';

export type PlanFaultCode =
  | 'lineUnknown'
  | 'lineTwice'
  | 'lineMissing'
  | 'spotUnknown'
  | 'spotDoesNotSuit'
  | 'spotNeeded'
  | 'vehicleIsAway'
  | 'peopleNumber'
  | 'personUnknown'
  | 'skillMissing'
  | 'fixedSpotNotKept'
  | 'fixedPeopleNotKept'
  | 'fixedStartNotKept'
  | 'tooEarly'
  | 'beyondHorizon'
  | 'notInOpenTime'
  | 'workTimeWrong'
  | 'notInASlot'
  | 'beforeItsTurn'
  | 'spotTwice'
  | 'personTwice'
  | 'toolTwice'
  | 'vehicleTwice'
  | 'noTimeToMove'
  | 'vehicleStaysHere'
  | 'vehicleCannotLeave'
  | 'valueWrong';

export interface PlanFault {
  readonly code: PlanFaultCode;
  readonly lineId: string | null;
  /** the other line, the spot, the person, or the part of the value that does not agree */
  readonly with: string | null;
}

/** A line of the plan beside what the model says of it. */
export interface CheckedLine {
  readonly planned: PlannedLine;
  readonly job: PlanJob;
  readonly line: PlanLine;
}

export type Report = (code: PlanFaultCode, lineId: string | null, other?: string | null) => void;
