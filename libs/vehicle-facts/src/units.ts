/**
 * Units of the bench, with exact factors: 1 in = 25.4 mm, 1 mile = 1609.344 m, 1 lb = 0.45359237 kg, standard gravity
 * 9.80665 m/s². Source: NIST SP 811, appendix B; the products below are exact to the last digit of a double.
 *
 * A converted figure is for comparing and computing. The figure and unit that somebody entered, or a maker printed, are
 * kept beside it: printed pairs differ from the exact conversion by up to about 2 %, so one is never checked by the other.
 */
const poundForce = 0.45359237 * 9.80665;
const inch = 0.0254;

type Dimension = 'length' | 'mass' | 'force' | 'torque' | 'pressure' | 'volume';

/** The unit in the coherent SI unit of its dimension: m, kg, N, N m, Pa, m³. */
const factors = {
  mm: ['length', 0.001],
  m: ['length', 1],
  km: ['length', 1000],
  in: ['length', inch],
  /** thirty-seconds of an inch, as tread and lining are read on an inch gauge */
  in32: ['length', inch / 32],
  mi: ['length', 1609.344],
  kg: ['mass', 1],
  lb: ['mass', 0.45359237],
  N: ['force', 1],
  kN: ['force', 1000],
  lbf: ['force', poundForce],
  newtonMetre: ['torque', 1],
  poundFoot: ['torque', poundForce * 12 * inch],
  poundInch: ['torque', poundForce * inch],
  kilogramForceMetre: ['torque', 9.80665],
  kilogramForceCentimetre: ['torque', 0.0980665],
  kPa: ['pressure', 1000],
  MPa: ['pressure', 1e6],
  psi: ['pressure', poundForce / (inch * inch)],
  litre: ['volume', 0.001],
  /** US liquid gallon, 231 cubic inches; from memory, confirmed by computing only. */
  usGallon: ['volume', 231 * inch ** 3],
} as const satisfies Record<string, readonly [Dimension, number]>;

export type Unit = keyof typeof factors;
export type LengthUnit = 'mm' | 'm' | 'km' | 'in' | 'in32' | 'mi';
export type DistanceUnit = 'km' | 'mi';
export type MassUnit = 'kg' | 'lb';
export type TorqueUnit = 'newtonMetre' | 'poundFoot' | 'poundInch' | 'kilogramForceMetre' | 'kilogramForceCentimetre';

/** A number with the unit it was entered in. */
export interface Quantity<U extends Unit = Unit> {
  readonly value: number;
  readonly unit: U;
}

/** The value in another unit of the same dimension. RangeError: units of two dimensions, or a value that is no number. */
export function convert(value: number, from: Unit, to: Unit): number {
  const [fromDimension, fromFactor] = factors[from];
  const [toDimension, toFactor] = factors[to];
  if (fromDimension !== toDimension) throw new RangeError(`${from} and ${to} do not measure the same.`);
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number.`);
  return from === to ? value : (value * fromFactor) / toFactor;
}

/** Exact conversions of doubles meet within this share; two figures nearer than it are equal. */
export const equalWithin = 1e-9;

/** -1, 0 or 1 as `a` is less than, equal to (within `equalWithin`) or greater than `b`. */
export function compare(a: number, b: number): -1 | 0 | 1 {
  if (Math.abs(a - b) <= equalWithin * Math.max(Math.abs(a), Math.abs(b))) return 0;
  return a < b ? -1 : 1;
}

const torqueSpellings: Readonly<Record<string, TorqueUnit>> = {
  'N m': 'newtonMetre',
  'N·m': 'newtonMetre',
  'N.m': 'newtonMetre',
  Nm: 'newtonMetre',
  'lb ft': 'poundFoot',
  'lb-ft': 'poundFoot',
  'lbf ft': 'poundFoot',
  'lbf·ft': 'poundFoot',
  'ft lb': 'poundFoot',
  'ft-lb': 'poundFoot',
  'ft lbf': 'poundFoot',
  'lb in': 'poundInch',
  'lb-in': 'poundInch',
  'lbf in': 'poundInch',
  'lbf·in': 'poundInch',
  'in lb': 'poundInch',
  'in-lb': 'poundInch',
  'in lbf': 'poundInch',
  'kgf m': 'kilogramForceMetre',
  'kgf·m': 'kilogramForceMetre',
  'kgf cm': 'kilogramForceCentimetre',
  'kgf·cm': 'kilogramForceCentimetre',
};

const doubtfulSpellings: Readonly<Record<string, TorqueUnitDoubt>> = {
  NM: 'nauticalMiles',
  nm: 'nanometres',
  mN: 'millinewtons',
  'ft/lb': 'aQuotient',
  'ft/lbs': 'aQuotient',
  'lb/ft': 'aQuotient',
  'lbs/ft': 'aQuotient',
  'in/lb': 'aQuotient',
  lb: 'aForceOrMass',
  lbs: 'aForceOrMass',
  lbf: 'aForceOrMass',
  N: 'aForceOrMass',
  kgf: 'aForceOrMass',
  kg: 'aForceOrMass',
};

export type TorqueUnitDoubt =
  'nauticalMiles' | 'nanometres' | 'millinewtons' | 'aQuotient' | 'aForceOrMass' | 'unknown';

/** The torque unit as it was written. What could mean something else is refused with what it could mean. */
export function readTorqueUnit(
  text: string,
): { readonly unit: TorqueUnit } | { readonly unit: null; readonly doubt: TorqueUnitDoubt } {
  const written = text.trim().replace(/\s+/g, ' ');
  const singular = written.replace(/\blbs\b/g, 'lb');
  if (Object.hasOwn(doubtfulSpellings, written)) return { unit: null, doubt: doubtfulSpellings[written] ?? 'unknown' };
  const unit = Object.hasOwn(torqueSpellings, singular) ? torqueSpellings[singular] : undefined;
  return unit === undefined ? { unit: null, doubt: 'unknown' } : { unit };
}

/**
 * A number as it was typed: digits with at most one point. A comma is refused, because `1,355` is one number here and
 * another there; so are signs of units and empty text.
 */
export function readNumber(
  text: string,
): { readonly value: number } | { readonly value: null; readonly doubt: 'comma' | 'notANumber' } {
  const written = text.trim();
  if (/^[\d.]*,[\d,.]*$/.test(written)) return { value: null, doubt: 'comma' };
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(written)) return { value: null, doubt: 'notANumber' };
  return { value: Number(written) };
}
