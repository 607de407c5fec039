import { wordsDayEnGb } from '../en-gb/words-day.js';

/** Where the trade says it otherwise in the United States. */
export const wordsDayEnUs = {
  ...wordsDayEnGb,
  'word.jobEnd.cancelled': 'canceled',
  'word.subletState.cancelled': 'canceled',
} as const;
