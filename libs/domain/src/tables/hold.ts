import { instant, offBoard, offWall, oneOf, orNull, recorded, ref, table, text } from '../kernel/column.js';
import { holdEnds, holdReasons } from './words.js';

/** Why a job, or named lines of it, cannot go on. A hold without `holdLine` rows holds the whole job. */
export const holdTables = {
  hold: table('all', {
    ...recorded,
    jobId: ref('job'),
    vehicleId: offBoard(ref('vehicle')),
    reason: oneOf(holdReasons),
    words: offWall(orNull(text())),
    /** Whose move it is: a person of the shop, or words for somebody outside. */
    moveOfId: offWall(orNull(ref('person'))),
    moveOf: offWall(orNull(text())),
    /** `setting` ends at its own time. */
    endsAt: orNull(instant()),
    openedById: offWall(orNull(ref('person'))),
    fromAt: instant(),
    toAt: orNull(instant()),
    endedHow: orNull(oneOf(holdEnds)),
    endWords: offBoard(orNull(text())),
    endedById: offBoard(orNull(ref('person'))),
    /** The hold that this one opened again after a part was found damaged or wrong. */
    againOfId: offBoard(orNull(ref('hold'))),
    subletId: offBoard(orNull(ref('sublet'))),
  }),
  /** A question to a named person waits without holding anything up. */
  question: table('staff', {
    ...recorded,
    jobId: ref('job'),
    lineId: orNull(ref('workLine')),
    askedById: ref('person'),
    toId: ref('person'),
    words: text(),
    answer: orNull(text()),
    answeredAt: orNull(instant()),
    answeredById: orNull(ref('person')),
  }),
  holdLine: table('all', { holdId: ref('hold'), jobId: offBoard(ref('job')), lineId: ref('workLine') }),
  holdPart: table('all', { holdId: ref('hold'), jobId: offBoard(ref('job')), partLineId: ref('partLine') }),
} as const;
