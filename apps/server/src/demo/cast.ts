/** Who and what the demo is about. All of it is invented: shop, town, people, firms, plates. */
import type { CommandInputs, HoursOfDay, Role } from '@holdfast/domain';
import { sameHours } from '@holdfast/shop-calendar';

/** The demo's shop has one id everywhere, so that it is known again. */
export const demoShopId = '01890000-0000-7000-8000-00000000d0e0';

export const demoShop = {
  name: 'Kettle Quay Motors',
  zone: 'Europe/Dublin',
  currency: 'EUR',
  units: 'metric',
  locale: 'en-GB',
} as const;

/** One for all people of the demo, told to whoever may look at it. */
export const demoPassword = 'rope and tar and salt water';

const fullDay = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const breaks: HoursOfDay = [
  ['10:00', '10:15'],
  ['12:30', '13:00'],
];
/** Hours of shop and floor, in the zone of the shop. */
export const opening = { week: sameHours(fullDay, [['07:30', '17:00']]), breaks: sameHours(fullDay, breaks) };

export type PersonKey = 'owner' | 'manager' | 'desk' | 'tomasz' | 'aoife' | 'samuel' | 'wen' | 'clerk' | 'wall';

interface CastPerson {
  readonly key: PersonKey;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly skills?: readonly { readonly skill: string; readonly untilMonths?: number }[];
  readonly homeBay?: BayKey;
}

export const owner = { key: 'owner', name: 'Odile Marchetti', roles: ['owner'] } as const satisfies CastPerson;

export const people: readonly CastPerson[] = [
  { key: 'manager', name: 'Henrik Stowe', roles: ['manager'] },
  { key: 'desk', name: 'Priya Halvorsen', roles: ['desk'] },
  {
    key: 'tomasz',
    name: 'Tomasz Lind',
    roles: ['technician'],
    skills: [{ skill: 'secondCheck' }, { skill: 'airbags', untilMonths: 14 }],
    homeBay: 'north',
  },
  {
    key: 'aoife',
    name: 'Aoife Brannock',
    roles: ['technician'],
    skills: [{ skill: 'secondCheck' }, { skill: 'highVoltage', untilMonths: 9 }],
    homeBay: 'south',
  },
  {
    key: 'samuel',
    name: 'Samuel Okoro',
    roles: ['technician'],
    skills: [{ skill: 'refrigerant', untilMonths: 20 }],
    homeBay: 'long',
  },
  { key: 'wen', name: 'Wen Carrick', roles: ['technician'], homeBay: 'gate' },
  { key: 'clerk', name: 'Greta Pole', roles: ['partsClerk'] },
  { key: 'wall', name: 'Wall by the doors', roles: ['wallScreen'] },
];
export const technicians = ['tomasz', 'aoife', 'samuel', 'wen'] as const satisfies readonly PersonKey[];
export type Technician = (typeof technicians)[number];

export type BayKey = 'north' | 'south' | 'long' | 'rack' | 'gate' | 'quay';

type Facts = Omit<CommandInputs['addBay'], 'bayId' | 'position' | 'validFrom'>;

/** In the order of the building. Capacities in kilograms. */
export const bays: readonly { readonly key: BayKey; readonly facts: Facts }[] = [
  {
    key: 'north',
    facts: {
      name: 'North lift',
      spots: 1,
      equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
      capacity: '3500',
      maxHeightMm: 3900,
      inspectionIntervalMonths: 6,
      inspectionOutcome: 'passed',
    },
  },
  {
    key: 'south',
    facts: {
      name: 'South lift',
      spots: 1,
      equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
      capacity: '4200',
      maxHeightMm: 4300,
      inspectionIntervalMonths: 6,
      inspectionOutcome: 'passed',
    },
  },
  {
    key: 'long',
    facts: {
      name: 'Long lift',
      spots: 1,
      equipment: [{ kind: 'fourPostLift', inUse: true, grips: 'wheels' }],
      capacity: '6500',
      maxWheelbaseMm: 4500,
      inspectionIntervalMonths: 6,
      inspectionOutcome: 'passed',
    },
  },
  {
    key: 'rack',
    facts: {
      name: 'Rack',
      spots: 1,
      equipment: [{ kind: 'alignmentRack', inUse: true, grips: 'wheels' }],
      capacity: '4000',
      maxWheelbaseMm: 4100,
      inspectionIntervalMonths: 6,
      inspectionOutcome: 'passed',
    },
  },
  {
    key: 'gate',
    facts: {
      name: 'Floor by the gate',
      spots: 2,
      equipment: [
        { kind: 'flat', inUse: true, grips: null },
        { kind: 'jackAndStands', inUse: true, grips: null },
      ],
    },
  },
  {
    key: 'quay',
    facts: {
      name: 'Floor by the quay',
      spots: 2,
      equipment: [{ kind: 'flat', inUse: true, grips: null }],
    },
  },
];

