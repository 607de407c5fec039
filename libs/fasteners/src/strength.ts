/**
 * What a bolt's marking says about its strength: ISO 898-1 property classes and SAE J429 grades. A bolt without a mark
 * counts as the lowest: class 4.6, or grade 1. A stainless mark (A2-70) is no property class, and nothing here turns an
 * inch grade into a metric class: the rough equivalences in print are no licence to swap.
 */
import { convert } from '@holdfast/vehicle-facts';
import { type Thread, diameterMmOf, stressAreaOf } from './thread.js';

export const propertyClasses = ['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'] as const;
export type PropertyClass = (typeof propertyClasses)[number];
export const inchGrades = ['grade1', 'grade2', 'grade5', 'grade8'] as const;
export type InchGrade = (typeof inchGrades)[number];
export type StrengthMark = PropertyClass | InchGrade;

export type MarkDoubt = 'comma' | 'pointMissing' | 'stainless' | 'notAClass' | 'notAGrade';
export type StrengthDoubt = 'otherSystem' | 'notDefinedForSize';

export interface Strength {
  /** the mark that counts */
  readonly mark: StrengthMark;
  /** true: the bolt has no mark, or nobody read it, and the lowest class stands in */
  readonly assumedLowest: boolean;
  /** proof stress Sp, minimum yield and minimum tensile strength Rm, in MPa */
  readonly proofMPa: number;
  readonly yieldMPa: number;
  readonly tensileMPa: number;
  readonly source: string;
}

type Stresses = readonly [proof: number, yields: number, tensile: number];

/** Sp, yield, Rm in MPa. Source: ISO 898-1:2013. Class 8.8 differs above 16 mm; 9.8 is defined up to 16 mm only. */
const metricStresses: Readonly<Record<PropertyClass, Stresses>> = {
  '4.6': [225, 240, 400],
  '4.8': [310, 340, 420],
  '5.6': [280, 300, 500],
  '5.8': [380, 420, 520],
  '6.8': [440, 480, 600],
  '8.8': [580, 640, 800],
  '9.8': [650, 720, 900],
  '10.9': [830, 940, 1040],
  '12.9': [970, 1100, 1220],
};
const class88Above16: Stresses = [600, 660, 830];

/**
 * Proof, yield, tensile in ksi, and the greatest diameter in inches. Source: SAE J429 as tabulated by Shigley & Mischke,
 * 5th ed. (between 3/4 and 7/8 in the band of grade 2 is printed two ways; here the weaker begins above 3/4).
 * Grade 1, which also stands for grade 2 longer than 6 in, is from memory; its figures are those of grade 2 above 3/4 in.
 */
const inchStresses: Readonly<Record<InchGrade, readonly (readonly [upToIn: number, stresses: Stresses])[]>> = {
  grade1: [[1.5, [33, 36, 60]]],
  grade2: [
    [0.75, [55, 57, 74]],
    [1.5, [33, 36, 60]],
  ],
  grade5: [
    [1, [85, 92, 120]],
    [1.5, [74, 81, 105]],
  ],
  grade8: [[1.5, [120, 130, 150]]],
};
const smallestInchBolt = 0.25;
const longestGrade2In = 6;
const mpaPerKsi = convert(1000, 'psi', 'MPa');

const isClass = (text: string): text is PropertyClass => (propertyClasses as readonly string[]).includes(text);
const isGrade = (text: string): text is InchGrade => (inchGrades as readonly string[]).includes(text);

/** A class or grade as it was typed: `8.8`, `10.9`, `Grade 5`, `grade8`. `8,8` and `88` are refused with a suggestion. */
export function readMark(
  text: string,
):
  | { readonly mark: StrengthMark }
  | { readonly mark: null; readonly doubt: MarkDoubt; readonly suggestion: PropertyClass | null } {
  const written = text.trim();
  if (isClass(written)) return { mark: written };
  const grade = /^(?:grade|gr\.?)\s*(\d+)$/i.exec(written);
  if (grade !== null) {
    const name = `grade${grade[1] ?? ''}`;
    return isGrade(name) ? { mark: name } : { mark: null, doubt: 'notAGrade', suggestion: null };
  }
  if (/^[AC]\d-\d{2,3}$/i.test(written)) return { mark: null, doubt: 'stainless', suggestion: null };
  const withPoint = written.replace(',', '.');
  if (withPoint !== written) {
    return { mark: null, doubt: 'comma', suggestion: isClass(withPoint) ? withPoint : null };
  }
  const divided = /^\d{2,3}$/.test(written) ? `${written.slice(0, -1)}.${written.slice(-1)}` : '';
  if (isClass(divided)) return { mark: null, doubt: 'pointMissing', suggestion: divided };
  return { mark: null, doubt: 'notAClass', suggestion: null };
}

