import type * as w from '../tables/words.js';
import type { Opt, Word } from './shapes.js';

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
