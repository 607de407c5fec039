import { describe, expect, it } from '@jest/globals';
import { valuesOfFacts } from './values-of-facts.js';

const writing = {
  instant: (at: number) => `at ${at}`,
  day: (isoDay: string) => `day ${isoDay}`,
  month: (isoDay: string) => `month of ${isoDay}`,
  money: (amount: string) => `money ${amount}`,
};

describe('the facts of a refusal as values of its sentence', () => {
  it('are written as in the shop where they are instants or amounts', () => {
    expect(
      valuesOfFacts(
        { since: '1970-01-01T00:00:01.000Z', left: '180', upTo: '99.50', until: '2026-03-10', month: '2026-02' },
        writing,
      ),
    ).toEqual({
      since: 'at 1000',
      left: 'money 180',
      upTo: 'money 99.50',
      until: 'day 2026-03-10',
      month: 'month of 2026-02-01',
    });
  });

  it('stay as they are otherwise, nought too, by which a sentence chooses its words', () => {
    expect(valuesOfFacts({ count: 3, plate: '180', limit: '0', none: null, yes: true }, writing)).toEqual({
      count: 3,
      plate: '180',
      limit: '0',
      none: '',
      yes: 'true',
    });
  });
});
