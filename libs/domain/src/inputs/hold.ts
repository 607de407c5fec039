import type * as w from '../tables/words.js';
import type { Opt, Turn } from './shapes.js';

export interface OpenHold {
  holdId?: Opt<string>;
  jobId: string;
  reason: w.HoldReason;
  /** Empty: the whole job. */
  lineIds?: Opt<string[]>;
  partLineIds?: Opt<string[]>;
  words?: Opt<string>;
  moveOfId?: Opt<string>;
  moveOf?: Opt<string>;
  endsAt?: Opt<number>;
  at?: Opt<number>;
}
export interface EndHold extends Turn {
  holdId: string;
  words?: Opt<string>;
  at?: Opt<number>;
}
/** Words, whose move it is, or the end of a setting hold, said anew. */
export interface ChangeHold extends Turn {
  holdId: string;
  words?: Opt<string | null>;
  moveOfId?: Opt<string | null>;
  moveOf?: Opt<string | null>;
  endsAt?: Opt<number>;
}
export interface AskQuestion {
  questionId?: Opt<string>;
  jobId: string;
  lineId?: Opt<string>;
  toId: string;
  words: string;
  at?: Opt<number>;
}
export interface AnswerQuestion extends Turn {
  questionId: string;
  answer: string;
}

export interface HoldInputs {
  openHold: OpenHold;
  changeHold: ChangeHold;
  endHold: EndHold;
  askQuestion: AskQuestion;
  answerQuestion: AnswerQuestion;
}
