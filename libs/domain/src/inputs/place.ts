import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface TakeIntoBay {
  placeId?: Opt<string>;
  jobId: string;
  bayId: string;
  spot?: Opt<number>;
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  /** Answer to "loaded or empty?" at a lift, and the load's kilograms where known. */
  loaded?: Opt<boolean>;
  loadKg?: Opt<number>;
  /** It stands there already: a fact, recorded and flagged, not refused. */
  alreadyThere?: Opt<boolean>;
  at?: Opt<number>;
}
export interface MoveToYard {
  placeId?: Opt<string>;
  jobId: string;
  yardSpot?: Opt<string>;
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  at?: Opt<number>;
}
export interface RecordRolls {
  vehicleId: string;
  rolls: boolean;
  mayBeDriven: boolean;
  at?: Opt<number>;
}
/** Two vehicles change their bays in one go. */
export interface SwapBays {
  jobIds: [string, string];
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  /** Answers to "loaded or empty?", by job. */
  loaded?: Opt<{ jobId: string; loaded: boolean; loadKg?: Opt<number> }[]>;
}
export interface TakeOnRoadTest {
  placeId?: Opt<string>;
  jobId: string;
  /** The sender where left out. */
  driverId?: Opt<string>;
  odometerOut?: Opt<number>;
  /** Its bay spot stays its own while it is out. */
  keepSpot: boolean;
  dueBackAt?: Opt<number>;
  /** It is out already: a fact, recorded and flagged, not refused. */
  alreadyOut?: Opt<boolean>;
  at?: Opt<number>;
}
export interface ReturnFromRoadTest {
  placeId?: Opt<string>;
  jobId: string;
  odometerIn?: Opt<number>;
  /** Into the spot that was kept; else it stands in the yard. */
  intoKeptSpot?: Opt<boolean>;
  yardSpot?: Opt<string>;
  at?: Opt<number>;
}
export interface SubletFacts {
  firm?: Opt<string>;
  supplierId?: Opt<string>;
  component?: Opt<string>;
  slotAt?: Opt<number>;
  price?: Opt<string>;
  dueBackAt?: Opt<number>;
  words?: Opt<string>;
}
export interface ArrangeSublet extends SubletFacts {
  subletId?: Opt<string>;
  jobId: string;
  lineId?: Opt<string>;
  form: Word<typeof w.subletForms>;
  firm: string;
}
export interface ChangeSublet extends Turn, SubletFacts {
  subletId: string;
}
export interface CancelSublet extends Turn {
  subletId: string;
  words: string;
}
/** The vehicle goes to the firm of an arranged sublet. */
export interface SendAway extends Turn {
  subletId: string;
  placeId?: Opt<string>;
  keepSpot: boolean;
  movedHow?: Opt<Word<typeof w.movedWays>>;
  movedByName?: Opt<string>;
  alreadyOut?: Opt<boolean>;
  at?: Opt<number>;
}
/** A component goes out; the vehicle stays. */
export interface SendComponentAway extends Turn {
  subletId: string;
  at?: Opt<number>;
}
/** Somebody of the firm comes in and works here. */
export interface LetOutsiderIn extends Turn {
  subletId: string;
  at?: Opt<number>;
}
/** The vehicle or the component is back, or the outsider has gone. */
export interface BringBack extends Turn {
  subletId: string;
  placeId?: Opt<string>;
  price?: Opt<string>;
  intoKeptSpot?: Opt<boolean>;
  yardSpot?: Opt<string>;
  words?: Opt<string>;
  at?: Opt<number>;
}

/** Rule 4: which points of this vehicle are used on this visit. */
export interface NameLiftingPoints {
  jobId: string;
  words: string;
}

export interface PlaceInputs {
  nameLiftingPoints: NameLiftingPoints;
  takeIntoBay: TakeIntoBay;
  moveToYard: MoveToYard;
  recordRolls: RecordRolls;
  swapBays: SwapBays;
  takeOnRoadTest: TakeOnRoadTest;
  returnFromRoadTest: ReturnFromRoadTest;
  arrangeSublet: ArrangeSublet;
  changeSublet: ChangeSublet;
  cancelSublet: CancelSublet;
  sendAway: SendAway;
  sendComponentAway: SendComponentAway;
  letOutsiderIn: LetOutsiderIn;
  bringBack: BringBack;
}
