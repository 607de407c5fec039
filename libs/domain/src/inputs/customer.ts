import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface ContactFacts {
  contactId?: Opt<string>;
  name: string;
  phone?: Opt<string>;
  mail?: Opt<string>;
  mayBring?: Opt<boolean>;
  mayAgreeUpTo?: Opt<string>;
  mayAgreeAny?: Opt<boolean>;
  mayCollect?: Opt<boolean>;
}
export interface AddCustomer {
  customerId?: Opt<string>;
  name: string;
  fleet?: Opt<string>;
  contacts?: Opt<ContactFacts[]>;
}
export interface ChangeCustomer extends Turn {
  customerId: string;
  name?: Opt<string>;
  fleet?: Opt<string | null>;
}
export interface AddContact extends ContactFacts {
  customerId: string;
}
export interface ChangeContact extends Turn {
  contactId: string;
  name?: Opt<string>;
  phone?: Opt<string | null>;
  mail?: Opt<string | null>;
  mayBring?: Opt<boolean>;
  /** Null: may not give the go-ahead by amount. */
  mayAgreeUpTo?: Opt<string | null>;
  mayAgreeAny?: Opt<boolean>;
  mayCollect?: Opt<boolean>;
  /** False: no longer a contact of this customer. */
  active?: Opt<boolean>;
}
export interface StandingFacts {
  standingGoAheadId?: Opt<string>;
  kind: Word<typeof w.standingKinds>;
  upTo: string;
  orderNumber?: Opt<string>;
  byName: string;
  untilDay?: Opt<string>;
}
/** For one visit, for one vehicle, or where neither is named for all visits of the customer. */
export interface GiveStandingGoAhead extends StandingFacts {
  customerId: string;
  vehicleId?: Opt<string>;
  jobId?: Opt<string>;
}
export interface EndStandingGoAhead extends Turn {
  standingGoAheadId: string;
  words: string;
}
export interface RecordContact {
  contactEntryId?: Opt<string>;
  vehicleId: string;
  jobId?: Opt<string>;
  followUpId?: Opt<string>;
  /** The call that this ends; it stays where nobody was reached or a next try is named. */
  callId?: Opt<string>;
  contactId?: Opt<string>;
  way: Word<typeof w.contactWays>;
  withName?: Opt<string>;
  reached: boolean;
  answer?: Opt<string>;
  nextTryAt?: Opt<number>;
  moveOf: Word<typeof w.movesOf>;
  at?: Opt<number>;
}

export interface CustomerInputs {
  addCustomer: AddCustomer;
  changeCustomer: ChangeCustomer;
  addContact: AddContact;
  changeContact: ChangeContact;
  giveStandingGoAhead: GiveStandingGoAhead;
  endStandingGoAhead: EndStandingGoAhead;
  recordContact: RecordContact;
}
