import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { faultsInVinForm, hasVinForm, normaliseVin } from './vin-form.js';
import { checkDigitOf, readVin, suggestVin } from './vin.js';

const alphabet = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789';
const anyVin = fc
  .array(fc.constantFrom(...alphabet.split('')), { minLength: 17, maxLength: 17 })
  .map((letters) => letters.join(''));
const withDigit = (vin: string): string => vin.slice(0, 8) + checkDigitOf(vin).expected + vin.slice(9);

function facts(vin: string, about: Parameters<typeof readVin>[1] = { kind: 'light' }) {
  const read = readVin(vin, about);
  if (read.facts === null) throw new Error(vin);
  return read.facts;
}

describe('the form of a VIN', () => {
  it('is 17 characters of its alphabet, in either case', () => {
    fc.assert(
      fc.property(anyVin, (vin) => {
        expect(hasVinForm(vin) && hasVinForm(vin.toLowerCase())).toBe(true);
        expect(hasVinForm(vin.slice(1)) || hasVinForm(`${vin}0`)).toBe(false);
      }),
    );
  });

  it('names each fault with its places', () => {
    expect(faultsInVinForm('1M8GDM9AXKQ04278O')).toEqual([{ code: 'lettersIOQ', positions: [11, 17] }]);
    expect(faultsInVinForm('1M8-GDM9AXKP04278')).toEqual([{ code: 'characters', positions: [4] }]);
    expect(faultsInVinForm('1M8GDM9A\u0425KP042788')).toEqual([{ code: 'characters', positions: [9] }]);
    expect(faultsInVinForm('1M8')).toEqual([{ code: 'length', characters: 3 }]);
    expect(faultsInVinForm('')).toEqual([{ code: 'empty' }]);
  });

  it('never takes a look-alike for a letter by raising it: the long s, the dotless i', () => {
    expect(hasVinForm('\u017fM8GDM9AXKP042788')).toBe(false);
    expect(normaliseVin(' 1m8gdm9axkp04278\u0131\n')).toBe('1M8GDM9AXKP04278\u0131');
  });

  it('is put right where I, O and Q were written, and only there', () => {
    expect(suggestVin('1M8GDM9AXKPO42788')).toEqual({ vin: '1M8GDM9AXKP042788', checkDigitHolds: true });
    expect(suggestVin('1M8GDM9AXKP042788')).toBeNull();
    expect(suggestVin('1M8GDM9AXKPO4278')).toBeNull();
  });
});

describe('the check digit', () => {
  it('finds every single character changed to one of another value', () => {
    fc.assert(
      fc.property(anyVin.map(withDigit), fc.nat(16), fc.constantFrom(...alphabet.split('')), (vin, at, other) => {
        const changed = vin.slice(0, at) + other + vin.slice(at + 1);
        const weighs = checkDigitOf(changed).sum !== checkDigitOf(vin).sum || at === 8;
        fc.pre(changed !== vin && weighs);
        expect(facts(changed).checkDigit.holds).toBe(false);
      }),
    );
  });

  it('that is wrong is an error for a maker in North America and a notice elsewhere', () => {
    expect(facts('1G4AH59H55G118341').checkDigit).toMatchObject({ expected: '4', found: '5', weighs: 'error' });
    expect(facts('WDBEA30D4HA391172').checkDigit).toMatchObject({ holds: false, weighs: 'notice' });
    expect(facts('1G4AH59H45G118341').checkDigit.weighs).toBeNull();
  });
});

describe('the model year', () => {
  it('of a light vehicle is settled by position 7, of others both cycles stay open', () => {
    fc.assert(
      fc.property(anyVin, (vin) => {
        const light = facts(vin, { kind: 'light' }).modelYear;
        for (const kind of ['heavy', 'trailer', 'motorcycle', null] as const) {
          const open = facts(vin, { kind }).modelYear;
          expect(open.candidates.length).toBe(light.candidates.length * 2);
          for (const year of light.candidates) expect(open.candidates).toContain(year);
        }
        for (const year of light.candidates) expect(year < 2010).toBe(/\d/.test(vin.charAt(6)));
      }),
    );
  });

  it('of a pick-up above 4536 kg gross stays open though it is called light', () => {
    expect(facts('1M8GDM9AXKP042788', { kind: 'light', grossRatingKg: 4536 }).modelYear.candidates).toEqual([1989]);
    expect(facts('1M8GDM9AXKP042788', { kind: 'light', grossRatingKg: 4537 }).modelYear.candidates).toEqual([
      1989, 2019,
    ]);
  });

  it('later than next year is named and not offered', () => {
    expect(facts('1G4AH59H45G118341', { kind: 'heavy', latestYear: 2027 }).modelYear).toEqual({
      candidates: [2005],
      inFuture: [2035],
      because: 'bothCyclesOpen',
      required: true,
    });
  });
});
