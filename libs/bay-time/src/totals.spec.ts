import { describe, expect, it } from '@jest/globals';
import type { SpotAccount } from './partition.js';
import { sumTotals, totalsOfAccount, totalsPer } from './totals.js';

const plain = { reason: null, holdId: null, jobId: 'van' };
const account: SpotAccount = {
  window: { from: 0, to: 100 },
  segments: [
    { from: 0, to: 10, class: 'outOfUse', ...plain, jobId: null },
    { from: 10, to: 40, class: 'worked', ...plain },
    { from: 40, to: 55, class: 'held', ...plain, reason: 'parts' },
    { from: 55, to: 60, class: 'held', ...plain, reason: 'goAhead' },
    { from: 60, to: 100, class: 'empty', ...plain, jobId: null },
  ],
  holding: [],
  people: [
    { from: 10, to: 40, personId: 'Rhona', jobId: 'van', bench: false, overtime: false },
    { from: 20, to: 40, personId: 'Iain', jobId: 'van', bench: false, overtime: false },
  ],
};

describe('totals', () => {
  it('occupancy and utilisation are shares of available time, not of opening time', () => {
    expect(totalsOfAccount(account)).toMatchObject({
      openMs: 100,
      availableMs: 90,
      occupiedMs: 50,
      occupancy: 50 / 90,
      utilisation: 30 / 90,
      heldMs: { goAhead: 5, parts: 15 },
    });
  });

  it('hours of people are added up apart from the hours of the bay', () => {
    expect(totalsOfAccount(account)).toMatchObject({ technicianMs: 50, classMs: { worked: 30 } });
  });

  it('a day gets its part of what crosses its ends, and time outside all days is in none', () => {
    const days = [
      { from: 0, to: 30 },
      { from: 50, to: 70 },
    ];
    expect(totalsPer(account, days).map((one) => [one.classMs.worked, one.classMs.held, one.technicianMs])).toEqual([
      [20, 0, 30],
      [0, 10, 0],
    ]);
  });

  it('shares of several bays are those of their hours together, not the mean of their shares', () => {
    const idle = totalsPer({ ...account, people: [] }, [{ from: 60, to: 100 }])[0];
    const busy = totalsPer(account, [{ from: 10, to: 40 }])[0];
    if (idle === undefined || busy === undefined) throw new Error('two periods give two totals');
    expect(sumTotals([idle, busy])).toMatchObject({ occupancy: 30 / 70, utilisation: 30 / 70 });
  });

  it('a bay that was never available has no share, not a share of nought', () => {
    expect(totalsPer(account, [{ from: 0, to: 10 }])[0]).toMatchObject({
      availableMs: 0,
      occupancy: null,
      utilisation: null,
    });
    expect(sumTotals([])).toMatchObject({ openMs: 0, occupancy: null });
  });
});
