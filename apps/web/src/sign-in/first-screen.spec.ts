import { describe, expect, it } from '@jest/globals';

import { firstScreenOf, wayAfter } from './first-screen.js';

describe('the way after signing in', () => {
  it('is the path the person wanted', () => {
    expect(wayAfter('then=%2Fjobs%2F7')).toBe('/jobs/7');
  });

  it.each([
    '',
    'then=',
    'then=https%3A%2F%2Felsewhere.example',
    'then=%2F%2Felsewhere.example',
    'then=%2F%5Celsewhere',
  ])('never leads to another site: %s', (search) => {
    expect(wayAfter(search)).toBeNull();
  });

  it('is not the sign-in page again, and the first screen is chosen by role', () => {
    expect([wayAfter('then=%2Fsign-in'), wayAfter('then=%2F')]).toEqual([null, null]);
  });
});

describe('the first screen', () => {
  it('is that of the trade, and the floor for whoever leads', () => {
    expect(firstScreenOf(['technician'])).toBe('/bay');
    expect(firstScreenOf(['partsClerk'])).toBe('/parts');
    expect(firstScreenOf(['desk'])).toBe('/desk');
    expect(firstScreenOf(['technician', 'manager'])).toBe('/floor');
    expect(firstScreenOf(['owner'])).toBe('/floor');
    expect(firstScreenOf(['wallScreen'])).toBe('/wall');
  });
});
