import { piecesEnGb } from '../en-gb/pieces.js';

/** Where the trade says it otherwise in the United States. */
export const piecesEnUs = {
  ...piecesEnGb,
  'piece.goAhead.noPrice': 'This operation has no price yet.',
  'piece.promised.heading': 'Promised time of repair order {number}',
  'piece.done.promised': 'Promised time of repair order {number} changed.',
  'piece.line.heading': 'An operation for this repair order',
  'piece.line.act': 'Add the operation',
  'piece.done.line': 'Operation “{title}” added.',
  'piece.drop.act': 'Drop the operation',
  'piece.hold.noParts': 'No part of this repair order is awaited. Want the part first; the hold then names it.',
  'piece.hold.lines': 'Which operations',
  'piece.hold.wholeJob': 'None checked: the whole repair order.',
  'piece.fix.tier1':
    'With this system open the vehicle leaves on a transporter, or repaired for good. By road only if owner or manager allows it by name with words, another person has checked it, and whoever receives the vehicle signs for exactly this.',
  'piece.fix.line': 'Made with the operation',
  'piece.endFix.line': 'Repaired with the operation',
  'piece.endFix.noLine': 'No operation of this vehicle is done. Finish the operation of the permanent repair first.',
  'piece.photo.showsPeople': 'People can be recognized on it',
  'piece.photo.act': 'Put on the repair order',
  'piece.endCaution.standing':
    'A standing caution ends with the operation that mended it, or by owner or manager with words.',
  'piece.endCaution.line': 'Mended with the operation',
  'piece.closeFollowUp.line': 'Done with the operation',
} as const;
