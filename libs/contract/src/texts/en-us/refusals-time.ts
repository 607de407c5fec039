import { refusalsTimeEnGb } from '../en-gb/refusals-time.js';

/** Where the trade says it otherwise in the United States. */
export const refusalsTimeEnUs = {
  ...refusalsTimeEnGb,
  'refusal.time.onAnotherClock':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} this person was on another clock, of repair order {jobNumber}. Correct that one first.',
  'refusal.time.spotTaken':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} another vehicle had spot {spot, number}, that of repair order {jobNumber}. Correct its stay first.',
  'refusal.time.outsideVisit':
    'The vehicle of repair order {jobNumber} was here from {fromAt} {runs, select, true {on} other {to {toAt}}}. Give times within that.',
  'refusal.time.notArrived': 'The vehicle of repair order {jobNumber} has not arrived.',
  'refusal.time.notInBay': 'The vehicle stood in the lot then. Add a stay in the bay instead.',
  'refusal.time.cannotRun':
    'The visit or the operation has ended, so nothing of it goes on. Give the time when it ended.',
  'refusal.entry.named':
    'Something else rests on this entry: {by, select, workLine {an operation came of it} photo {a photo belongs to it} attempt {an attempt was made on it} hold {another hold carries it on} other {another entry names it}}. Put that right first.',
} as const;