const runs = (times: HoursOfDay) => sameHours(fullDay, times);
export type SupplierKey = 'pier' | 'factors' | 'body';
export const suppliers: readonly { readonly key: SupplierKey; readonly facts: CommandInputs['addSupplier'] }[] = [
  {
    key: 'pier',
    facts: {
      name: 'Pier Nine Parts',
      phone: '010 555 0190',
      cutOff: '17:00',
      runs: runs([
        ['09:30', '10:30'],
        ['14:00', '15:00'],
      ]),
    },
  },
  {
    key: 'factors',
    facts: {
      name: 'Coast Road Factors',
      phone: '010 555 0144',
      mail: 'orders@coastroad.example',
      cutOff: '16:30',
      runs: runs([['11:00', '12:00']]),
    },
  },
  {
    key: 'body',
    facts: {
      name: 'Lantern Body Supply',
      phone: '010 555 0167',
      mail: 'desk@lantern.example',
      cutOff: '12:00',
      runs: runs([['13:30', '14:30']]),
    },
  },
];

export interface Contact {
  readonly name: string;
  readonly phone: string;
  readonly mayAgreeUpTo?: string;
  readonly mayAgreeAny?: boolean;
  readonly mayBring?: boolean;
  readonly mayCollect: boolean;
}

export interface Customer {
  readonly name: string;
  readonly fleet?: string;
  /** Who comes with the vehicle as a rule. */
  readonly contact: Contact;
  readonly others?: readonly Contact[];
  /** Agreed to beforehand for each of their visits. */
  readonly standing?: Pick<CommandInputs['giveStandingGoAhead'], 'kind' | 'upTo' | 'orderNumber' | 'byName'>;
}

export const parcelFleet: Customer = {
  name: 'Gullwharf Parcels',
  fleet: 'Delivery vans',
  contact: { name: 'Ines Falk', phone: '010 555 0121', mayAgreeUpTo: '600', mayCollect: true },
  others: [
    { name: 'Marek Dool', phone: '010 555 0122', mayAgreeAny: true, mayBring: false, mayCollect: true },
    { name: 'Night porter', phone: '010 555 0129', mayBring: true, mayCollect: true },
  ],
  standing: { kind: 'fleetLimit', upTo: '600', orderNumber: 'GW 7714', byName: 'Marek Dool' },
};
export const council: Customer = {
  name: 'Norholm Harbour Council',
  fleet: 'Roads and quays',
  contact: { name: 'Brendan Toll', phone: '010 555 0102', mayAgreeUpTo: '250', mayCollect: true },
  others: [{ name: 'Sunniva Arne', phone: '010 555 0100', mayAgreeAny: true, mayBring: false, mayCollect: false }],
};

const firstNames = [
  'Ada',
  'Bram',
  'Ciara',
  'Dov',
  'Elin',
  'Fergus',
  'Gwen',
  'Hana',
  'Ivo',
  'Jutta',
  'Kofi',
  'Lena',
  'Milo',
  'Nuala',
  'Oskar',
  'Petra',
  'Ravi',
  'Sinead',
  'Tove',
  'Ulla',
  'Viktor',
  'Wanda',
  'Yusuf',
  'Zoe',
];
const lastNames = [
  'Ashby',
  'Bergin',
  'Coyle',
  'Dunne',
  'Eklund',
  'Farrow',
  'Gannon',
  'Hollis',
  'Iverson',
  'Jansen',
  'Keane',
  'Lowry',
  'Moran',
  'Nyberg',
  'Orr',
  'Pascoe',
  'Quill',
  'Rooney',
  'Strand',
  'Tierney',
  'Ulrich',
  'Vesey',
  'Whelan',
  'Yates',
];

/** Somebody of the town, each number somebody else (576 of them); every fifth sends somebody else now and then. */
export function townsperson(number: number): Customer {
  const first = firstNames[number % firstNames.length] ?? '';
  const last = lastNames[(number * 7 + Math.floor(number / firstNames.length)) % lastNames.length] ?? '';
  const name = `${first} ${last}`;
  const phone = `010 555 ${String(1000 + number)}`;
  const contact = { name, phone, mayCollect: true } as const;
  if (number % 5 !== 0) return { name, contact };
  const fetches = `${firstNames[(number + 11) % firstNames.length] ?? ''} ${last}`;
  return { name, contact, others: [{ name: fetches, phone, mayAgreeUpTo: '150', mayCollect: true }] };
}
