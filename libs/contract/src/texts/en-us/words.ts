import { wordsEnGb } from '../en-gb/words.js';

/** Where the trade says it otherwise in the United States. */
export const wordsEnUs = {
  ...wordsEnGb,
  'word.system.wheelsTyres': 'wheels and tires',
  'word.system.lighting': 'lamps',
  'word.fixState.removed': 'removed',
  'word.payer.guarantee': 'warranty',
  'word.job.guarantee': 'warranty',
  'word.way.there': 'here in person',
  'word.way.telephone': 'by phone',
  'word.place.yard': 'in the lot',
  'word.holdEnd.lineEnded': 'ended with its operation',
  'word.vehicle.motorcycle': 'motorcycle',
  'word.drive.combustion': 'engine',
  'word.drive.gas': 'gaseous fuel',
  'word.caution.gasTank': 'pressurized gas tank',
} as const;
