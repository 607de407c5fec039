import { describe, expect, it } from '@jest/globals';
import { looksLikeVin } from './vin.js';

describe('a VIN', () => {
  it('has 17 characters of the alphabet of ISO 3779, in either case', () => {
    // The sample number of 49 CFR 565.15 practice texts, whose check digit is X.
    expect(looksLikeVin('1M8GDM9AXKP042788')).toBe(true);
    expect(looksLikeVin('1m8gdm9axkp042788')).toBe(true);
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
