import { bayTimeEnGb } from '../en-gb/bay-time.js';

export const bayTimeEnUs = {
  ...bayTimeEnGb,
  'bayTime.percent': '{percent}%',
} as const;
