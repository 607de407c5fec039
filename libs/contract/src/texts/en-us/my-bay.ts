import { myBayEnGb } from '../en-gb/my-bay.js';

/** Where the trade says it otherwise in the United States. */
export const myBayEnUs = {
  ...myBayEnGb,
  'bay.job': 'Repair order {number}',
  'bay.act.done': 'Operation done',
  'bay.act.line': 'Another operation',
  'bay.act.toYard': 'To the lot',
  'bay.start.heading': 'Start on which operation?',
  'bay.start.none': 'There is no open operation on this repair order. Add one first.',
  'bay.yard.heading': '{plate} to the lot',
  'bay.yard.spot': 'Lot spot',
  'bay.lines': 'Operations',
  'bay.noLines': 'No operation yet.',
  'bay.totalUnpriced': '{count, plural, one {One operation has no price yet.} other {# operations have no price yet.}}',
  'bay.entry.moveToYard': 'to the lot',
  'bay.entry.finishLine': 'operation done',
  'bay.entry.addLine': 'operation added',
  'bay.line.putBack': 'Go-ahead taken back: stop, put back what was taken apart, then end the operation.',
} as const;
