import { instant, json, oneOf, orNull, recorded, ref, table, text } from '../kernel/column.js';
import { attendanceKinds, correctedTables, correctionKinds } from './words.js';

/** When people are here, what was put right afterwards, and which months stand. */
export const timeTables = {
  /**
   * One after the other for each person: here, on a break, or here on shop time (clocked on no job, with a word). Hours
   * present are those of `present` and `shopTime`.
   */
  attendance: table('all', {
    ...recorded,
    personId: ref('person'),
    kind: oneOf(attendanceKinds),
    words: { ...orNull(text()), shown: 'staff' },
    fromAt: instant(),
    toAt: orNull(instant()),
  }),
  /**
   * What was put right: the row as it stood before, the row that stands now (the same one where only its end was set),
   * who, when and why. The row before stays, void.
   */
  correction: table('none', {
    ...recorded,
    kind: oneOf(correctionKinds),
    tableName: oneOf(correctedTables),
    rowId: orNull(text()),
    newRowId: orNull(text()),
    before: orNull(json<Readonly<Record<string, unknown>>>()),
    jobId: orNull(ref('job')),
    vehicleId: orNull(ref('vehicle')),
    personId: orNull(ref('person')),
    words: text(),
  }),
  /** A calendar month of the shop's zone, `YYYY-MM`, whose times are no longer corrected until it is opened again. */
  closedMonth: table('staff', {
    ...recorded,
    month: text(),
    words: orNull(text()),
    reopenedAt: orNull(instant()),
    reopenedById: orNull(ref('person')),
    reopenWords: orNull(text()),
  }),
} as const;
