import type { EquipmentItem, HoursOfWeek } from '../tables/shop.js';
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

export interface ShopInputs {
  setUpShop: SetUpShop;
  addPerson: AddPerson;
  changePerson: ChangePerson;
  addBay: AddBay;
  changeBay: ChangeBay;
  setOpeningHours: SetOpeningHours;
  setSeasons: SetSeasons;
  addSupplier: AddSupplier;
}
