import type { Turn } from './shapes.js';

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

export interface AnyInputs {
  takeBack: TakeBack;
  settleCard: SettleCard;
  clearFlag: ClearFlag;
}
