import { anyRefusals as anyFamilyRefusals } from '../any/refusals.js';
import { customerRefusals } from '../customer/refusals.js';
import { holdRefusals } from '../hold/refusals.js';
import { importRefusals } from '../import/refusals.js';
import { jobRefusals } from '../job/refusals.js';
import { liftRefusals } from '../lift/refusals.js';
import { outstandingRefusals } from '../outstanding/refusals.js';
import { partsRefusals } from '../parts/refusals.js';
import { placeRefusals } from '../place/refusals.js';
import { shopRefusals } from '../shop/refusals.js';
import { timeRefusals } from '../time/refusals.js';
import { workRefusals } from '../work/refusals.js';
import { anyRefusals } from './refusals.js';

/** Every refusal there is. A test holds that each has a sentence in each catalogue. */
export const refusalCodes = [
  ...anyRefusals,
  ...customerRefusals,
  ...jobRefusals,
  ...workRefusals,
  ...placeRefusals,
  ...liftRefusals,
  ...holdRefusals,
  ...partsRefusals,
  ...outstandingRefusals,
  ...anyFamilyRefusals,
  ...shopRefusals,
  ...timeRefusals,
  ...importRefusals,
] as const;
export type RefusalCode = (typeof refusalCodes)[number];
