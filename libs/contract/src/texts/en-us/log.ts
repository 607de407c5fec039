import { logEnGb } from '../en-gb/log.js';

const on = '{about, select, empty {} other {: {about}}}';

/** Where the trade says it otherwise in the United States. */
export const logEnUs = {
  ...logEnGb,
  'log.attachPhoto': `Photo put on the repair order`,
  'log.addLine': `Operation added${on}`,
  'log.finishLine': `Operation done${on}`,
  'log.carryOverLine': `Operation carried over${on}`,
  'log.dropLine': `Operation dropped${on}`,
  'log.moveToYard': `Moved to the lot`,
} as const;
