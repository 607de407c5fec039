import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface VehicleFacts {
  plate: string;
  vin?: Opt<string>;
  description: string;
  kind: Word<typeof w.vehicleKinds>;
  drive: Word<typeof w.drives>;
  curbKg?: Opt<number>;
  curbSource?: Opt<Word<typeof w.massSources>>;
  grossKg?: Opt<number>;
  grossSource?: Opt<Word<typeof w.massSources>>;
  weighedKg?: Opt<number>;
  rolls?: Opt<boolean>;
  mayBeDriven?: Opt<boolean>;
  notes?: Opt<string>;
}
export interface AddVehicle extends VehicleFacts {
  vehicleId?: Opt<string>;
  customerId?: Opt<string>;
}
export interface CheckIn {
  jobId?: Opt<string>;
  vehicleId: string;
  kind?: Opt<Word<typeof w.jobKinds>>;
  comebackOfLineId?: Opt<string>;
  /** A known customer, or a new one by name; neither for an internal job. */
  customerId?: Opt<string>;
  customer?: Opt<{ customerId?: Opt<string>; name: string; fleet?: Opt<string> }>;
  contactId?: Opt<string>;
  contact?: Opt<{
    contactId?: Opt<string>;
    name: string;
    phone?: Opt<string>;
    mail?: Opt<string>;
    mayBring?: Opt<boolean>;
    mayAgreeUpTo?: Opt<string>;
    mayAgreeAny?: Opt<boolean>;
    mayCollect?: Opt<boolean>;
  }>;
  concerns: { concernId?: Opt<string>; words: string; conditions?: Opt<string> }[];
  odometer?: Opt<{ value?: Opt<number>; unit: Word<typeof w.distanceUnits>; source: Word<typeof w.readingSources> }>;
  keyTag?: Opt<string>;
  yardSpot?: Opt<string>;
  promisedAt?: Opt<number>;
  waitsHere?: Opt<boolean>;
  boardNote?: Opt<string>;
  rolls?: Opt<boolean>;
  mayBeDriven?: Opt<boolean>;
}
export interface ChangePromisedTime extends Turn {
  jobId: string;
  promisedAt: number | null;
}
export interface RecordConcernOutcome extends Turn {
  concernId: string;
  outcome: Word<typeof w.concernOutcomes>;
  conditions?: Opt<string>;
  words?: Opt<string>;
}
export interface AddCaution {
  cautionId?: Opt<string>;
  vehicleId: string;
  jobId?: Opt<string>;
  standing: boolean;
  code: w.CautionCode;
  words?: Opt<string>;
  secondId?: Opt<string>;
  at?: Opt<number>;
}
export interface EndCaution extends Turn {
  cautionId: string;
  words?: Opt<string>;
  /** The done line that mended it (standing cautions). */
  lineId?: Opt<string>;
}
export interface AddFinding {
  findingId?: Opt<string>;
  jobId: string;
  concernId?: Opt<string>;
  place: string;
  kind: Word<typeof w.findingKinds>;
  words?: Opt<string>;
  measure?: Opt<string>;
  unit?: Opt<string>;
  at?: Opt<number>;
}
export interface AttachPhoto {
  photoId?: Opt<string>;
  jobId: string;
  findingId?: Opt<string>;
  temporaryFixId?: Opt<string>;
  /** Answer of the upload: SHA-256 of the stored image and its size. */
  content: string;
  width: number;
  height: number;
  caption?: Opt<string>;
  moment?: Opt<'walkRound' | 'before' | 'after' | 'other'>;
  showsPeople?: Opt<boolean>;
  at?: Opt<number>;
}
export interface HandBack extends Turn {
  jobId: string;
  leavesBy: Word<typeof w.leavesBy>;
  receivedBy: string;
  receivedHow: 'there' | 'telephone';
  odometer?: Opt<number>;
  /** Tier-1 fixes that leave by road: allowed by name with words by owner or manager, signed for by the receiver there. */
  byRoad?: Opt<{ temporaryFixId: string; words: string; receiverSigned: boolean }[]>;
}
