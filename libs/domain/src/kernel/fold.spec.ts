import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { foldKey } from './fold.js';

describe('a folded key', () => {
  it.each([
    ['ab-12 cde', 'AB12CDE'],
    ['Müller & Söhne', 'MULLERSOHNE'],
    ['  Straße  ', 'STRASSE'],
    ['Ｆ１２', 'F12'],
    ['Ω-7', 'Ω7'],
    ['- -', '--'],
  ])('%j is found as %j', (text, key) => {
    expect(foldKey(text)).toBe(key);
  });
  it('does not change when it is folded again, and forgets case, blanks and hyphens', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(foldKey(foldKey(text))).toBe(foldKey(text));
      }),
    );
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z0-9]{1,10}$/), fc.nat(9), (text, at) => {
        const typed = `${text.slice(0, at)} - ${text.slice(at).toUpperCase()}`;
        expect(foldKey(typed)).toBe(foldKey(text));
      }),
    );
  });
});
