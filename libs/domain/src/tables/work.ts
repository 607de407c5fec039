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
import { goAheadAnswers, goAheadWays, lineProgress, payers } from './words.js';

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
    /** Price of labour and parts as told to the customer, in the shop's currency. */
    price: offWall(orNull(decimal())),
    /** Lines that are alternatives of one choice share this id; at most one of them is given. */
    choiceId: offWall(orNull(text())),
    afterLineId: orNull(ref('workLine')),
    progress: oneOf(lineProgress),
    goAhead: oneOf(goAheadAnswers),
    goAheadUpTo: offWall(orNull(decimal())),
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
} as const;
