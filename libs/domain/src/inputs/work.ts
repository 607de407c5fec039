import type * as w from '../tables/words.js';
import type { Limits, Opt, Turn, Word } from './shapes.js';

export interface AddLine {
  lineId?: Opt<string>;
  jobId: string;
  title: string;
  bookMinutes?: Opt<number>;
  equipment?: Opt<Word<typeof w.equipmentKinds>>;
  skill?: Opt<Word<typeof w.skills>>;
  payer?: Opt<Word<typeof w.payers>>;
  concernId?: Opt<string>;
  findingId?: Opt<string>;
  price?: Opt<string>;
  choiceId?: Opt<string>;
  afterLineId?: Opt<string>;
  fromFollowUpId?: Opt<string>;
}
export interface RecordGoAhead extends Turn {
  lineId: string;
  answer: w.GoAheadAnswer;
  byName?: Opt<string>;
  how?: Opt<Word<typeof w.goAheadWays>>;
  upTo?: Opt<string>;
  words?: Opt<string>;
  at?: Opt<number>;
}
export interface StartWork {
  clockId?: Opt<string>;
  lineId: string;
  /** Whose clock; the sender's where left out. */
  personId?: Opt<string>;
  bench?: Opt<boolean>;
  /** A report of what happened (offline, or entered after the fact): recorded and flagged instead of refused. */
  alreadyStarted?: Opt<boolean>;
  at?: Opt<number>;
}
export interface StopWork extends Turn {
  clockId: string;
  handover?: Opt<string>;
  at?: Opt<number>;
}
export interface FinishLine extends Turn {
  lineId: string;
  words?: Opt<string>;
  at?: Opt<number>;
}
export interface CarryOverLine extends Turn {
  lineId: string;
  followUpId?: Opt<string>;
  done: string;
  remaining: string;
  remainingMinutes?: Opt<number>;
  urgency?: Opt<Word<typeof w.urgencies>>;
  limits?: Opt<Limits>;
}
export interface DropLine extends Turn {
  lineId: string;
  words: string;
}
