import { describe, expect, it } from '@jest/globals';

import { rowsOnPage, wallFont } from './wall-size.js';

describe('the letters of the wall', () => {
  // Capital height for 20 minutes of arc at 6 m is 34.9 mm (ISO 9241-3 as quoted); / 0.727 x pixels per millimetre.
  it('have the size that the distance asks for', () => {
    expect(Math.round(wallFont(1920, 55, 6))).toBe(76);
    expect(Math.round(wallFont(1920, 43, 6))).toBe(97);
    expect(Math.round(wallFont(1920, 75, 6))).toBe(56);
  });

  it('leave room for seven bays on 55 inches, and never for none', () => {
    expect(rowsOnPage(1064, wallFont(1920, 55, 6))).toBe(7);
    expect(rowsOnPage(20, 76)).toBe(1);
  });
});
