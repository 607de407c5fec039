import { deskPiecesEnGb } from '../en-gb/desk-pieces.js';

export const deskPiecesEnUs = {
  ...deskPiecesEnGb,
  'supplier.phone': 'Phone',
  'supplier.cutOffHint': 'Local time such as 16:30; what is ordered later goes on the next run.',
} as const;
