/**
 * Bay time: what became of every opening millisecond of a bay.
 *
 * Hidden here: how stays, clocks, holds, go-aheads, breaks and opening time are laid over each other. Guaranteed: each
 * opening millisecond falls in exactly one class, so that the classes add up to opening time exactly, whatever the
 * input; bay-hours (clocks united) and technician-hours (clocks added up) are never mixed; work outside opening time
 * is in no class. Beside the partition: what each reason, supplier and part held, alone and with others; the figures of
 * bays, equipment, people and the shop by period; and the flow of vehicles through it. It knows no rows of the domain, only ids and intervals.
 */
export { isOutsider, outsiderId, usualGraceMs } from './account-input.js';
export type {
  GoAheadAnswer,
  HeldPart,
  JobClock,
  JobHold,
  JobLine,
  Span,
  SpotInput,
  SpotStay,
  StoredMark,
} from './account-input.js';
export { waitsOfJob } from './job-waits.js';
export type { JobRows, Wait } from './job-waits.js';
export { bayTimeClasses, partition } from './partition.js';
export type { BayTimeClass, HoldingStretch, PersonStretch, Segment, SpotAccount } from './partition.js';
export { sumTotals, totalsOfAccount, totalsPer } from './totals.js';
export type { BayTimeTotals } from './totals.js';
export { holdTimesOfAccount, holdTimesPer, sumHoldTimes } from './hold-times.js';
export type { HoldTimes, SoleAndShared } from './hold-times.js';
export { periodsOf } from './periods.js';
export type { Period, PeriodUnit } from './periods.js';
export { bayFigures } from './bay-figures.js';
export type { BayFigures, FiguresOfPeriod, Presence, SpotOfBay } from './bay-figures.js';
export { peopleFigures } from './people-figures.js';
export type { FinishedLine, HoursOfPeople, LineClock, PeopleFigures, PeopleInput } from './people-figures.js';
export { timeHere, timeHereClasses, whoseMove } from './time-here.js';
export type { TimeHere, TimeHereClass, WhoseMove } from './time-here.js';
export { flowOf } from './flow.js';
export type { Flow, FlowInput, OffTheRoad, Visit } from './flow.js';
export { littleCheck } from './little.js';
export type { LittleCheck, LittleFigures } from './little.js';
export type { CountStretch } from './counts.js';