export interface MarkedBolt {
  readonly thread: Thread;
  /** null: unmarked, or not read */
  readonly mark: StrengthMark | null;
  /** a grade 2 bolt longer than 6 in counts as grade 1 (SAE J429) */
  readonly lengthMm?: number | null;
}

function markThatCounts(bolt: MarkedBolt): StrengthMark {
  if (bolt.mark === null) return bolt.thread.system === 'metric' ? '4.6' : 'grade1';
  const long = (bolt.lengthMm ?? 0) > convert(longestGrade2In, 'in', 'mm');
  return bolt.mark === 'grade2' && long ? 'grade1' : bolt.mark;
}

/** The stresses of a bolt by its mark. Refused where the mark is of the other thread system or not defined for the size. */
export function strengthOf(
  bolt: MarkedBolt,
): { readonly strength: Strength } | { readonly strength: null; readonly doubt: StrengthDoubt } {
  const mark = markThatCounts(bolt);
  const assumedLowest = bolt.mark === null;
  const { thread } = bolt;
  if (isClass(mark) !== (thread.system === 'metric')) return { strength: null, doubt: 'otherSystem' };
  if (isClass(mark)) {
    const above16 = diameterMmOf(thread) > 16;
    if (mark === '9.8' && above16) return { strength: null, doubt: 'notDefinedForSize' };
    const [proofMPa, yieldMPa, tensileMPa] = mark === '8.8' && above16 ? class88Above16 : metricStresses[mark];
    return { strength: { mark, assumedLowest, proofMPa, yieldMPa, tensileMPa, source: 'ISO 898-1' } };
  }
  const diameterIn = convert(diameterMmOf(thread), 'mm', 'in');
  const band = diameterIn < smallestInchBolt ? undefined : inchStresses[mark].find(([upTo]) => diameterIn <= upTo);
  if (band === undefined) return { strength: null, doubt: 'notDefinedForSize' };
  const [proof, yields, tensile] = band[1];
  return {
    strength: {
      mark,
      assumedLowest,
      proofMPa: proof * mpaPerKsi,
      yieldMPa: yields * mpaPerKsi,
      tensileMPa: tensile * mpaPerKsi,
      source: mark === 'grade1' ? 'SAE J429 (grade 1 from memory)' : 'SAE J429',
    },
  };
}

export interface BoltLoads {
  readonly strength: Strength;
  readonly stressAreaMm2: number;
  /** newtons */
  readonly proofN: number;
  readonly tensileN: number;
}

export interface LoadCircumstances {
  /** structural bolting: M12, M14 and M16 of class 8.8 have printed tensile loads of their own (ISO 898-1, footnote) */
  readonly structural?: boolean;
  /** hot-dip galvanised with thread tolerance 6az: M8 and M10 carry less, by ISO 10684 annex A, which is not in here */
  readonly hotDipGalvanised?: boolean;
}

const structuralTensileN: ReadonlyMap<number, number> = new Map([
  [12, 70_000],
  [14, 95_500],
  [16, 130_000],
]);

/** Proof and minimum tensile load in newtons: stress area × stress. */
export function loadsOf(
  bolt: MarkedBolt,
  circumstances: LoadCircumstances = {},
): { readonly loads: BoltLoads } | { readonly loads: null; readonly doubt: StrengthDoubt | 'reducedLoadsNotKnown' } {
  const found = strengthOf(bolt);
  if (found.strength === null) return { loads: null, doubt: found.doubt };
  const { strength } = found;
  const diameterMm = diameterMmOf(bolt.thread);
  const metric = bolt.thread.system === 'metric';
  if (circumstances.hotDipGalvanised === true && metric && (diameterMm === 8 || diameterMm === 10)) {
    return { loads: null, doubt: 'reducedLoadsNotKnown' };
  }
  const area = stressAreaOf(bolt.thread);
  const coarse = metric && area.basis === 'table';
  const structural =
    circumstances.structural === true && strength.mark === '8.8' && coarse
      ? structuralTensileN.get(diameterMm)
      : undefined;
  return {
    loads: {
      strength,
      stressAreaMm2: area.mm2,
      proofN: area.mm2 * strength.proofMPa,
      tensileN: structural ?? area.mm2 * strength.tensileMPa,
    },
  };
}
