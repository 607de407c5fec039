import { describe, expect, it } from '@jest/globals';

import { decimalOf, isoOf, minutesOf, said, wholeOf } from './typed.js';

describe('what somebody typed', () => {
  it('is left out when nothing but blanks was typed', () => {
    expect([said('  '), decimalOf(' '), wholeOf(''), minutesOf(' '), isoOf(null)]).toEqual(Array(5).fill(undefined));
  });

  it('takes a comma for a point and refuses what is no decimal', () => {
    expect(decimalOf('12,5')).toBe('12.5');
    expect(decimalOf('12 5')).toBeNull();
    expect(decimalOf('-3')).toBeNull();
  });

  it('reads whole numbers with blanks between their thousands', () => {
    expect(wholeOf('182 400')).toBe(182_400);
    expect(wholeOf('12.5')).toBeNull();
  });

  it('reads an hour and a half in each way it is written at a desk', () => {
    expect(['1.5', '1,5', '1:30', '90 min', '1.5 h'].map(minutesOf)).toEqual([90, 90, 90, 90, 90]);
    expect(minutesOf('soon')).toBeNull();
  });

  it('writes an instant in UTC', () => {
    expect(isoOf(0)).toBe('1970-01-01T00:00:00.000Z');
  });
});
