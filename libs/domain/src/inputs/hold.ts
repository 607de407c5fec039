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
