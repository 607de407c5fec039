/**
 * What a vehicle identification number says. Nothing here stops a check-in: an error is for a VIN of a maker in North
 * America whose check digit is wrong, a notice for one from elsewhere, where the digit is not required.
 *
 * What the check digit cannot find: a character for another of equal value, two places of equal weight swapped.
 */
import { type VinFormFault, faultsInVinForm, normaliseVin, vinLength } from './vin-form.js';

/** 49 CFR 565.15(c)(1), transliteration and weights by position, the check digit itself (position 9) with 0. */
const letterValues: Readonly<Record<string, number>> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
  ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
};
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** 1980 to 2009, and again 2010 to 2039. No I, O, Q, U, Z, 0. Sources: 49 CFR 565.15 table VII, 565.25 table XIII. */
const yearCodes = 'ABCDEFGHJKLMNPRSTVWXY123456789';
const firstYear = 1980;
const cycleYears = yearCodes.length;

/** Position 7 settles the cycle for light vehicles up to this gross rating only. Source: note to table VII. */
export const lightGrossRatingKg = 4536;

export interface CheckDigit {
  readonly products: readonly number[];
  readonly sum: number;
  readonly remainder: number;
  readonly expected: string;
}

/** The check digit by 49 CFR 565.15(c): sum of value × weight, modulo 11, 10 written X. RangeError: not 17 VIN characters. */
export function checkDigitOf(vin: string): CheckDigit {
  const written = normaliseVin(vin);
  const products = Array.from(written).map((character, at) => {
    const value = /^\d$/.test(character) ? Number(character) : letterValues[character];
    // Position 9 weighs nothing, and may stand as a question mark while it is being worked out.
    if (value === undefined && at !== 8) throw new RangeError(`"${vin}" has a character that is in no VIN.`);
    return (value ?? 0) * (weights[at] ?? 0);
  });
  if (products.length !== vinLength) throw new RangeError(`"${vin}" has not 17 characters.`);
  const sum = products.reduce((total, one) => total + one, 0);
  const remainder = sum % 11;
  return { products, sum, remainder, expected: remainder === 10 ? 'X' : String(remainder) };
}

/** Both years that a code in position 10 may mean; null if it is no year code (0, U, Z, I, O, Q). */
export function yearsOfCode(code: string): readonly [number, number] | null {
  const at = code.length === 1 ? yearCodes.indexOf(code.toUpperCase()) : -1;
  return at === -1 ? null : [firstYear + at, firstYear + at + cycleYears];
}

export type VehicleKind = 'light' | 'heavy' | 'trailer' | 'motorcycle';
export type VinRegion = 'northAmerica' | 'europe' | 'africa' | 'asia' | 'oceania' | 'southAmerica';

/** By the first character (ISO 3780). North America and Europe: published; the other letters: from memory. */
function regionOf(vin: string): VinRegion {
  const first = vin.charAt(0);
  if (/[1-5]/.test(first)) return 'northAmerica';
  if (/[S-Z]/.test(first)) return 'europe';
  if (/[A-H]/.test(first)) return 'africa';
  if (/[J-R]/.test(first)) return 'asia';
  return /[67]/.test(first) ? 'oceania' : 'southAmerica';
}

export interface VinAbout {
  /** null: not known; then position 7 settles nothing */
  readonly kind: VehicleKind | null;
  /** gross rating in kilograms; above 4536 a "light" one is not light in the sense of the rule */
  readonly grossRatingKg?: number | null;
  /** years after this are left out and named; next year, as a rule. null: none are left out */
  readonly latestYear?: number | null;
}

export interface ModelYear {
  /** in rising order; one, two, or none */
  readonly candidates: readonly number[];
  /** meant by the code and later than `latestYear` */
  readonly inFuture: readonly number[];
  readonly because: 'position7' | 'bothCyclesOpen' | 'notAYearCode';
  /** false: outside North America position 10 need not be a year at all */
  readonly required: boolean;
}

export interface VinFacts {
  /** as normalised */
  readonly vin: string;
  readonly region: VinRegion;
  readonly checkDigit: CheckDigit & {
    readonly found: string;
    readonly holds: boolean;
    /** how heavily a wrong one weighs; null if it holds */
    readonly weighs: 'error' | 'notice' | null;
  };
  readonly modelYear: ModelYear;
  /** positions 1 to 3, with 12 to 14 for a maker of few vehicles (third character 9, 49 CFR 565.15(a)) */
  readonly makerId: string;
  readonly lowVolumeMaker: boolean;
  /**
   * Digits at the end: five for light vehicles, four for others (49 CFR 565.15(d)). null where the rule does not reach:
   * makers outside North America, kind not known with four digits at the end.
   */
  readonly serialFormHolds: boolean | null;
}

function modelYearOf(vin: string, about: VinAbout, required: boolean): ModelYear {
  const years = yearsOfCode(vin.charAt(9));
  if (years === null) return { candidates: [], inFuture: [], because: 'notAYearCode', required };
  const light = about.kind === 'light' && (about.grossRatingKg ?? 0) <= lightGrossRatingKg;
  const meant = light ? [/\d/.test(vin.charAt(6)) ? years[0] : years[1]] : years;
  const latest = about.latestYear ?? Number.POSITIVE_INFINITY;
  return {
    candidates: meant.filter((year) => year <= latest),
    inFuture: meant.filter((year) => year > latest),
    because: light ? 'position7' : 'bothCyclesOpen',
    required,
  };
}

function serialFormOf(vin: string, about: VinAbout, required: boolean): boolean | null {
  if (!required) return null;
  const digits = /\d*$/.exec(vin)?.[0].length ?? 0;
  if (digits >= 5) return true;
  if (digits < 4) return false;
  return about.kind === null ? null : about.kind !== 'light';
}

/** Everything that a VIN says, or what is wrong with its form and what may be meant. The text is normalised first. */
export function readVin(
  text: string,
  about: VinAbout,
):
  | { readonly facts: VinFacts }
  | { readonly facts: null; readonly faults: readonly VinFormFault[]; readonly suggestion: VinSuggestion | null } {
  const vin = normaliseVin(text);
  const faults = faultsInVinForm(vin);
  if (faults.length > 0) return { facts: null, faults, suggestion: suggestVin(text) };
  const digit = checkDigitOf(vin);
  const found = vin.charAt(8);
  const holds = found === digit.expected;
  const region = regionOf(vin);
  const required = region === 'northAmerica';
  const lowVolumeMaker = vin.charAt(2) === '9';
  return {
    facts: {
      vin,
      region,
      checkDigit: { ...digit, found, holds, weighs: holds ? null : required ? 'error' : 'notice' },
      modelYear: modelYearOf(vin, about, required),
      makerId: lowVolumeMaker ? vin.slice(0, 3) + vin.slice(11, 14) : vin.slice(0, 3),
      lowVolumeMaker,
      serialFormHolds: serialFormOf(vin, about, required),
    },
  };
}

export interface VinSuggestion {
  readonly vin: string;
  readonly checkDigitHolds: boolean;
}

/** I read as 1, O and Q as 0. null where that makes no well-formed VIN, or where there was nothing to put right. */
export function suggestVin(text: string): VinSuggestion | null {
  const written = normaliseVin(text);
  const vin = written.replaceAll('I', '1').replace(/[OQ]/g, '0');
  if (vin === written || faultsInVinForm(vin).length > 0) return null;
  return { vin, checkDigitHolds: vin.charAt(8) === checkDigitOf(vin).expected };
}
