import { entranceEnGb } from '../en-gb/entrance.js';

/** Where the trade says it otherwise in the United States. */
export const entranceEnUs = {
  ...entranceEnGb,
  'setUp.wordsHint': 'Repair order or job card, lot or yard. Each device may choose otherwise.',
  'setUp.passwordHint':
    'At least {least} characters, spaces count. A short sentence is easy to remember. No rules about kinds of characters.',
  'setUp.passwordLeft': '{left, plural, one {One more character} other {# more characters}}.',
} as const;
