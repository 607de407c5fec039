import { timesEnGb } from '../en-gb/times.js';

export const timesEnUs = {
  ...timesEnGb,
  'times.job': 'repair order {number}, {plate}',
  'times.line': 'Operation',
  'times.where.yard': 'On the lot',
  'times.yardSpot': 'Lot spot',
} as const;
