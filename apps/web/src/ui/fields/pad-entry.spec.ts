import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';

import { pressPad, stepPad, type PadKey } from './pad-entry.js';

const press = (keys: string, places: number): string =>
  Array.from(keys, (key) => (key === '<' ? 'back' : key) as PadKey).reduce(
    (value, key) => pressPad(value, key, places),
    '',
  );

describe('the number pad', () => {
  it('keeps at most one point and the decimals asked for', () => {
    expect(press('12.3.45', 1)).toBe('12.3');
    expect(press('12.5', 0)).toBe('125');
    expect(press('.5', 1)).toBe('0.5');
  });

  it('has no leading zero and takes digits back one at a time', () => {
    expect(press('007', 0)).toBe('7');
    expect(press('12<<<4', 0)).toBe('4');
  });

  it('never holds anything but a number or the beginning of one', () => {
    const key = fc.constantFrom('0', '1', '5', '9', '.', '<');
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), fc.integer({ min: 0, max: 3 }), (keys, places) => {
        expect(press(keys.join(''), places)).toMatch(/^(\d{1,9}(\.\d{0,3})?)?$/);
      }),
    );
  });

  it('steps by one, keeps decimals and stays at or above nothing', () => {
    expect(stepPad('', 1)).toBe('1');
    expect(stepPad('0', -1)).toBe('0');
    expect(stepPad('2.5', -1)).toBe('1.5');
    expect(stepPad('0.5', -1)).toBe('0.5');
  });
});
