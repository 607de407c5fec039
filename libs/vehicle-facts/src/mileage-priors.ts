/**
 * How far a vehicle is driven in a year where nothing is known about it. Per vehicle, never per driver: the much quoted
 * 13,476 miles a year of FHWA are per driver and are not in here. A projection by one of these is a guess and says so.
 */
import { convert } from './units.js';
import type { VehicleKind } from './vin.js';

export const mileagePriors = [
  'usAge1to5',
  'us2017',
  'usOver9',
  'us2009Light',
  'us2009Truck',
  'us2009Motorcycle',
  'gb2017',
] as const;
export type MileagePriorName = (typeof mileagePriors)[number];

export interface MileagePrior {
  readonly name: MileagePriorName;
  readonly kmPerYear: number;
  readonly source: string;
  /** the source says "over": the figure is a least one */
  readonly atLeast: boolean;
}

const miles = (value: number): number => convert(value, 'mi', 'km');
const nhts = 'NHTS 2017 household vehicles (DOE Fact of the Week 1046)';
const fhwa = 'FHWA Highway Statistics 2009, table VM-1M';

const published: Readonly<Record<MileagePriorName, Omit<MileagePrior, 'name'>>> = {
  usAge1to5: { kmPerYear: miles(12_000), source: nhts, atLeast: true },
  us2017: { kmPerYear: miles(10_200), source: nhts, atLeast: false },
  usOver9: { kmPerYear: miles(7800), source: nhts, atLeast: false },
  us2009Light: { kmPerYear: 18_054, source: fhwa, atLeast: false },
  us2009Truck: { kmPerYear: 23_143, source: fhwa, atLeast: false },
  us2009Motorcycle: { kmPerYear: 4221, source: fhwa, atLeast: false },
  gb2017: { kmPerYear: miles(7134), source: 'MOT data, Great Britain, 2017, per car', atLeast: false },
};

export function mileagePrior(name: MileagePriorName): MileagePrior {
  return { name, ...published[name] };
}

/** The figure that suits a vehicle best; null for a trailer, of which nothing is in print. `ageYears` null: not known. */
export function priorFor(kind: VehicleKind, ageYears: number | null): MileagePrior | null {
  if (kind === 'trailer') return null;
  if (kind === 'motorcycle') return mileagePrior('us2009Motorcycle');
  if (kind === 'heavy') return mileagePrior('us2009Truck');
  if (ageYears !== null && ageYears > 9) return mileagePrior('usOver9');
  if (ageYears !== null && ageYears >= 1 && ageYears <= 5) return mileagePrior('usAge1to5');
  return mileagePrior('us2017');
}

const lifetimeSource = 'NHTSA DOT HS 809 952';

/** Distance over a whole life in km, for orientation only. */
export const lifetimeKm = {
  passengerCar: { km: miles(152_137), source: lifetimeSource },
  lightTruck: { km: miles(179_954), source: lifetimeSource },
} as const;
