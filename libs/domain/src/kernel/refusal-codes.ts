import { anyRefusals as anyFamilyRefusals } from '../any/refusals.js';
import { customerRefusals } from '../customer/refusals.js';
import { holdRefusals } from '../hold/refusals.js';
import { jobRefusals } from '../job/refusals.js';
import { outstandingRefusals } from '../outstanding/refusals.js';
import { partsRefusals } from '../parts/refusals.js';
import { placeRefusals } from '../place/refusals.js';
import { shopRefusals } from '../shop/refusals.js';
import { workRefusals } from '../work/refusals.js';
import { anyRefusals } from './refusals.js';

/** Every refusal there is. A test holds that each has a sentence in each catalogue. */
export const refusalCodes = [
  ...anyRefusals,
  ...customerRefusals,
  ...jobRefusals,
  ...workRefusals,
  ...placeRefusals,
  ...holdRefusals,
  ...partsRefusals,
  ...outstandingRefusals,
  ...anyFamilyRefusals,
  ...shopRefusals,
] as const;
export type RefusalCode = (typeof refusalCodes)[number];
