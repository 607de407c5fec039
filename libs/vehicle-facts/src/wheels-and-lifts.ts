/**
 * What is in print about re-torquing wheels and about lifts. There is no single legal distance; the vehicle maker's own
 * figure goes first, and these stand in with their source where it is not known. About lifts only what can be computed is
 * here; the maker's points, the load per arm and local rules decide as well.
 */
import { type LocalDate, addDays, dayNumberOf, daysBetween, firstOfMonth } from '@holdfast/shop-calendar';
import { type DistanceUnit, type MassUnit, type Quantity, compare, convert } from './units.js';

export interface RetorqueAdvice {
  readonly source: string;
  /** as printed, both units where both are printed; each entry one check */
  readonly after: readonly {
    readonly least: number;
    readonly most: number;
    readonly unit: DistanceUnit;
    readonly printedKm: number | null;
  }[];
  /** or after standing, minutes */
  readonly orAfterMinutes: number | null;
  readonly speaksOf: 'passengerCar' | 'dualRearWheels' | 'singleRearWheels' | 'lightTruck' | 'heavyGoodsGB' | 'general';
}

const within = (miles: number, printedKm: number | null) => ({ least: 0, most: miles, unit: 'mi' as const, printedKm });
const after = (miles: number, printedKm: number | null) => ({
  least: miles,
  most: miles,
  unit: 'mi' as const,
  printedKm,
});

export const retorqueAdvice: readonly RetorqueAdvice[] = [
  {
    source: "Ford 2012 Focus owner's guide, p. 313; Lincoln MKZ manual",
    after: [within(100, 160)],
    orAfterMinutes: null,
    speaksOf: 'passengerCar',
  },
  {
    source: 'Ford F-650/F-750 2016, p. 249',
    after: [after(100, 160)],
    orAfterMinutes: null,
    speaksOf: 'singleRearWheels',
  },
  {
    source: 'Ford F-650/F-750 2016, p. 249',
    after: [after(100, 160), after(500, 800)],
    orAfterMinutes: null,
    speaksOf: 'dualRearWheels',
  },
  {
    source: 'Ram 5500 2015, p. 463; Fiat 500 Abarth 2015, p. 320; Jeep Patriot 2020, p. 228',
    after: [after(25, 40)],
    orAfterMinutes: null,
    speaksOf: 'lightTruck',
  },
  {
    source: 'a tyre company quoting BS AU 50 part 2 section 7a:1995',
    after: [{ least: 40, most: 80, unit: 'km', printedKm: null }],
    orAfterMinutes: 30,
    speaksOf: 'heavyGoodsGB',
  },
  {
    source: 'trade pages, United States',
    after: [{ least: 50, most: 100, unit: 'mi', printedKm: null }],
    orAfterMinutes: null,
    speaksOf: 'general',
  },
];

/** Days until a distance is driven at a rate in km a day. RangeError: a rate that is not above 0. */
export function daysUntil(distance: Quantity<DistanceUnit>, kmPerDay: number): number {
  if (!(kmPerDay > 0)) throw new RangeError(`${kmPerDay} km a day reach nothing.`);
  return convert(distance.value, distance.unit, 'km') / kmPerDay;
}

/** A reading taken when wheels were checked: it cannot lie below the one when they were fitted. */
export function retorqueReadingHolds(fitted: Quantity<DistanceUnit>, checked: Quantity<DistanceUnit>): boolean {
  return compare(convert(checked.value, checked.unit, 'km'), convert(fitted.value, fitted.unit, 'km')) >= 0;
}

/**
 * Whether a mass exceeds a rated capacity, compared in the unit on the plate. Source: ALI tips card, "never load beyond
 * the rated capacity". RangeError: a capacity or mass that is not above 0.
 */
export function exceedsRating(mass: Quantity<MassUnit>, rated: Quantity<MassUnit>): boolean {
  if (!(rated.value > 0 && mass.value > 0)) throw new RangeError('A mass and a capacity have to be greater than 0.');
  return compare(convert(mass.value, mass.unit, rated.unit), rated.value) > 0;
}

/** At least once a year. Source: ANSI/ALI ALOIM (quoted). */
export const liftInspectionMonths = 12;

export interface LiftInspection {
  /** the last day in date: the anniversary itself (a rule of this program; no source says) */
  readonly lastDay: LocalDate;
  readonly overdue: boolean;
  /** dated after today: a slip */
  readonly inFuture: boolean;
}

/** The same day of the month `months` later, or the last of that month. */
function monthsLater(date: LocalDate, months: number): LocalDate {
  const first = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1 + months;
  const month = (index: number): LocalDate =>
    `${String(Math.floor(index / 12)).padStart(4, '0')}-${String((index % 12) + 1).padStart(2, '0')}-01`;
  const length = daysBetween(month(first), firstOfMonth(addDays(month(first), 31)));
  return addDays(month(first), Math.min(Number(date.slice(8)), length) - 1);
}

export function liftInspection(inspected: LocalDate, today: LocalDate, months = liftInspectionMonths): LiftInspection {
  const lastDay = monthsLater(inspected, months);
  return {
    lastDay,
    overdue: dayNumberOf(today) > dayNumberOf(lastDay),
    inFuture: dayNumberOf(inspected) > dayNumberOf(today),
  };
}

/** Damaged or corroded lifting points hold the job until a named person decides. A shop rule; no source was found. */
export function liftingPointsHold(points: 'sound' | 'damaged' | 'corroded' | 'notLookedAt'): boolean {
  return points === 'damaged' || points === 'corroded';
}
