import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { canonical, compare, lesser, minus, plus, sum, times } from './amounts.js';

/** A decimal with up to six places, and the same number as a whole count of millionths. */
const amount = fc
  .bigInt({ min: -(10n ** 15n), max: 10n ** 15n })
  .map((millionths) => ({ millionths, text: written(millionths) }));

function written(millionths: bigint): string {
  const digits = (millionths < 0n ? -millionths : millionths).toString().padStart(7, '0');
  return `${millionths < 0n ? '-' : ''}${digits.slice(0, -6)}.${digits.slice(-6)}`;
}

describe('amounts', () => {
  it('add and subtract exactly where binary floats do not', () => {
    expect(plus('0.1', '0.2')).toBe('0.3');
    expect(minus('1.1', '1')).toBe('0.1');
    expect(times('123456789.1234', '1.1')).toBe('135802468.03574');
  });

  it('agree with whole-number arithmetic for any two amounts', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        expect(plus(a.text, b.text)).toBe(canonical(written(a.millionths + b.millionths)));
        expect(minus(a.text, b.text)).toBe(canonical(written(a.millionths - b.millionths)));
        expect(compare(a.text, b.text)).toBe(a.millionths < b.millionths ? -1 : a.millionths > b.millionths ? 1 : 0);
        expect(lesser(a.text, b.text)).toBe(canonical(a.millionths <= b.millionths ? a.text : b.text));
      }),
    );
  });

  it('are written one way only: no exponent, no trailing noughts, no minus nought', () => {
    expect(canonical('007.500')).toBe('7.5');
    expect(canonical('-0.00')).toBe('0');
    expect(canonical('0.0000001')).toBe('0.0000001');
    expect(canonical('1000000000000000000000000')).toBe('1000000000000000000000000');
  });

  it('sum to nought when there are none', () => {
    expect(sum([])).toBe('0');
    expect(sum(['0.1', '0.2', '-0.3'])).toBe('0');
  });

  it('refuse what is no decimal number', () => {
    for (const wrong of ['', '1e3', 'NaN', 'Infinity', '0x10', '1,5']) {
      expect(() => canonical(wrong)).toThrow(RangeError);
    }
  });
});
