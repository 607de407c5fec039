/**
 * Parts wanted, ordered, promised, arrived and fitted. Hidden here: how pieces are counted and which state of a part line
 * follows from them. Guaranteed (rule 10): quantities are exact decimals, and the pieces of a part line are never lost or
 * doubled, whatever is told in whatever order. What arrivals mean for holds stands in ../settle.
 */
import type { Family } from '../kernel/family.js';
import { cancelPart } from './cancel-part.js';
import { recordDueIn } from './due-in.js';
import { fitPart } from './fit-part.js';
import { placeOrder } from './place-order.js';
import { receiveParts } from './receive-parts.js';
import { wantPart } from './want-part.js';

export const partsFamily: Family<
  'wantPart' | 'placeOrder' | 'recordDueIn' | 'receiveParts' | 'fitPart' | 'cancelPart'
> = {
  wantPart,
  placeOrder,
  recordDueIn,
  receiveParts,
  fitPart,
  cancelPart,
};
