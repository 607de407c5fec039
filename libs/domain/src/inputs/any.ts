import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface TakeBack {
  /** Number of one's own change, at most ten minutes old. */
  seq: number;
}
export interface SettleCard extends Turn {
  reportId: string;
  /** Take the report as what happened (what it clashes with is ended or voided), or leave what is settled. */
  take: boolean;
  words: string;
}
/** What was flagged has been looked at. */
export interface ClearFlag extends Turn {
  flagId: string;
  words: string;
}

/** A wrong entry counts nowhere any more and stays readable. */
export interface StrikeEntry {
  table: Word<typeof w.correctedTables>;
  id: string;
  version?: Opt<number>;
  words: string;
}
/** Two records of one vehicle become one: what belongs to `otherId` moves to `vehicleId`. */
export interface MergeVehicles extends Turn {
  vehicleId: string;
  otherId: string;
  otherVersion: number;
  words: string;
}
export interface MergeCustomers extends Turn {
  customerId: string;
  otherId: string;
  otherVersion: number;
  words: string;
}
/** Name, telephone, mail, plates and photos of people are overwritten for good; the account of the work stays. */
export interface ErasePersonalData extends Turn {
  customerId: string;
  words: string;
}

export interface AnyInputs {
  strikeEntry: StrikeEntry;
  mergeVehicles: MergeVehicles;
  mergeCustomers: MergeCustomers;
  erasePersonalData: ErasePersonalData;
  takeBack: TakeBack;
  settleCard: SettleCard;
  clearFlag: ClearFlag;
}
