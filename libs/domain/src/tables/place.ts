import {
  bool,
  decimal,
  instant,
  int,
  offBoard,
  offWall,
  oneOf,
  orNull,
  recorded,
  ref,
  table,
  text,
  json,
} from '../kernel/column.js';
import {
  distanceUnits,
  movedWays,
  placeKinds,
  reportKinds,
  reportStates,
  spotUses,
  subletForms,
  subletStates,
} from './words.js';

/** Where vehicles are, which spots that uses, and what people report of it. */
export const placeTables = {
  place: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: ref('vehicle'),
    kind: oneOf(placeKinds),
    bayId: orNull(ref('bay')),
    spot: orNull(int()),
    yardSpot: orNull(text()),
    movedHow: offBoard(oneOf(movedWays)),
    movedByName: offBoard(orNull(text())),
    /** Rule 4, asked at the bay: whether a load was on, its kilograms where said, and who answered. */
    loaded: offWall(orNull(bool())),
    loadKg: offWall(orNull(int())),
    loadAnsweredById: offBoard(orNull(ref('person'))),
    /** On a road test: who drives, and the readings before and after it. */
    driverId: offWall(orNull(ref('person'))),
    odometerOut: offBoard(orNull(int())),
    odometerIn: offBoard(orNull(int())),
    odometerUnit: offBoard(orNull(oneOf(distanceUnits))),
    /** Away: for which work of another firm. */
    subletId: offBoard(orNull(ref('sublet'))),
    dueBackAt: orNull(instant()),
    fromAt: instant(),
    toAt: orNull(instant()),
  }),
  spotUse: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: ref('vehicle'),
    bayId: ref('bay'),
    spot: int(),
    kind: oneOf(spotUses),
    fromAt: instant(),
    toAt: orNull(instant()),
  }),
  /** Rule 4: which points of a vehicle with a lifting-point caution are used on this visit, named by manager or owner. */
  liftingPoints: table('staff', { ...recorded, jobId: ref('job'), vehicleId: ref('vehicle'), words: text() }),
  /** Work by another firm: the vehicle goes out, only a component does, or somebody comes in. */
  sublet: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: ref('vehicle'),
    lineId: orNull(ref('workLine')),
    form: oneOf(subletForms),
    firm: offWall(text()),
    supplierId: offWall(orNull(ref('supplier'))),
    component: offWall(orNull(text())),
    slotAt: orNull(instant()),
    price: offWall(orNull(decimal())),
    dueBackAt: orNull(instant()),
    state: oneOf(subletStates),
    /** From when to when it was away, or the outsider worked here. */
    fromAt: orNull(instant()),
    toAt: orNull(instant()),
    words: offWall(orNull(text())),
    endWords: offBoard(orNull(text())),
  }),
  /**
   * What somebody says happened. Always kept. `settled` became an interval in the same command; `contested` clashes with
   * what is settled and is a card until somebody settles it one way or the other.
   */
  report: table('staff', {
    ...recorded,
    byId: offWall(orNull(ref('person'))),
    kind: oneOf(reportKinds),
    jobId: ref('job'),
    vehicleId: ref('vehicle'),
    personId: orNull(ref('person')),
    bayId: orNull(ref('bay')),
    /** The command's own input, to carry it out when the card is settled for it. */
    said: json<Readonly<Record<string, unknown>>>(),
    /** Ids of the settled rows it clashes with. */
    against: json<readonly string[]>(),
    state: oneOf(reportStates),
    settledAt: orNull(instant()),
    settledById: offBoard(orNull(ref('person'))),
    settledWords: orNull(text()),
  }),
  /** What should not have happened and did: rule, subjects, who; cleared by somebody with words. */
  flag: table('staff', {
    ...recorded,
    rule: text(),
    jobId: orNull(ref('job')),
    vehicleId: orNull(ref('vehicle')),
    bayId: orNull(ref('bay')),
    facts: json<Readonly<Record<string, string | number | boolean | null>>>(),
    clearedAt: orNull(instant()),
    clearedById: offBoard(orNull(ref('person'))),
    clearWords: offBoard(orNull(text())),
  }),
} as const;
