import { describe, expect, it } from '@jest/globals';

import { rangeOf, spanOf, step } from './days.js';

describe('the range of bay time', () => {
  it('takes weeks from Monday and whole months', () => {
    expect(rangeOf('week', '2026-11-25')).toEqual({ from: '2026-11-23', to: '2026-11-29' });
    expect(rangeOf('month', '2028-02-10')).toEqual({ from: '2028-02-01', to: '2028-02-29' });
    expect(rangeOf('month', '2026-12-31')).toEqual({ from: '2026-12-01', to: '2026-12-31' });
  });

  it('knows which span it is, and that another range is none', () => {
    expect(spanOf({ from: '2026-11-23', to: '2026-11-29' })).toBe('week');
    expect(spanOf({ from: '2026-11-24', to: '2026-11-30' })).toBeNull();
  });

  it('steps by months where it is one, else by its own days', () => {
    expect(step({ from: '2026-12-01', to: '2026-12-31' }, 1)).toEqual({ from: '2027-01-01', to: '2027-01-31' });
    expect(step({ from: '2026-03-01', to: '2026-03-31' }, -1)).toEqual({ from: '2026-02-01', to: '2026-02-28' });
    expect(step({ from: '2026-11-25', to: '2026-11-25' }, -1)).toEqual({ from: '2026-11-24', to: '2026-11-24' });
    expect(step({ from: '2026-11-24', to: '2026-11-26' }, 1)).toEqual({ from: '2026-11-27', to: '2026-11-29' });
  });
});
