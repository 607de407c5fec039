import { describe, expect, it } from '@jest/globals';

import { fromWhen } from './valid-words.js';

describe('what holds from when', () => {
  it('tells what comes, what holds now and what held before, in that order', () => {
    const rows = ['2026-01-01', '2027-01-01', '2025-01-01'].map((validFrom) => ({ id: validFrom, validFrom }));
    expect(fromWhen(rows, '2026-06-01').map(({ row, standing }) => [row.id, standing])).toEqual([
      ['2027-01-01', 'coming'],
      ['2026-01-01', 'now'],
      ['2025-01-01', 'before'],
    ]);
  });

  it('takes the first for now before it begins: a shop had no others then', () => {
    expect(fromWhen([{ id: 'a', validFrom: '2027-01-01' }], '2026-06-01')[0]?.standing).toBe('now');
  });
});
