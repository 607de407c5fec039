import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Unit, compare, convert, readNumber, readTorqueUnit } from './units.js';

const units: readonly (readonly [Unit, Unit])[] = [
  ['mm', 'in'],
  ['km', 'mi'],
  ['kg', 'lb'],
  ['newtonMetre', 'poundFoot'],
  ['poundInch', 'kilogramForceMetre'],
  ['kPa', 'psi'],
  ['litre', 'usGallon'],
];

describe('units', () => {
  it('come back to the figure they left, within the stated tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), fc.constantFrom(...units), (value, [from, to]) => {
        expect(compare(convert(convert(value, from, to), to, from), value)).toBe(0);
      }),
    );
  });

  it('of two dimensions are never converted into each other', () => {
    expect(() => convert(1, 'lb', 'lbf')).toThrow(RangeError);
    expect(() => convert(Number.NaN, 'mm', 'in')).toThrow(RangeError);
  });

  it('tell figures apart that differ by more than one part in a thousand million', () => {
    expect(compare(1, 1 + 1e-10)).toBe(0);
    expect(compare(1, 1 + 1e-8)).toBe(-1);
    expect(compare(1.6, 1.5875)).toBe(1);
  });
});

describe('a torque unit as written', () => {
  it.each([
    ['Nm', 'newtonMetre'],
    ['N m', 'newtonMetre'],
    ['ft-lbs', 'poundFoot'],
    ['lb ft', 'poundFoot'],
    ['in-lb', 'poundInch'],
    ['kgf cm', 'kilogramForceCentimetre'],
    ['kgf m', 'kilogramForceMetre'],
  ])('%s is understood', (text, unit) => {
    expect(readTorqueUnit(text)).toEqual({ unit });
  });

  it.each([
    ['ft/lb', 'aQuotient'],
    ['lbs', 'aForceOrMass'],
    ['NM', 'nauticalMiles'],
    ['mN', 'millinewtons'],
    ['', 'unknown'],
    ['toString', 'unknown'],
  ])('%s is refused, because it could mean something else', (text, doubt) => {
    expect(readTorqueUnit(text)).toEqual({ unit: null, doubt });
  });
});

describe('a number as typed', () => {
  it('has a point and never a comma', () => {
    expect(readNumber('8.5')).toEqual({ value: 8.5 });
    expect(readNumber('1,355')).toEqual({ value: null, doubt: 'comma' });
    expect(readNumber('8,8')).toEqual({ value: null, doubt: 'comma' });
    expect(readNumber('8 mm')).toEqual({ value: null, doubt: 'notANumber' });
    expect(readNumber('')).toEqual({ value: null, doubt: 'notANumber' });
  });
});
