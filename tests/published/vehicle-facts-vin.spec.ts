/**
 * VINs against values from outside the project: 49 CFR 565 and published test numbers, each with its source. The case
 * numbers are those of the project's reference list. The regions of the first character other than North America and
 * Europe are from memory and are not checked here.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import {
  type VehicleKind,
  checkDigitOf,
  faultsInVinForm,
  hasVinForm,
  normaliseVin,
  readVin,
  suggestVin,
  yearsOfCode,
} from '@holdfast/vehicle-facts';

function facts(vin: string, kind: VehicleKind | null = 'light') {
  const read = readVin(vin, { kind });
  if (read.facts === null) throw new Error(`${vin}: ${JSON.stringify(read.faults)}`);
  return read.facts;
}

describe('1–5: sums and digits', () => {
  it.each([
    ['1G4AH59H45G118341', 411, 4, '4', '49 CFR 565.15(c), sample'],
    ['1M8GDM9A?KP042788', 351, 10, 'X', 'published test VIN'],
    ['11111111111111111', 89, 1, '1', 'published test VIN: the weights'],
    ['1FACP45E?LF192944', 373, 10, 'X', 'DataCleaner extension_vehicles wiki'],
    ['5XMTJ362?B5005314', 279, 4, '4', 'public script comment (a trailer)'],
  ])('%s: sum %d, remainder %d, digit %s (%s)', (vin, sum, remainder, expected) => {
    expect(checkDigitOf(vin)).toMatchObject({ sum, remainder, expected });
  });

  it('1: the products of the sample in 49 CFR 565.15(c)', () => {
    const products = [8, 49, 24, 5, 32, 15, 18, 80, 0, 45, 56, 7, 6, 40, 12, 12, 2];
    expect(checkDigitOf('1G4AH59H45G118341').products).toEqual(products);
  });
});

describe('1, 3, 6–15: valid digits and years of light vehicles (49 CFR 565.15, note to table VII)', () => {
  it.each([
    ['1G4AH59H45G118341', [2005], '49 CFR 565.15(c) sample'],
    ['1G8ZG127XWZ157259', [1998], 'CheckDigits.Net tables'],
    ['1HGEM21292L047875', [2002], 'CheckDigits.Net tables'],
    ['WDBEA30D3HA391172', [1987], 'CRAN vindecodr'],
    ['1VWBP7A37DC046870', [2013], 'public gist'],
    ['1HGCM82633A004352', [2003], 'public Go test'],
    ['JM1BN1U70H1100922', [2017], 'public Go test'],
    ['1L1FM81W9XY696351', [1999], 'parts page with year table'],
    ['VR7EFYHT2PN547380', [2023], 'universal-vin-decoder README'],
    ['NMTK33BXX0R132738', [], 'universal-vin-decoder README; code 0 is no year'],
    ['11111111111111111', [2001], 'published test VIN'],
  ])('%s: %j (%s)', (vin, years) => {
    expect(facts(vin).checkDigit.holds).toBe(true);
    expect(facts(vin).modelYear.candidates).toEqual(years);
  });

  it('15: 1G4AH59HX5G118344, sum 417, digit X (public TypeScript test)', () => {
    expect(checkDigitOf('1G4AH59HX5G118344')).toMatchObject({ sum: 417, expected: 'X' });
    expect(facts('1G4AH59HX5G118344').checkDigit.holds).toBe(true);
  });
});

describe('16–20: wrong digits', () => {
  const wrong: [vin: string, sum: number | null, expected: string, source: string][] = [
    ['1G4AH59H55G118341', null, '4', 'public TypeScript test'],
    ['1G4AH59H45G118331', 408, '1', 'public design note'],
    ['1M8GDN9AXKP042788', 354, '2', 'public test'],
    ['1M8GDM9A0KP042788', null, 'X', 'public Rust test'],
    ['1M8GDM9A1KP042788', null, 'X', 'public TypeScript test'],
    ['1M8GDM9AXKP042781', null, '7', 'computed by 565.15'],
    ['1M8GDM9AYKP042788', null, 'X', 'Y can never stand there'],
    ['12345678901234567', 304, '7', 'computed by 565.15'],
    ['G14AH59H45G118341', null, 'X', 'first two swapped'],
  ];
  it.each(wrong)('%s: sum %j, expected %s (%s)', (vin, sum, expected) => {
    const { checkDigit } = facts(vin);
    expect(checkDigit).toMatchObject({ expected, holds: false });
    if (sum !== null) expect(checkDigit.sum).toBe(sum);
  });
});

describe('21–24: form (49 CFR 565.13(b), (g))', () => {
  it.each(['1M8GDM9AXKPO42788', 'IM8GDM9AXKP042788', '1M8GDM9AXKQ042788'])('21: %s has I, O or Q', (vin) => {
    expect(faultsInVinForm(vin)[0]?.code).toBe('lettersIOQ');
  });
  it('22: WDBEA3QD3HA39I172 is put right to WDBEA30D3HA391172, valid (CRAN vindecodr)', () => {
    expect(suggestVin('WDBEA3QD3HA39I172')).toEqual({ vin: 'WDBEA30D3HA391172', checkDigitHolds: true });
  });
  it('23: U and Z are legal outside position 10', () => {
    expect(hasVinForm('WAUZZZ8E05A410409')).toBe(true);
    expect(facts('WAUZZZ8E05A410409').checkDigit.holds).toBe(true);
    expect(hasVinForm('1G8ZU127XWZ157259')).toBe(true);
  });
  it.each(['1M8GDM9AXKP04278', '1M8GDM9AXKP0427888', ''])('24: %j is refused', (vin) => {
    expect(readVin(vin, { kind: null }).facts).toBeNull();
  });
});

describe('25–31', () => {
  it('25: K for B goes unnoticed and moves the year to 1981 (table III, equal values)', () => {
    expect(facts('1M8GDM9AXBP042788').checkDigit.holds).toBe(true);
    expect(facts('1M8GDM9AXBP042788').modelYear.candidates).toEqual([1981]);
  });
  it('26: positions 1 and 11 swapped, and neighbours of equal value, go unnoticed (table IV, equal weights)', () => {
    expect(facts('GG4AH59H451118341').checkDigit).toMatchObject({ holds: true, expected: '4' });
    expect(facts('1M8GMD9AXKP042788').checkDigit.holds).toBe(true);
  });
  it('25: of the 512 one-character changes of the bus VIN outside position 9, 39 go unnoticed', () => {
    const vin = '1M8GDM9AXKP042788';
    const alphabet = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789'.split('');
    const changed = alphabet.flatMap((other) =>
      vin
        .split('')
        .flatMap((own, at) => (at === 8 || own === other ? [] : [vin.slice(0, at) + other + vin.slice(at + 1)])),
    );
    expect(changed).toHaveLength(512);
    expect(changed.filter((one) => facts(one).checkDigit.holds)).toHaveLength(39);
  });
  it('27: 1M8GDM9AXKP042788 as a bus has {1989, 2019}: the note covers light vehicles only (73 FR 23367)', () => {
    expect(facts('1M8GDM9AXKP042788', 'heavy').modelYear.candidates).toEqual([1989, 2019]);
  });
  it.each([
    ['A', 1980],
    ['H', 1987],
    ['J', 1988],
    ['N', 1992],
    ['P', 1993],
    ['R', 1994],
    ['T', 1996],
    ['V', 1997],
    ['Y', 2000],
    ['1', 2001],
    ['9', 2009],
  ])('28: code %s is %d and 30 years later (565.15 table VII, 565.25 table XIII)', (code, year) => {
    expect(yearsOfCode(code)).toEqual([year, year + 30]);
  });
  it('29: 0, U, Z, I, O, Q are no year', () => {
    expect(['0', 'U', 'Z', 'I', 'O', 'Q'].map(yearsOfCode)).toEqual([null, null, null, null, null, null]);
  });
  it('30: a 9 in third place is a maker of few vehicles, named by 12 to 14 as well (49 CFR 565.15(a))', () => {
    expect(facts('1A9GDM9AXKP042788')).toMatchObject({ lowVolumeMaker: true, makerId: '1A9042' });
    expect(facts('1M8GDM9AXKP042788')).toMatchObject({ lowVolumeMaker: false, makerId: '1M8' });
  });
  it('31: 3GNBABEV8ADFKDRHJ has a right digit and no number at its end (565.15(d); vin-generator output)', () => {
    expect(facts('3GNBABEV8ADFKDRHJ')).toMatchObject({ checkDigit: { holds: true }, serialFormHolds: false });
    expect(facts('1G4AH59H45G118341').serialFormHolds).toBe(true);
  });
});

interface VinCase {
  readonly vin: string;
  readonly formatOk: boolean;
  readonly sum: number | null;
  readonly remainder: number | null;
  readonly expectedCheckDigit: string | null;
  readonly checkDigitOk: boolean;
  readonly modelYearIfLightVehicle: readonly number[] | null;
  readonly modelYearCandidates: readonly number[] | null;
  readonly products: readonly number[] | null;
}

it('the whole list of 43 VINs, recomputed by two other programs and by vin-validator 1.0.0', () => {
  const file = fileURLToPath(new URL('../../../shared/reference/data/vehicle/vin-cases.json', import.meta.url));
  if (!existsSync(file)) {
    console.log('vin-cases.json is absent; the cases above are all that is checked.');
    return;
  }
  const { cases } = JSON.parse(readFileSync(file, 'utf8')) as { readonly cases: readonly VinCase[] };
  expect(cases).toHaveLength(43);
  for (const one of cases) {
    expect([one.vin, hasVinForm(one.vin)]).toEqual([one.vin, one.formatOk]);
    if (!one.formatOk) continue;
    const { checkDigit, modelYear } = facts(one.vin);
    expect(checkDigit).toMatchObject({
      sum: one.sum,
      remainder: one.remainder,
      expected: one.expectedCheckDigit,
      holds: one.checkDigitOk,
      products: one.products,
    });
    expect(modelYear.candidates).toEqual(one.modelYearIfLightVehicle ?? []);
    expect(facts(one.vin, 'heavy').modelYear.candidates).toEqual(one.modelYearCandidates ?? []);
    expect(normaliseVin(one.vin)).toBe(one.vin.toUpperCase());
  }
});
