import type * as w from '../tables/words.js';
import type { Limits, Opt, Turn, Word } from './shapes.js';

export interface AddTemporaryFix extends Limits {
  temporaryFixId?: Opt<string>;
  jobId: string;
  lineId?: Opt<string>;
  kind: Word<typeof w.fixKinds>;
  standsInFor: string;
  place: string;
  heldWith?: Opt<string>;
  system: w.System;
  endedByWhat: string;
  removedPieceAt?: Opt<string>;
  followUpId?: Opt<string>;
  at?: Opt<number>;
}
export interface RecordSecondCheck extends Turn {
  secondCheckId?: Opt<string>;
  temporaryFixId: string;
  words?: Opt<string>;
}
export interface EndTemporaryFix extends Turn {
  temporaryFixId: string;
  /** `failed` and `removed` do not end it: its follow-up becomes urgent and stays open. */
  how: Word<typeof w.fixEnds> | 'failed' | 'removed';
  toldHow?: Opt<Word<typeof w.toldWays>>;
  lineId?: Opt<string>;
  words?: Opt<string>;
}
export interface AddFollowUp extends Limits {
  followUpId?: Opt<string>;
  vehicleId: string;
  jobId?: Opt<string>;
  kind: Word<typeof w.followUpKinds>;
  title: string;
  words?: Opt<string>;
  urgency?: Opt<Word<typeof w.urgencies>>;
  temporaryFixId?: Opt<string>;
  lineId?: Opt<string>;
  partLineIds?: Opt<string[]>;
  remainingMinutes?: Opt<number>;
  needsGoAhead?: Opt<boolean>;
  needsFollowUpId?: Opt<string>;
  at?: Opt<number>;
}
export interface CloseFollowUp extends Turn {
  followUpId: string;
  how: 'done' | 'dropped';
  lineId?: Opt<string>;
  words?: Opt<string>;
}

export interface OutstandingInputs {
  addTemporaryFix: AddTemporaryFix;
  recordSecondCheck: RecordSecondCheck;
  endTemporaryFix: EndTemporaryFix;
  addFollowUp: AddFollowUp;
  closeFollowUp: CloseFollowUp;
}
