import { waitingEnGb } from '../en-gb/waiting.js';

export const waitingEnUs = {
  ...waitingEnGb,
  'waiting.noneWhy':
    'A hold that somebody opens, and an operation that is with the customer, appear here by themselves.',
  'waiting.goAhead':
    '{count, plural, =0 {The go-ahead} one {The go-ahead for one operation} other {The go-ahead for # operations}}',
  'waiting.what.collection': 'Being picked up',
  'waiting.toJob': '{plate}, repair order {number}',
  'waiting.wholeJob': 'the whole repair order',
} as const;
