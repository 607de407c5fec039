import { partsDeskEnGb } from '../en-gb/parts-desk.js';

export const partsDeskEnUs = {
  ...partsDeskEnGb,
  'partsDesk.job': 'Repair order {number}, {what}',
  'partsDesk.receive.note': 'Packing slip',
} as const;
