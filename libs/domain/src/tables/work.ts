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
} from '../kernel/column.js';
import { goAheadAnswers, goAheadWays, lineProgress, payers, torqueSources, torqueUnits } from './words.js';

/** Work lines, the customer's word on them, and the clocks of people. */
export const workTables = {
  workLine: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: offBoard(ref('vehicle')),
    /** For display only; an explicit `afterLineId` is what gates work (rule 10). */
    position: int(),
    title: offWall(text()),
    bookMinutes: orNull(int()),
    equipment: offWall(orNull(text())),
    skill: orNull(text()),
    payer: offWall(oneOf(payers)),
    concernId: offWall(orNull(ref('concern'))),
    findingId: offWall(orNull(ref('finding'))),
    causeId: offWall(orNull(ref('cause'))),
    /** Price of labour and parts as told to the customer, in the shop's currency. */
    price: offWall(orNull(decimal())),
    /** Lines that are alternatives of one choice share this id; at most one of them is given. */
    choiceId: offWall(orNull(text())),
    afterLineId: orNull(ref('workLine')),
    progress: oneOf(lineProgress),
    goAhead: oneOf(goAheadAnswers),
    goAheadUpTo: offWall(orNull(decimal())),
    /** The standing go-ahead that the line rests on. */
    standingId: offWall(orNull(ref('standingGoAhead'))),
    /** The customer took the word back on a started line: it is put back, and what was done is charged. */
    withdrawnAt: orNull(instant()),
    /** The follow-up this line came from, and the one that carries on what was left of it. */
    fromFollowUpId: offBoard(orNull(ref('followUp'))),
    toFollowUpId: offBoard(orNull(ref('followUp'))),
    startedAt: orNull(instant()),
    endedAt: orNull(instant()),
    endWords: offWall(orNull(text())),
    handover: offWall(orNull(text())),
  }),
  /** Each answer of the customer to a line, kept with its day: the line holds the last one. */
  goAhead: table('all', {
    ...recorded,
    jobId: ref('job'),
    lineId: ref('workLine'),
    answer: oneOf(goAheadAnswers),
    byName: offWall(orNull(text())),
    how: offBoard(orNull(oneOf(goAheadWays))),
    upTo: offBoard(orNull(decimal())),
    words: offBoard(orNull(text())),
    standingId: offBoard(orNull(ref('standingGoAhead'))),
  }),
  clock: table('all', {
    ...recorded,
    jobId: ref('job'),
    lineId: ref('workLine'),
    personId: ref('person'),
    bench: bool(),
    fromAt: instant(),
    toAt: orNull(instant()),
  }),
  /** A wheel that was off on a visit: off, on, tightened, each by whom; see `wheelPosition` for the places. */
  wheelRecord: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: ref('vehicle'),
    lineId: offBoard(orNull(ref('workLine'))),
    position: text(),
    offAt: orNull(instant()),
    offById: offBoard(orNull(ref('person'))),
    onAt: orNull(instant()),
    onById: offBoard(orNull(ref('person'))),
    torque: offWall(orNull(decimal())),
    torqueUnit: offWall(orNull(oneOf(torqueUnits))),
    torqueSource: offWall(orNull(oneOf(torqueSources))),
    sourceWords: offWall(orNull(text())),
    tool: offWall(orNull(text())),
    torquedAt: orNull(instant()),
    torquedById: offBoard(orNull(ref('person'))),
  }),
} as const;
