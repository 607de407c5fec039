import { describe, expect, it } from '@jest/globals';

import { bookPath, checkInPath, deskViewOf } from './desk-paths.js';

const viewOf = (path: string) => deskViewOf(path.split('?')[1] ?? '');

describe('the addresses of the desk', () => {
  it('lead to check-in, with and without the visit that was booked', () => {
    expect(viewOf(checkInPath())).toEqual({ kind: 'checkIn', jobId: null });
    expect(viewOf(checkInPath('j1'))).toEqual({ kind: 'checkIn', jobId: 'j1' });
  });

  it('lead to booking, with and without a day, and take no day that is none', () => {
    expect(viewOf(bookPath())).toEqual({ kind: 'book', day: null });
    expect(viewOf(bookPath('2026-11-30'))).toEqual({ kind: 'book', day: '2026-11-30' });
    expect(deskViewOf('book=tomorrow')).toEqual({ kind: 'book', day: null });
    expect(deskViewOf('')).toEqual({ kind: 'desk' });
  });
});
