import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface WantPart {
  partLineId?: Opt<string>;
  /** Its purpose: a work line of a job, or a follow-up of a vehicle that may have left. */
  lineId?: Opt<string>;
  followUpId?: Opt<string>;
  number?: Opt<string>;
  description: string;
  quantity: string;
  unit?: Opt<string>;
  unitPrice?: Opt<string>;
  needed: Word<typeof w.neededTimes>;
  supplierId?: Opt<string>;
  at?: Opt<number>;
}
export interface DueDate {
  state: Word<typeof w.supplierStates>;
  dueOn?: Opt<string>;
  words?: Opt<string>;
}
export interface PlaceOrder {
  orderId?: Opt<string>;
  supplierId: string;
  reference: string;
  words?: Opt<string>;
  lines: { partLineId: string; version?: Opt<number>; unitPrice?: Opt<string>; due?: Opt<DueDate> }[];
}
export interface RecordDueIn extends DueDate {
  partLineIds: string[];
  at?: Opt<number>;
}
export interface ReceiveParts {
  deliveryId?: Opt<string>;
  supplierId?: Opt<string>;
  orderId?: Opt<string>;
  note?: Opt<string>;
  items: {
    partLineId: string;
    quantity: string;
    verdict: Word<typeof w.verdicts>;
    foundAtVehicle?: Opt<boolean>;
    bin?: Opt<string>;
    words?: Opt<string>;
  }[];
  at?: Opt<number>;
}
export interface FitPart extends Turn {
  partLineId: string;
  quantity?: Opt<string>;
}
export interface CancelPart extends Turn {
  partLineId: string;
  words: string;
}

export interface PartsInputs {
  wantPart: WantPart;
  placeOrder: PlaceOrder;
  recordDueIn: RecordDueIn;
  receiveParts: ReceiveParts;
  fitPart: FitPart;
  cancelPart: CancelPart;
}
