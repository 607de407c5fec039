/**
 * Torque, T = K·d·F. Guaranteed: for wheels, brakes, steering, restraints, seats, suspension, plastic and captive nuts in
 * sheet nothing is ever computed: the vehicle maker's figure or none; where it is not said what the joint holds, neither.
 * Elsewhere the maker's figure goes first too, and a computed one never loads a bolt above 75 % of its proof load, not
 * even at the lowest K in print for its surface.
 */
import { type Quantity, type TorqueUnit, convert } from '@holdfast/vehicle-facts';
import { type MarkedBolt, type Strength, type StrengthDoubt, loadsOf } from './strength.js';
import { diameterMmOf } from './thread.js';

/** 75 % of the proof load for a joint that is opened again. Source: Shigley, Mechanical Engineering Design (quoted). */
export const greatestShareOfProof = 0.75;

export const placesWithoutComputedTorque = [
  'wheels',
  'brakes',
  'steering',
  'restraints',
  'seats',
  'suspension',
] as const;
export type JointPlace = (typeof placesWithoutComputedTorque)[number] | 'elsewhere';
export const materialsWithoutComputedTorque = ['plastic', 'captiveSheet'] as const;

export const surfaces = ['plainDry', 'black', 'zincDry', 'cadmium', 'lubricated', 'antiSeize'] as const;
export type Surface = (typeof surfaces)[number];

export interface PublishedK {
  readonly k: number;
  readonly source: string;
}

interface SurfaceK {
  readonly published: readonly PublishedK[];
  /** lowest and highest K in print for the surface */
  readonly scatter: readonly [number, number];
  readonly scatterSource: string;
}

const shigley = 'Shigley, Mechanical Engineering Design, 9th ed., table 8-15';
const martin = 'Martin Sprocket & Gear, conveyor safety guide, bolt torque table';
const bickford = 'Bickford & Nassar (quoted)';
const fastenerRanges = 'published ranges of a fastener dealer (zipfastener.com)';

/** Estimates, and the books disagree on zinc most. Ranges are widened to hold every single figure in print. */
const nutFactors: Readonly<Record<Surface, SurfaceK>> = {
  plainDry: {
    published: [
      { k: 0.2, source: martin },
      { k: 0.2, source: bickford },
      { k: 0.2, source: 'Mott, Machine Elements in Mechanical Design, "cleaned and dried"' },
    ],
    scatter: [0.18, 0.27],
    scatterSource: fastenerRanges,
  },
  black: {
    published: [{ k: 0.3, source: shigley }],
    scatter: [0.18, 0.3],
    scatterSource: `${fastenerRanges}; ${shigley}`,
  },
  zincDry: {
    published: [
      { k: 0.2, source: shigley },
      { k: 0.22, source: martin },
      { k: 0.295, source: bickford },
      { k: 0.17, source: 'a newsletter' },
      { k: 0.15, source: 'IFI, 5th ed., "plated" (quoted)' },
    ],
    scatter: [0.15, 0.35],
    scatterSource: `${fastenerRanges}; IFI, 5th ed. (quoted)`,
  },
  cadmium: {
    published: [
      { k: 0.16, source: shigley },
      { k: 0.2, source: bickford },
    ],
    scatter: [0.15, 0.2],
    scatterSource: `${fastenerRanges}; ${bickford}`,
  },
  lubricated: {
    published: [
      { k: 0.18, source: shigley },
      { k: 0.15, source: 'Mott, Machine Elements in Mechanical Design, "any lubrication"' },
      { k: 0.1, source: `${martin}, "waxed or highly lubricated"` },
    ],
    scatter: [0.1, 0.26],
    scatterSource: fastenerRanges,
  },
  antiSeize: { published: [{ k: 0.12, source: shigley }], scatter: [0.09, 0.12], scatterSource: shigley },
};

/** The values in print for a surface, with their sources and the whole range. */
export function publishedK(surface: Surface): SurfaceK {
  return nutFactors[surface];
}

/** K outside this is a slip of the hand (2.0 for 0.20): no printed value lies outside 0.09 to 0.35. */
const kPlausible = [0.05, 0.5] as const;

