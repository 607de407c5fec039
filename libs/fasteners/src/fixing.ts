/** What a joint was held with, and what stands in for it now. Whatever nobody knows is null, and is said to be so. */
import type { Quantity, TorqueUnit } from '@holdfast/vehicle-facts';
import type { TappedMaterial } from './engagement.js';
import type { NutClass, NutStyle } from './nuts.js';
import type { MarkedBolt } from './strength.js';
import type { Thread } from './thread.js';
import type { JointPlace, Surface } from './torque.js';

export interface Nut {
  readonly nutClass: NutClass;
  readonly style: NutStyle;
}

/** The maker's fixing and the joint it belongs to. */
export interface OriginalFixing {
  /** null: the joint was never bolted (a clip, a rivet), or nobody knows the bolt */
  readonly bolt: MarkedBolt | null;
  /** newtons that a fixing other than a bolt was made for, by its maker */
  readonly ratedN: number | null;
  readonly place: JointPlace | null;
  readonly into: 'nut' | 'tappedMetal' | 'plastic' | 'captiveSheet' | null;
  readonly tappedMaterial: TappedMaterial | null;
  /** usable thread in the hole, millimetres */
  readonly tappedDepthMm: number | null;
  /** thickness of all that is clamped, washers too, millimetres */
  readonly gripMm: number | null;
  readonly surface: Surface | null;
  readonly makersFigure: (Quantity<TorqueUnit> & { readonly source: string }) | null;
  /** the maker says that it is used once only: it is not fitted again later */
  readonly singleUse: boolean | null;
  /** highest temperature at the place, °C */
  readonly temperatureC: number | null;
  /** the joined parts move against each other */
  readonly partsMove: boolean | null;
}

/** Length under the head, threaded length from the tip, millimetres. */
interface StandInBolt {
  readonly bolt: MarkedBolt;
  readonly lengthMm: number | null;
  readonly threadedMm: number | null;
}

export const heldWithoutThread = ['selfTapping', 'rivet', 'clip', 'tie', 'adhesiveOrTape'] as const;

export type TemporaryFixing =
  /** another bolt or screw in the same hole or nut; a new nut, if there is one, is given */
  | (StandInBolt & { readonly kind: 'sameThread'; readonly nut: Nut | null })
  /** the thread is gone: a bolt right through and a nut behind */
  | (StandInBolt & { readonly kind: 'throughBolt'; readonly nut: Nut | null })
  /** the hole has a new thread, for the original bolt */
  | { readonly kind: 'threadInsert'; readonly inside: Thread; readonly engagedMm: number | null }
  | {
      readonly kind: (typeof heldWithoutThread)[number];
      /** newtons by its maker's sheet, for all pieces together */
      readonly ratedN: number | null;
      /** by its maker's sheet, °C */
      readonly upToC: number | null;
    }
  /** `empty` of `holes` like fixings are missing */
  | { readonly kind: 'leftEmpty'; readonly empty: number; readonly holes: number };

export type CheckTopic =
  | 'thread'
  | 'strength'
  | 'nut'
  | 'engagement'
  | 'bottoming'
  | 'grip'
  | 'heat'
  | 'movement'
  | 'torque'
  | 'singleUse'
  | 'neighbours';

/** One thing compared. `fallsShort` and `notKnown` are said aloud; `holds` is about this one thing and no more. */
export interface FixingCheck {
  readonly about: CheckTopic;
  readonly outcome: 'holds' | 'fallsShort' | 'notKnown';
  readonly code: string;
  readonly facts: Readonly<Record<string, number | string>>;
  readonly source: string | null;
}

export const check = (
  about: CheckTopic,
  outcome: FixingCheck['outcome'],
  code: string,
  facts: FixingCheck['facts'] = {},
  source: string | null = null,
): FixingCheck => ({ about, outcome, code, facts, source });
