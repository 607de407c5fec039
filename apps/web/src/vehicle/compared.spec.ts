import { describe, expect, it } from '@jest/globals';

import { differing, moving } from './compared.js';

describe('two records side by side', () => {
  it('tell only what differs, and that the other one counts where the kept one says nothing', () => {
    const facts = [
      { name: 'plate', kept: 'AB 1', other: 'AB 2' },
      { name: 'vin', kept: null, other: 'X' },
      { name: 'notes', kept: 'seen', other: null },
      { name: 'kind', kept: 'light', other: 'light' },
      { name: 'weighed', kept: null, other: null },
    ];
    expect(differing(facts, '?')).toEqual([
      { name: 'plate', kept: 'AB 1', other: 'AB 2', after: 'kept' },
      { name: 'vin', kept: '?', other: 'X', after: 'other' },
      { name: 'notes', kept: 'seen', other: '?', after: 'kept' },
    ]);
  });

  it('name what moves over, and nothing of which the other has none', () => {
    const counts = [
      { name: 'jobs', kept: 2, other: 1 },
      { name: 'photos', kept: 5, other: 0 },
    ];
    expect(moving(counts, String)).toEqual([{ name: 'jobs', kept: '2', other: '1', after: 'both' }]);
  });
});
