/**
 * What is published about the age of a tyre, each sentence by its speaker; the shop chooses whom it quotes. For a private
 * car nothing of it is a prohibition. What is seen on the tyre stands above its age and its depth.
 */
import type { LocalDate } from '@holdfast/shop-calendar';
import { wholeYears } from './tyre-code.js';

export const tyreAdvisers = [
  'nhtsa2008',
  'nhtsa2014',
  'rma',
  'brma2001',
  'bridgestone',
  'michelin',
  'lincoln',
  'mazda',
  'jaguar2018',
  'honda',
  'generalMotors',
] as const;
export type TyreAdviser = (typeof tyreAdvisers)[number];

export interface TyreAgeAdvice {
  readonly source: string;
  /** an expert looks at it every year from this age on, years */
  readonly inspectFromYears: number | null;
  /** replaced at this age whatever its depth, years */
  readonly replaceAtYears: number | null;
  /** not put into service unused above this age, years */
  readonly notNewOverYears: number | null;
  /** names no age of its own */
  readonly noFigure: 'speaksOfOthers' | 'askTyreMaker' | 'notByAge' | 'noRequirement' | null;
}

const advice = (
  source: string,
  replaceAtYears: number | null,
  inspectFromYears: number | null = null,
  notNewOverYears: number | null = null,
): TyreAgeAdvice => ({ source, inspectFromYears, replaceAtYears, notNewOverYears, noFigure: null });
const silent = (source: string, noFigure: NonNullable<TyreAgeAdvice['noFigure']>): TyreAgeAdvice => ({
  ...advice(source, null),
  noFigure,
});

const published: Readonly<Record<TyreAdviser, TyreAgeAdvice>> = {
  nhtsa2008: silent('NHTSA consumer advisory, 2 June 2008', 'speaksOfOthers'),
  nhtsa2014: silent('NHTSA Tire Aging summary, March 2014', 'noRequirement'),
  rma: silent('RMA statement on service life', 'notByAge'),
  brma2001: advice('BRMA recommended practice, June 2001', 10, null, 6),
  bridgestone: advice('Bridgestone', 10, 5),
  michelin: advice('Michelin', 10, 5),
  lincoln: advice("Lincoln owner's manual", 6),
  mazda: advice("Mazda owner's manual", 6),
  jaguar2018: advice("Jaguar owner's manual 2018", 6),
  honda: advice("Honda owner's manual", 10, 5),
  generalMotors: silent('Cadillac, Buick and GMC manuals', 'askTyreMaker'),
};

export function tyreAgeAdvice(adviser: TyreAdviser): TyreAgeAdvice {
  return published[adviser];
}

export interface TyreAge {
  /** whole years since the first day of the week of manufacture */
  readonly years: number;
  readonly says: 'replace' | 'inspectEveryYear' | 'nothingYet' | 'noFigure';
  readonly advice: TyreAgeAdvice;
}

/** What the adviser says about a tyre made from `madeFrom` on, on the day. */
export function tyreAge(madeFrom: LocalDate, onDay: LocalDate, adviser: TyreAdviser): TyreAge {
  const years = wholeYears(madeFrom, onDay);
  const said = tyreAgeAdvice(adviser);
  const reached = (age: number | null): boolean => age !== null && years >= age;
  const says =
    said.noFigure !== null
      ? 'noFigure'
      : reached(said.replaceAtYears)
        ? 'replace'
        : reached(said.inspectFromYears)
          ? 'inspectEveryYear'
          : 'nothingYet';
  return { years, says, advice: said };
}

/** Where a tyre runs, as far as the rule of Great Britain tells places apart. */
export type TyrePosition =
  | { readonly vehicle: 'lorry' | 'bus' | 'coach'; readonly axle: 'front' | 'other' }
  | { readonly vehicle: 'minibus'; readonly wheels: 'single' | 'twin' }
  | { readonly vehicle: 'privateCar' | 'other' };

const prohibitedOverYears = 10;

/**
 * The one published prohibition: Great Britain, from 1 February 2021, tyres over ten years old on front axles of lorries,
 * buses and coaches and on single wheels of minibuses. null: that rule does not speak of this tyre. Over ten years means
 * from the day after the tenth anniversary of the first day of the week.
 */
export function prohibitedByAgeInGreatBritain(
  position: TyrePosition,
  madeFrom: LocalDate,
  onDay: LocalDate,
): { readonly prohibited: boolean; readonly source: string } | null {
  const spokenOf =
    position.vehicle === 'minibus' ? position.wheels === 'single' : 'axle' in position && position.axle === 'front';
  if (!spokenOf || onDay < '2021-02-01') return null;
  const years = wholeYears(madeFrom, onDay);
  const overTen = years > prohibitedOverYears || (years === prohibitedOverYears && onDay.slice(5) > madeFrom.slice(5));
  return { prohibited: overTen, source: 'Great Britain, tyres over 10 years old, from 1 February 2021 (DVSA news)' };
}

/** What can be seen on a tyre. Any of these comes before its age and its depth. */
export const tyreConditions = ['cordVisible', 'bulge', 'cracks', 'cutToCord', 'plugInShoulder', 'runFlat'] as const;
export type TyreCondition = (typeof tyreConditions)[number];

/** What is to be said first about a tyre: what was seen, else what its depth says, else its age. */
export function leadingTyreFact(tyre: {
  readonly conditions: readonly TyreCondition[];
  readonly treadFails: boolean | null;
  readonly age: TyreAge | null;
}): 'condition' | 'tread' | 'age' | 'nothing' {
  if (tyre.conditions.length > 0) return 'condition';
  if (tyre.treadFails === true) return 'tread';
  return tyre.age?.says === 'replace' ? 'age' : 'nothing';
}
