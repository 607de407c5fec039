/** For specs: a standing go-ahead of the last customer named, for all their vehicles, up to 500. */
import type { Given } from '../kernel/given.js';
import { recorded } from '../kernel/given-usual.js';
import type { NewRow } from '../kernel/rows.js';

export function standing(given: Given, id: string, over: Partial<NewRow<'standingGoAhead'>> = {}): Given {
  return given.row('standingGoAhead', {
    id,
    ...recorded,
    customerId: 'c1',
    vehicleId: null,
    jobId: null,
    kind: 'fleetLimit',
    upTo: '500',
    orderNumber: null,
    byName: 'Mr Ashby',
    untilDay: null,
    endedAt: null,
    endWords: null,
    ...over,
  });
}
