import {
  bool,
  day,
  decimal,
  instant,
  int,
  json,
  offBoard,
  offWall,
  oneOf,
  orNull,
  recorded,
  ref,
  table,
  text,
} from '../kernel/column.js';
import type { roles } from './words.js';
import { equipmentKinds, inspectionOutcomes, massUnits } from './words.js';

/** `[from, to]` in the shop's local time, `HH:MM`; `to` not after `from` crosses midnight. */
export type HoursOfDay = readonly (readonly [from: string, to: string])[];
export type HoursOfWeek = Readonly<Record<'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun', HoursOfDay>>;

export interface EquipmentItem {
  readonly kind: (typeof equipmentKinds)[number];
  readonly inUse: boolean;
  /** What a lift grips: lifting points of the body, or the wheels. Null where it lifts nothing. */
  readonly grips: 'points' | 'wheels' | null;
}

export const shopTables = {
  /** The shop itself: one row, its id is the tenant. `metric` or `us` decides the units that screens offer first. */
  shop: table('all', {
    name: text(),
    zone: text(),
    currency: text(),
    units: oneOf(['metric', 'us']),
    locale: oneOf(['en-GB', 'en-US']),
  }),
  /** Settings that enter figures or rules, each set valid from a day. */
  shopSetting: table('staff', {
    validFrom: day(),
    /** First minutes of each gap without a clock that count as a break in bay time. */
    graceMinutes: int(),
    /** By how much a line's price may move without asking the customer again, in per cent. */
    tolerancePercent: decimal(),
    /** A technician and the parts clerk may record go-aheads and contacts. */
    floorRecordsGoAheads: bool(),
    /** In a shop with one technician: minutes after which the same person may re-check a tier-2 fix; null switches it off. */
    recheckMinutes: orNull(int()),
    /** Guarantee that the shop gives on its own work and on parts it fitted, months; null where it states none. */
    workGuaranteeMonths: orNull(int()),
    partGuaranteeMonths: orNull(int()),
    /** Figures of a person (efficiency, productivity) are shown to owner and manager too; else to that person alone. */
    personFiguresToLeads: bool(),
  }),
  openingHours: table('all', {
    validFrom: day(),
    week: json<HoursOfWeek>(),
    breaks: json<HoursOfWeek>(),
  }),
  /** A stretch of each year by local month and day, `MM-DD`, both ends included; may cross New Year. */
  season: table('all', { name: text(), fromDay: text(), toDay: text(), validFrom: day(), endedOn: orNull(day()) }),
  person: table('all', {
    name: offWall(text()),
    roles: json<readonly (typeof roles)[number][]>(),
    homeBayId: orNull(ref('bay')),
    active: bool(),
  }),
  personSkill: table('all', { personId: ref('person'), skill: text(), until: orNull(day()) }),
  personHours: table('staff', {
    personId: ref('person'),
    validFrom: day(),
    week: json<HoursOfWeek>(),
    breaks: json<HoursOfWeek>(),
  }),
  bay: table('all', { name: text(), position: int(), endedOn: orNull(day()) }),
  /** What a bay is, from a day on. Lengths in millimetres; `capacityKg` is the plate's value turned into kilograms. */
  baySpec: table('all', {
    bayId: ref('bay'),
    validFrom: day(),
    spots: int(),
    equipment: json<readonly EquipmentItem[]>(),
    capacity: orNull(decimal()),
    capacityUnit: oneOf(massUnits),
    maxLengthMm: orNull(int()),
    maxHeightMm: orNull(int()),
    maxWheelbaseMm: orNull(int()),
    inspectedOn: offWall(orNull(day())),
    inspectionOutcome: offWall(orNull(oneOf(['passed', 'failed']))),
    inspectionIntervalMonths: offWall(orNull(int())),
    outOfUse: bool(),
    outOfUseWords: offWall(orNull(text())),
  }),
  /** The zone of the shop from a day on (0:00 there). Before the first row, `shop.zone` as it was set up. */
  shopZone: table('all', { ...recorded, validFrom: day(), zone: text() }),
  /** Other hours on one day, for the shop or for one person; no hours: closed, or not here. */
  hoursException: table('all', {
    ...recorded,
    day: day(),
    personId: orNull(ref('person')),
    hours: json<HoursOfDay>(),
    breaks: json<HoursOfDay>(),
    words: offWall(orNull(text())),
  }),
  /** A bay, or one piece of its equipment, that cannot be used: from when to when. */
  outage: table('all', {
    ...recorded,
    bayId: ref('bay'),
    equipment: orNull(oneOf(equipmentKinds)),
    fromAt: instant(),
    toAt: orNull(instant()),
    words: offWall(text()),
    endWords: offBoard(orNull(text())),
  }),
  /** An inspection of a bay's lift; the last one counts, with the interval to the next. */
  liftInspection: table('staff', {
    ...recorded,
    bayId: ref('bay'),
    inspectedOn: day(),
    outcome: oneOf(inspectionOutcomes),
    intervalMonths: orNull(int()),
    inspector: orNull(text()),
    words: orNull(text()),
  }),
  /**
   * Rule 4: the one decision that a lift whose inspection is overdue may be used until a day (included), at most 14 days
   * on. `inspectedOn`: the day of the inspection that it is about.
   */
  liftDecision: table('staff', {
    ...recorded,
    bayId: ref('bay'),
    inspectedOn: day(),
    untilDay: day(),
    words: text(),
  }),
  supplier: table('staff', {
    name: text(),
    phone: orNull(text()),
    mail: orNull(text()),
    /** Order cut-off, local `HH:MM`, and delivery runs by weekday. */
    cutOff: orNull(text()),
    runs: orNull(json<HoursOfWeek>()),
  }),
  /** Next job number of the shop. Not on the board; one row. */
  counter: table('none', { name: text(), value: int() }),
} as const;
