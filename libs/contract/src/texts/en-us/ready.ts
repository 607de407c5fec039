import { readyEnGb } from '../en-gb/ready.js';

/** Where the trade says it otherwise in the United States. */
export const readyEnUs = {
  ...readyEnGb,
  'ready.find': 'License plate, name or key',
  'ready.withoutHours':
    '{count, plural, one {# operation has no book hours and is not counted} other {# operations have no book hours and are not counted}}',
  'ready.asked':
    '{count, plural, one {# operation waits} other {# operations wait}} for the word of {name}: it may add to this',
  'ready.askedNobody':
    '{count, plural, one {# operation waits} other {# operations wait}} for the customer’s word: it may add to this',
  'ready.noLines': 'no operation with the go-ahead',
  'ready.job': 'To repair order {number}',
} as const;
