import { describe, expect, it } from '@jest/globals';
import { at, fit, ordered, said } from './given-orders.js';
import { supplierRecords } from './supplier-record.js';

describe('the record of a supplier', () => {
  it('goes by the first day named for each line, with those still on their way as censored', () => {
    const first = said('2026-01-05T09:00', 'backorderedWithDate', '2026-01-12');
    const second = said('2026-01-12T16:00', 'backorderedWithDate', '2026-01-19');
    const history = [
      ordered('a', '2026-01-05T09:00', { words: [first], goodAt: at('2026-01-12T11:00') }),
      ordered('b', '2026-01-05T09:00', { words: [first, second], goodAt: at('2026-01-19T11:00') }),
      ordered('c', '2026-01-05T09:00', { words: [first, second] }),
      ordered('d', '2026-01-05T09:00', { supplierId: 'Harbour Parts', words: [first] }),
      ordered('e', '2026-01-05T09:00', { supplierId: 'Says Nothing' }),
    ];
    expect(supplierRecords(fit(history, '2026-01-15T12:00'), history)).toEqual([
      // Only a has come: of three on their way on the 12th one came; b and c are two working days late.
      {
        supplierId: 'Northern Glass',
        lines: 3,
        open: 2,
        daysNamed: 5,
        keptFirstDay: expect.closeTo(1 / 3, 9),
        medianSlip: null,
        slip80: null,
      },
      {
        supplierId: 'Harbour Parts',
        lines: 1,
        open: 1,
        daysNamed: 1,
        keptFirstDay: null,
        medianSlip: null,
        slip80: null,
      },
    ]);
    const later = supplierRecords(fit(history, '2026-01-30T12:00'), history)[0];
    expect(later).toMatchObject({ open: 1, medianSlip: 5, slip80: null });
  });
});
