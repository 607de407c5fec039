import type { EquipmentItem, HoursOfDay, HoursOfWeek } from '../tables/shop.js';
import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

export interface SetUpShop {
  code: string;
  shop: {
    name: string;
    zone: string;
    currency: string;
    units: 'metric' | 'us';
    locale: 'en-GB' | 'en-US';
  };
  owner: { name: string; password: string };
}
export interface AddPerson {
  personId?: Opt<string>;
  name: string;
  roles: w.Role[];
  password?: Opt<string>;
  homeBayId?: Opt<string>;
  skills?: Opt<{ skill: string; until?: Opt<string> }[]>;
  hours?: Opt<PersonHours>;
}
export interface PersonHours {
  validFrom: string;
  week: HoursOfWeek;
  breaks: HoursOfWeek;
}
export interface ChangePerson extends Turn {
  personId: string;
  name?: Opt<string>;
  roles?: Opt<w.Role[]>;
  active?: Opt<boolean>;
  homeBayId?: Opt<string | null>;
  /** The whole list; a skill left out ends. */
  skills?: Opt<{ skill: string; until?: Opt<string> }[]>;
  hours?: Opt<PersonHours>;
  password?: Opt<string>;
}
export interface BayFacts {
  spots: number;
  equipment: EquipmentItem[];
  capacity?: Opt<string>;
  capacityUnit?: Opt<Word<typeof w.massUnits>>;
  maxLengthMm?: Opt<number>;
  maxHeightMm?: Opt<number>;
  maxWheelbaseMm?: Opt<number>;
  inspectedOn?: Opt<string>;
  inspectionOutcome?: Opt<'passed' | 'failed'>;
  inspectionIntervalMonths?: Opt<number>;
  outOfUse?: Opt<boolean>;
  outOfUseWords?: Opt<string>;
}
export interface AddBay extends BayFacts {
  bayId?: Opt<string>;
  name: string;
  position?: Opt<number>;
  validFrom?: Opt<string>;
}
export interface ChangeBay extends Turn {
  bayId: string;
  name?: Opt<string>;
  position?: Opt<number>;
  endedOn?: Opt<string | null>;
  /** Facts of the bay from a day on (today where left out); last year's figures keep the old ones. */
  validFrom?: Opt<string>;
  facts?: Opt<BayFacts>;
}
export interface SetOpeningHours {
  validFrom: string;
  week: HoursOfWeek;
  breaks: HoursOfWeek;
}
export interface SetSeasons {
  seasons: { seasonId?: Opt<string>; name: string; fromDay: string; toDay: string; validFrom: string }[];
}
export interface AddSupplier {
  supplierId?: Opt<string>;
  name: string;
  phone?: Opt<string>;
  mail?: Opt<string>;
  cutOff?: Opt<string>;
  runs?: Opt<HoursOfWeek>;
}

export interface ChangeSupplier extends Turn {
  supplierId: string;
  name?: Opt<string>;
  phone?: Opt<string | null>;
  mail?: Opt<string | null>;
  cutOff?: Opt<string | null>;
  runs?: Opt<HoursOfWeek | null>;
}
/** Name, units and language of the shop; another zone from a day on. */
export interface ChangeShop extends Turn {
  shopId: string;
  name?: Opt<string>;
  units?: Opt<'metric' | 'us'>;
  locale?: Opt<'en-GB' | 'en-US'>;
  zone?: Opt<{ validFrom: string; zone: string }>;
}
/** Settings that enter figures and rules, from a day on (today where left out). What is left out stays. */
export interface ChangeSettings {
  validFrom?: Opt<string>;
  graceMinutes?: Opt<number>;
  tolerancePercent?: Opt<string>;
  floorRecordsGoAheads?: Opt<boolean>;
  recheckMinutes?: Opt<number | null>;
  workGuaranteeMonths?: Opt<number | null>;
  partGuaranteeMonths?: Opt<number | null>;
  personFiguresToLeads?: Opt<boolean>;
}
/** Other hours on one day; sent again for a day it replaces what was said of that day. */
export interface SetException {
  exceptionId?: Opt<string>;
  day: string;
  personId?: Opt<string>;
  hours: HoursOfDay;
  breaks?: Opt<HoursOfDay>;
  words?: Opt<string>;
}
export interface EndException extends Turn {
  exceptionId: string;
}
export interface RecordLiftInspection {
  inspectionId?: Opt<string>;
  bayId: string;
  inspectedOn: string;
  outcome: Word<typeof w.inspectionOutcomes>;
  intervalMonths?: Opt<number>;
  inspector?: Opt<string>;
  words?: Opt<string>;
}
export interface AllowOverdueLift {
  decisionId?: Opt<string>;
  bayId: string;
  untilDay: string;
  words: string;
}
/** A bay, or one piece of its equipment, cannot be used; its vehicle may stand in it. */
export interface TakeOutOfUse {
  outageId?: Opt<string>;
  bayId: string;
  equipment?: Opt<Word<typeof w.equipmentKinds>>;
  words: string;
  at?: Opt<number>;
}
export interface PutBackInUse extends Turn {
  outageId: string;
  words?: Opt<string>;
}

export interface ShopInputs {
  setUpShop: SetUpShop;
  addPerson: AddPerson;
  changePerson: ChangePerson;
  addBay: AddBay;
  changeBay: ChangeBay;
  setOpeningHours: SetOpeningHours;
  setSeasons: SetSeasons;
  addSupplier: AddSupplier;
  changeSupplier: ChangeSupplier;
  changeShop: ChangeShop;
  changeSettings: ChangeSettings;
  setException: SetException;
  endException: EndException;
  recordLiftInspection: RecordLiftInspection;
  allowOverdueLift: AllowOverdueLift;
  takeOutOfUse: TakeOutOfUse;
  putBackInUse: PutBackInUse;
}
