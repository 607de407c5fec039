import { outstandingEnGb } from '../en-gb/outstanding.js';

export const outstandingEnUs = {
  ...outstandingEnGb,
  'outstanding.find': 'Only one vehicle: plate, key or repair order number',
  'outstanding.here': 'here, repair order {number}',
} as const;
