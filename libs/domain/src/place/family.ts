/**
 * place/ hides how vehicles, spots and the intervals of both hang together, in the shop, on the road and at other firms.
 * It guarantees rules 1, 3 and 4: an intended move into a taken spot, above a lift's rating, against a caution, or of a
 * vehicle that does not roll is refused; one that has happened is recorded and flagged; one that cannot have happened
 * beside what is settled waits as a card.
 */
import type { Family } from '../kernel/family.js';
import { moveToYard } from './move-to-yard.js';
import { bringBack, letOutsiderIn, sendAway, sendComponentAway } from './out-and-back.js';
import { recordRolls } from './record-rolls.js';
import { returnFromRoadTest, takeOnRoadTest } from './road-test.js';
import { arrangeSublet, cancelSublet, changeSublet } from './sublet.js';
import { swapBays } from './swap-bays.js';
import { takeIntoBay } from './take-into-bay.js';

export const placeFamily: Family<
  | 'takeIntoBay'
  | 'moveToYard'
  | 'recordRolls'
  | 'swapBays'
  | 'takeOnRoadTest'
  | 'returnFromRoadTest'
  | 'arrangeSublet'
  | 'changeSublet'
  | 'cancelSublet'
  | 'sendAway'
  | 'sendComponentAway'
  | 'letOutsiderIn'
  | 'bringBack'
> = {
  takeIntoBay,
  moveToYard,
  recordRolls,
  swapBays,
  takeOnRoadTest,
  returnFromRoadTest,
  arrangeSublet,
  changeSublet,
  cancelSublet,
  sendAway,
  sendComponentAway,
  letOutsiderIn,
  bringBack,
};
