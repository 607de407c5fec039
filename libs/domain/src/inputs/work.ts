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
  causeId?: Opt<string>;
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
  /** With `how: 'standing'`: the standing go-ahead that it rests on. */
  standingGoAheadId?: Opt<string>;
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
  /** Rule 5: what is done now makes the vehicle safe where it stands, which never waits for the customer's word. */
  makesSafe?: Opt<boolean>;
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
  /** After a go-ahead was withdrawn: what is charged for what was done and put back. */
  charge?: Opt<string>;
}
/** A price that moves further than the shop's tolerance asks the customer again. */
export interface ChangeLine extends Turn {
  lineId: string;
  title?: Opt<string>;
  bookMinutes?: Opt<number | null>;
  price?: Opt<string | null>;
  payer?: Opt<Word<typeof w.payers>>;
  equipment?: Opt<Word<typeof w.equipmentKinds> | null>;
  skill?: Opt<Word<typeof w.skills> | null>;
  concernId?: Opt<string | null>;
  causeId?: Opt<string | null>;
  /** Null: no longer one of several ways. */
  choiceId?: Opt<null>;
  afterLineId?: Opt<string | null>;
}
/** Lines of a job that are ways to the same end: at most one of them is given. */
export interface MakeChoice {
  choiceId?: Opt<string>;
  jobId: string;
  lineIds: string[];
}
/** The customer takes the word back on a line that was given; on a started one clocks stop and it is put back. */
export interface WithdrawGoAhead extends Turn {
  lineId: string;
  byName: string;
  how: Word<typeof w.goAheadWays>;
  words?: Opt<string>;
  at?: Opt<number>;
}
export interface ReopenLine extends Turn {
  lineId: string;
  words: string;
}
export interface RecordAttempt {
  attemptId?: Opt<string>;
  concernId: string;
  conditions: string;
  odometer?: Opt<number>;
  odometerUnit?: Opt<Word<typeof w.distanceUnits>>;
  appeared: boolean;
  words?: Opt<string>;
  placeId?: Opt<string>;
  at?: Opt<number>;
}
export interface RecordCause {
  causeId?: Opt<string>;
  jobId: string;
  concernIds: string[];
  words: string;
  certainty: Word<typeof w.certainties>;
  at?: Opt<number>;
}
export interface ChangeCause extends Turn {
  causeId: string;
  /** The whole list. */
  concernIds?: Opt<string[]>;
  words?: Opt<string>;
  certainty?: Opt<Word<typeof w.certainties>>;
}
export interface TorqueFacts {
  torque: string;
  torqueUnit: Word<typeof w.torqueUnits>;
  torqueSource: Word<typeof w.torqueSources>;
  sourceWords?: Opt<string>;
  tool: string;
}
export interface RecordWheelOff {
  wheelRecordId?: Opt<string>;
  jobId: string;
  lineId?: Opt<string>;
  positions: string[];
  at?: Opt<number>;
}
/** On again; with the torque, or without it and then by `recordTorque`. */
export interface RecordWheelOn {
  jobId: string;
  positions: string[];
  torque?: Opt<TorqueFacts>;
  at?: Opt<number>;
}
export interface RecordTorque extends TorqueFacts {
  jobId: string;
  positions: string[];
  at?: Opt<number>;
}
/** It dropped in, without bay or visit: each wheel tightened again; ends its follow-up. */
export interface RecordRetorque extends Turn, TorqueFacts {
  followUpId: string;
  odometer?: Opt<number>;
  words?: Opt<string>;
}

export interface WorkInputs {
  addLine: AddLine;
  changeLine: ChangeLine;
  makeChoice: MakeChoice;
  recordGoAhead: RecordGoAhead;
  withdrawGoAhead: WithdrawGoAhead;
  startWork: StartWork;
  stopWork: StopWork;
  finishLine: FinishLine;
  carryOverLine: CarryOverLine;
  dropLine: DropLine;
  reopenLine: ReopenLine;
  recordAttempt: RecordAttempt;
  recordCause: RecordCause;
  changeCause: ChangeCause;
  recordWheelOff: RecordWheelOff;
  recordWheelOn: RecordWheelOn;
  recordTorque: RecordTorque;
  recordRetorque: RecordRetorque;
}
