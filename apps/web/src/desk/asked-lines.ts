import type { Visit } from '@holdfast/board';
import { lineEnded } from '@holdfast/domain';

/** Lines of a visit that wait for the customer's word. */
export const askedLines = (visit: Visit): Visit['lines'] =>
  visit.lines.filter((line) => line.goAhead === 'withCustomer' && !lineEnded(line));
