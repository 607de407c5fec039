import { describe, expect, it } from '@jest/globals';
import { looksLikeVin } from './vin.js';

describe('a VIN', () => {
  it('has 17 characters of the VIN alphabet, in either case', () => {
    // The sample number of 49 CFR 565.15(c), with its check digit 4.
    expect(looksLikeVin('1G4AH59H45G118341')).toBe(true);
    expect(looksLikeVin('1g4ah59h45g118341')).toBe(true);
  });
  it.each([
    '1M8GDM9AXKP04278',
    '1M8GDM9AXKP0427888',
    '1M8GDM9AXKP04278O',
    'IM8GDM9AXKP042788',
    '1M8GDM9AXKQ042788',
    '',
  ])('is doubtful as %j', (text) => {
    expect(looksLikeVin(text)).toBe(false);
  });
});
