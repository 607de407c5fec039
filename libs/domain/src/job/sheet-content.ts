/**
 * What a hand-back sheet says, as plain data that is frozen with it. Instants are ISO 8601 in UTC, days are of the shop's
 * zone, distances and readings in the unit beside them, torques in theirs.
 */
import type { Row } from '../tables/tables.js';

export interface SheetLimits {
  readonly beforeDay: string | null;
  readonly beforeOdometer: number | null;
  readonly withinDistance: number | null;
  readonly withinDays: number | null;
  readonly season: string | null;
  readonly distanceUnit: Row<'followUp'>['distanceUnit'];
}
export type SheetFinding = Pick<Row<'finding'>, 'place' | 'kind' | 'words' | 'measure' | 'unit'>;
export interface SheetWork {
  readonly title: string;
  readonly words: string | null;
}
/** What brings a concern about, and how sure whoever found it was. */
export type SheetCause = Pick<Row<'cause'>, 'words' | 'certainty'>;
/** One try to make a concern appear; the reading in the unit beside it. */
export interface SheetAttempt extends Pick<
  Row<'attempt'>,
  'conditions' | 'appeared' | 'odometer' | 'odometerUnit' | 'words'
> {
  readonly at: string;
  readonly by: string;
}
/** A wheel that was off: the torque it was tightened to as recorded, and where that value comes from. */
export interface SheetWheel extends Pick<
  Row<'wheelRecord'>,
  'position' | 'torque' | 'torqueUnit' | 'torqueSource' | 'sourceWords' | 'tool'
> {
  /** False: it left the shop off the vehicle. */
  readonly isOn: boolean;
  readonly by: string;
}
/** Work by another firm; it went on when the vehicle left where it is under way. */
export interface SheetSublet extends Pick<Row<'sublet'>, 'form' | 'firm' | 'component' | 'state'> {
  readonly title: string | null;
}
export interface SheetConcern extends Pick<
  Row<'concern'>,
  'words' | 'conditions' | 'outcome' | 'outcomeConditions' | 'outcomeWords'
> {
  /** Every try to make it appear, in order; those in which it did say under which conditions it shows. */
  readonly attempts: readonly SheetAttempt[];
  readonly knownCauses: readonly SheetCause[];
  /** What was found about it, and what was done about it. */
  readonly causes: readonly SheetFinding[];
  readonly corrections: readonly SheetWork[];
}
export interface SheetFix
  extends SheetLimits, Pick<Row<'temporaryFix'>, 'kind' | 'standsInFor' | 'place' | 'heldWith' | 'system' | 'state'> {
  readonly since: string;
  readonly endedByWhat: string;
  readonly removedPieceAt: string | null;
  readonly secondChecks: readonly { readonly by: string; readonly at: string; readonly samePerson: boolean }[];
  /** Tier 1 by road: who allowed it, with which words, and that the receiver signed for it. */
  readonly byRoad: { readonly allowedBy: string; readonly words: string; readonly receiverSigned: boolean } | null;
}
export interface SheetContent {
  readonly shop: string;
  readonly jobNumber: number;
  readonly vehicle: Pick<Row<'vehicle'>, 'plate' | 'vin' | 'description'>;
  readonly customer: string | null;
  readonly checkedInAt: string;
  readonly leftAt: string;
  readonly odometer: Pick<Row<'job'>, 'odometerIn' | 'odometerOut' | 'odometerUnit'>;
  readonly concerns: readonly SheetConcern[];
  /** Work and findings that belong to no concern. */
  readonly otherWork: readonly SheetWork[];
  readonly otherFindings: readonly SheetFinding[];
  readonly partsFitted: readonly Pick<Row<'partLine'>, 'number' | 'description' | 'fitted' | 'unit'>[];
  readonly temporary: readonly SheetFix[];
  /** Lines that were not done, or not to the end, and why. */
  readonly putOff: readonly {
    readonly title: string;
    readonly why: 'deferred' | 'declined' | 'carriedOver' | 'dropped' | 'later';
    readonly words: string | null;
  }[];
  readonly notLookedAt: readonly { readonly what: string; readonly why: string | null }[];
  readonly followUps: readonly (SheetLimits & Pick<Row<'followUp'>, 'kind' | 'title' | 'words' | 'urgency'>)[];
  /** Wheels that were off on this visit. Tightening them again stands among the follow-ups, with its distance and source. */
  readonly wheels: readonly SheetWheel[];
  readonly sublets: readonly SheetSublet[];
  /** Cautions that stand when it leaves: those that stay with the vehicle, and working ones that its door allows. */
  readonly cautions: readonly (Pick<Row<'caution'>, 'code' | 'words'> & { readonly standing: boolean })[];
  readonly leavesBy: Row<'sheet'>['leavesBy'];
  readonly receivedBy: string;
  readonly receivedHow: Row<'sheet'>['receivedHow'];
  readonly handedBackBy: string;
  /** Released unfinished, with the words of who let it go; null where it was handed back whole. */
  readonly release: { readonly words: string; readonly by: string } | null;
}
