/** The registry of families: what each command needs and how it is decided. It only imports them. */
import { anyFamily } from './any/family.js';
import { customerFamily } from './customer/family.js';
import { holdFamily } from './hold/family.js';
import { importFamily } from './import/family.js';
import type { CommandName } from './inputs.js';
import { jobFamily } from './job/family.js';
import { liftFamily } from './lift/family.js';
import type { CommandRule } from './kernel/family.js';
import { outstandingFamily } from './outstanding/family.js';
import { partsFamily } from './parts/family.js';
import { placeFamily } from './place/family.js';
import { shopFamily } from './shop/family.js';
import { timeFamily } from './time/family.js';
import { workFamily } from './work/family.js';

export const rules: { readonly [N in CommandName]: CommandRule<N> } = {
  ...customerFamily,
  ...jobFamily,
  ...workFamily,
  ...placeFamily,
  ...liftFamily,
  ...holdFamily,
  ...partsFamily,
  ...outstandingFamily,
  ...anyFamily,
  ...shopFamily,
  ...timeFamily,
  ...importFamily,
};
