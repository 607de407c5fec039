import { wallEnGb } from '../en-gb/wall.js';

export const wallEnUs = {
  ...wallEnGb,
  'wall.held.collection': 'pick-up',
} as const;
