import { describe, expect, it } from '@jest/globals';
import { opening } from '../kernel/given.js';
import { type PricedLine, takenOf, totalsOf } from './totals.js';

const line = (over: Partial<PricedLine> = {}): PricedLine => ({
  goAhead: 'given',
  goAheadUpTo: null,
  progress: 'planned',
  payer: 'customer',
  price: '100',
  standingId: null,
  withdrawnAt: null,
  startedAt: null,
  ...over,
});
const putBack = { goAhead: 'declined', withdrawnAt: opening, startedAt: opening, progress: 'dropped' } as const;

describe('the total of a visit', () => {
  it('counts the given lines that the customer pays, at their price against what was agreed', () => {
    const lines = [
      line({ price: '100.10', goAheadUpTo: '120' }),
      line({ price: '50' }),
      line({ payer: 'guarantee' }),
      line({ goAhead: 'withCustomer' }),
      line({ goAhead: 'declined' }),
      line({ progress: 'dropped' }),
    ];
    expect(totalsOf(lines)).toMatchObject({ soFar: '150.1', given: '170', over: false, unpriced: 0, charged: '0' });
  });

  it('is over where prices moved past what was agreed, by the smallest step', () => {
    expect(totalsOf([line({ price: '100.01', goAheadUpTo: '100' })]).over).toBe(true);
    expect(totalsOf([line({ price: '100', goAheadUpTo: '100' })]).over).toBe(false);
  });

  it('still counts a line that was begun and is asked again because its price moved', () => {
    const again = { goAhead: 'withCustomer', price: '150', goAheadUpTo: '100' } as const;
    expect(totalsOf([line({ ...again, startedAt: opening })])).toMatchObject({
      soFar: '150',
      given: '100',
      over: true,
    });
    expect(totalsOf([line(again)])).toMatchObject({ soFar: '0', given: '0', over: false });
  });

  it('counts lines without a price', () => {
    expect(totalsOf([line({ price: null }), line()])).toMatchObject({ soFar: '100', unpriced: 1 });
  });

  it('keeps the charge of what was withdrawn and put back, and that alone of what was dropped', () => {
    const lines = [line({ ...putBack, price: '35' }), line({ ...putBack, price: '9', payer: 'shop' }), line()];
    expect(totalsOf(lines)).toMatchObject({ soFar: '135', given: '135', charged: '35', over: false });
    expect(totalsOf([line({ ...putBack, startedAt: null })]).charged).toBe('0');
    expect(totalsOf([line({ ...putBack, withdrawnAt: null })]).charged).toBe('0');
    expect(totalsOf([line({ ...putBack, progress: 'stopped' })]).charged).toBe('0');
  });

  it('says what standing go-aheads still cover, none of them below nought', () => {
    const lines = [line({ standingId: 's1', price: '80' }), line({ standingId: 's2', price: '70' })];
    expect(totalsOf(lines).leftUnderStanding).toBeNull();
    expect(totalsOf(lines, [{ id: 's1', upTo: '100' }]).leftUnderStanding).toBe('20');
    const both = [
      { id: 's1', upTo: '100' },
      { id: 's2', upTo: '50' },
    ];
    expect(totalsOf(lines, both).leftUnderStanding).toBe('20');
  });
});

describe('what is taken of a standing go-ahead', () => {
  it('is the price of the lines that rest on it, but those dropped or declined', () => {
    const on = { standingId: 's1' } as const;
    const lines = [line(on), line({ ...on, progress: 'dropped' }), line({ ...on, goAhead: 'declined' }), line()];
    expect(takenOf('s1', lines)).toBe('100');
    expect(takenOf('s1', [line({ ...on, goAhead: 'withCustomer' }), line({ ...on, price: null })])).toBe('100');
  });
});