function positive(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} has to be greater than 0, not ${value}.`);
}

/**
 * T = K·d·F in newton metres, `diameterMm` in millimetres, `preloadN` in newtons. RangeError: a K that cannot be one.
 * The bare formula, for checking; what a person is shown comes from `torqueAdvice`.
 */
export function torqueNewtonMetres(k: number, diameterMm: number, preloadN: number): number {
  if (!(k >= kPlausible[0] && k <= kPlausible[1]))
    throw new RangeError(`${k} is not a nut factor K (about 0.1 to 0.35).`);
  positive(diameterMm, 'A diameter');
  positive(preloadN, 'A preload');
  return (k * diameterMm * preloadN) / 1000;
}

export interface Joint {
  /** what the joint holds; null: not said */
  readonly place: JointPlace | null;
  /** what the thread goes into; null: not said */
  readonly into: 'nut' | 'tappedMetal' | (typeof materialsWithoutComputedTorque)[number] | null;
  readonly bolt: MarkedBolt;
  /** null: not said */
  readonly surface: Surface | null;
  /** the vehicle maker's figure, as printed */
  readonly makersFigure?: (Quantity<TorqueUnit> & { readonly source: string }) | null;
  /** wanted share of the proof load, at most 0.75 */
  readonly shareOfProof?: number;
}

export type NoTorqueReason =
  | 'placeNeedsMakersFigure'
  | 'materialNeedsMakersFigure'
  | 'placeNotKnown'
  | 'materialNotKnown'
  | 'surfaceNotKnown'
  | 'shareTooHigh'
  | StrengthDoubt;

export interface TorqueBySource extends PublishedK {
  /** at the wanted share of the proof load, if K were exactly this */
  readonly newtonMetres: number;
}

export interface TorqueEstimate {
  readonly kind: 'estimate';
  /** not to be gone beyond: at the lowest K in print the bolt has the wanted share of its proof load */
  readonly upToNewtonMetres: number;
  readonly shareOfProof: number;
  /** newtons */
  readonly preloadN: number;
  /** share of the proof load that the same torque gives at the highest K in print: how loose it may come out */
  readonly shareAtHighestK: number;
  readonly scatter: readonly [lowestK: number, highestK: number];
  readonly scatterSource: string;
  /** what the books give one by one; those above `upToNewtonMetres` can overload a slippery bolt */
  readonly bySource: readonly TorqueBySource[];
  readonly strength: Strength;
}

export type TorqueAdvice =
  | {
      readonly kind: 'makersFigure';
      readonly figure: Quantity<TorqueUnit>;
      readonly source: string;
      /** true: about twelve times off what the bolt bears, as pound-inches read as pound-feet are; ask again */
      readonly perhapsPoundInches: boolean;
    }
  | TorqueEstimate
  | { readonly kind: 'none'; readonly reasons: readonly NoTorqueReason[] };

function reasonsAgainst(joint: Joint): NoTorqueReason[] {
  const reasons: NoTorqueReason[] = [];
  if (joint.place === null) reasons.push('placeNotKnown');
  else if (joint.place !== 'elsewhere') reasons.push('placeNeedsMakersFigure');
  if (joint.into === null) reasons.push('materialNotKnown');
  else if (joint.into === 'plastic' || joint.into === 'captiveSheet') reasons.push('materialNeedsMakersFigure');
  if (joint.surface === null) reasons.push('surfaceNotKnown');
  const share = joint.shareOfProof ?? greatestShareOfProof;
  if (!(share > 0 && share <= greatestShareOfProof)) reasons.push('shareTooHigh');
  return reasons;
}

function estimate(
  joint: Joint,
): TorqueEstimate | { readonly kind: 'none'; readonly reasons: readonly NoTorqueReason[] } {
  const reasons = reasonsAgainst(joint);
  const found = loadsOf(joint.bolt);
  if (found.loads === null && found.doubt !== 'reducedLoadsNotKnown') reasons.push(found.doubt);
  if (found.loads === null || joint.surface === null || reasons.length > 0) return { kind: 'none', reasons };
  const shareOfProof = joint.shareOfProof ?? greatestShareOfProof;
  const preloadN = shareOfProof * found.loads.proofN;
  const diameterMm = diameterMmOf(joint.bolt.thread);
  const { published, scatter, scatterSource } = publishedK(joint.surface);
  const [lowest, highest] = scatter;
  return {
    kind: 'estimate',
    upToNewtonMetres: torqueNewtonMetres(lowest, diameterMm, preloadN),
    shareOfProof,
    preloadN,
    shareAtHighestK: (shareOfProof * lowest) / highest,
    scatter,
    scatterSource,
    bySource: published.map(({ k, source }) => ({
      k,
      source,
      newtonMetres: torqueNewtonMetres(k, diameterMm, preloadN),
    })),
    strength: found.loads.strength,
  };
}

/** The vehicle maker's figure if there is one; else an estimate where one may be computed; else none, with every reason. */
export function torqueAdvice(joint: Joint): TorqueAdvice {
  const figure = joint.makersFigure ?? null;
  const computed = estimate(joint);
  if (figure === null) return computed;
  positive(figure.value, 'A torque');
  const times =
    computed.kind === 'estimate'
      ? convert(figure.value, figure.unit, 'newtonMetre') / computed.upToNewtonMetres
      : Number.NaN;
  return {
    kind: 'makersFigure',
    figure: { value: figure.value, unit: figure.unit },
    source: figure.source,
    perhapsPoundInches: figure.unit === 'poundFoot' && times > 6,
  };
}

/**
 * What a torque wrench has to be set to so that `wantedTorque` reaches the bolt through an extension: M1 = M2·L1/L2, in
 * the unit of `wantedTorque`. `wrenchMm` is from the grip to the drive, `wholeMm` from the grip to the bolt, in line with
 * the wrench.
 */
export function wrenchSetting(wantedTorque: number, wrenchMm: number, wholeMm: number): number {
  return (wantedTorque * wrenchMm) / lengthsChecked(wrenchMm, wholeMm);
}

/** What reaches the bolt through the extension when the wrench clicks: M2 = M1·L2/L1. */
export function torqueAtBolt(setting: number, wrenchMm: number, wholeMm: number): number {
  return (setting * lengthsChecked(wrenchMm, wholeMm)) / wrenchMm;
}

function lengthsChecked(wrenchMm: number, wholeMm: number): number {
  positive(wrenchMm, 'The length of a wrench');
  positive(wholeMm, 'The length with the extension');
  return wholeMm;
}
