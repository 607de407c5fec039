import { handBackEnGb } from '../en-gb/hand-back.js';

/** Where the trade says it otherwise in the United States. */
export const handBackEnUs = {
  ...handBackEnGb,
  'handBack.under': 'Repair order {number} · {customer}',
  'handBack.toJob': 'The repair order',
  'handBack.goThere': 'On the repair order',
  'handBack.notByTelephone': 'This is signed for here, not by phone.',
  'handBack.telephone': 'by phone',
  'handBack.done': 'Repair order {number} is handed back.',
  'sheet.none': 'There is no sheet of this repair order.',
  'sheet.job': 'Repair order {number}',
  'sheet.leaves': 'Left {leaves}, received by {name} {how, select, telephone {by phone} other {here}}.',
  'handBack.undone': 'Repair order {number} goes on; its sheet is void.',
  'handBack.undoUnder':
    'The visit goes on: in its bay if the spot is still free, else in the lot. The sheet is marked void with your words; tell whoever has it. Follow-ups that were made stay.',
  'handBack.released': 'Repair order {number} is released unfinished.',
} as const;
