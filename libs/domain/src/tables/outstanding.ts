import {
  bool,
  day,
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
} from '../kernel/column.js';
import {
  distanceUnits,
  fixEnds,
  fixKinds,
  fixStates,
  followUpKinds,
  followUpStates,
  systems,
  toldWays,
  urgencies,
} from './words.js';

/** Limits of a fix or a follow-up. The first one reached counts. Distances and readings in the unit beside them. */
const limits = {
  beforeDay: orNull(day()),
  beforeOdometer: offWall(orNull(int())),
  withinDistance: offWall(orNull(int())),
  withinDays: offWall(orNull(int())),
  seasonId: offWall(orNull(ref('season'))),
  distanceUnit: offWall(oneOf(distanceUnits)),
} as const;

/** What is still on or owed after today: temporary fixes, their second checks, follow-ups. */
export const outstandingTables = {
  temporaryFix: table('all', {
    ...recorded,
    vehicleId: ref('vehicle'),
    jobId: ref('job'),
    lineId: offBoard(orNull(ref('workLine'))),
    kind: oneOf(fixKinds),
    /** What the permanent part or state would be, where on the vehicle, and with what it is held or replaced. */
    standsInFor: offWall(text()),
    place: offWall(text()),
    heldWith: offWall(orNull(text())),
    system: oneOf(systems),
    since: instant(),
    ...limits,
    /** What ends it, in words: the permanent repair. */
    endedByWhat: offWall(text()),
    removedPieceAt: offWall(orNull(text())),
    followUpId: offBoard(orNull(ref('followUp'))),
    state: oneOf(fixStates),
    endedHow: orNull(oneOf(fixEnds)),
    toldHow: offBoard(orNull(oneOf(toldWays))),
    endLineId: offBoard(orNull(ref('workLine'))),
    endWords: offBoard(orNull(text())),
    endedAt: orNull(instant()),
    endedById: offBoard(orNull(ref('person'))),
    /** Tier 1 by road: who of owner and manager allowed it by name, and that the receiver signed this line. */
    roadAllowedById: offBoard(orNull(ref('person'))),
    roadAllowedWords: offBoard(orNull(text())),
    receiverSigned: offBoard(bool()),
  }),
  secondCheck: table('all', {
    ...recorded,
    temporaryFixId: ref('temporaryFix'),
    vehicleId: offBoard(ref('vehicle')),
    personId: offWall(ref('person')),
    /** The same person after the interval, in a shop with one technician: printed as such. */
    samePerson: bool(),
    words: offWall(orNull(text())),
  }),
  followUp: table('staff', {
    ...recorded,
    vehicleId: ref('vehicle'),
    fromJobId: offBoard(orNull(ref('job'))),
    kind: oneOf(followUpKinds),
    title: text(),
    words: orNull(text()),
    urgency: oneOf(urgencies),
    lineId: orNull(ref('workLine')),
    remainingMinutes: orNull(int()),
    needsGoAhead: bool(),
    needsFollowUpId: orNull(ref('followUp')),
    ...limits,
    state: oneOf(followUpStates),
    closedAt: orNull(instant()),
    closedById: offBoard(orNull(ref('person'))),
    closeWords: orNull(text()),
    closeLineId: offBoard(orNull(ref('workLine'))),
  }),
} as const;
