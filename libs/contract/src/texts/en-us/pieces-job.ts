import { piecesJobEnGb } from '../en-gb/pieces-job.js';

/** Where the trade says it otherwise in the United States. */
export const piecesJobEnUs = {
  ...piecesJobEnGb,
  'piece.ask.line': 'About the operation',
  'piece.putBack.act': 'End the operation',
  'piece.boardNote.heading': 'Board note of repair order {number}',
  'piece.done.boardNote': 'Board note of repair order {number} set.',
  'piece.cancelJob.heading': 'Repair order {number}, {plate}, does not take place',
  'piece.cancelJob.act': 'Cancel the repair order',
  'piece.done.cancelJob': 'Repair order {number} canceled.',
  'piece.standing.upToHint': 'What the operations that rest on it may come to in all.',
  'piece.endStanding.under': 'Operations that rest on it keep their go-ahead.',
  'piece.bringBack.yard': 'in the lot',
  'piece.bringBack.spot': 'Lot spot',
  'piece.bringBack.lineStays': 'The operation stays open: somebody looks at the work and ends it by hand.',
} as const;
