/**
 * place/ hides how vehicles, spots and the intervals of both hang together. It guarantees rules 1, 3 and 4: an intended
 * move into a taken spot, above a lift's rating, or of a vehicle that does not roll is refused; one that has happened is
 * recorded and flagged; one that cannot have happened beside what is settled waits as a card.
 */
import type { Family } from '../kernel/family.js';
import { moveToYard } from './move-to-yard.js';
import { recordRolls } from './record-rolls.js';
import { takeIntoBay } from './take-into-bay.js';

export const placeFamily: Family<'takeIntoBay' | 'moveToYard' | 'recordRolls'> = {
  takeIntoBay,
  moveToYard,
  recordRolls,
};
