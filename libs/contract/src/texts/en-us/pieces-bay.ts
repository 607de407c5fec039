import { piecesBayEnGb } from '../en-gb/pieces-bay.js';

/** Where the trade says it otherwise in the United States. */
export const piecesBayEnUs = {
  ...piecesBayEnGb,
  'roadTest.toYard': 'In the lot',
  'roadTest.yardSpot': 'Lot spot',
  'roadTest.noSpot': 'No spot was kept. From the lot it goes into a bay like any other vehicle.',
  'roadTest.defer':
    'What is listed here is only what was recorded. Whether it can be driven is for whoever drives to judge, by the vehicle maker’s instructions, local law and the rules for dealer plates and insurance.',
  'wheel.twins': 'Duals on axle {axle}',
  'wheel.line': 'For the operation',
} as const;
