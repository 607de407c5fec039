import { jobEnGb } from '../en-gb/job.js';

/** Where the trade says it otherwise in the United States. */
export const jobEnUs = {
  ...jobEnGb,
  'job.heading': 'Repair order {number}',
  'job.ended': 'Left {leaves} on {at}. Nothing more is recorded on this repair order but what happened.',
  'job.notThere': 'There is no such repair order in this shop.',
  'job.kind': '{kind} repair order',
  'job.internal': 'internal repair order',
  'job.lines': 'Operations',
  'job.noLines': 'No operation yet. It says what is to be done; its go-ahead is asked for then.',
  'job.addLine': 'Add an operation',
  'job.noHolds': 'Nothing holds this repair order.',
  'job.holdsAll': 'holds the whole repair order',
  'job.takeUp': 'taken up by an operation of this repair order',
  'job.unpriced':
    '{count, plural, one {# operation with the go-ahead has no price} other {# operations with the go-ahead have no price}}',
  'job.yardSpot': 'in the lot, {spot}',
  'job.cancelled': 'Canceled {at}{words, select, empty {} other {: {words}}}.',
  'sublet.line': 'For the operation',
  'sublet.done.cancel': '{firm}: canceled.',
  'line.reopen.carriedOver': 'Its follow-up is dropped, and the parts come back to this operation.',
} as const;
