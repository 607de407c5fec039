/** Who is here: the presence of a person as it goes on. */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, attendanceOf } from '../timeline/lanes.js';
import { follow, isRunning } from '../timeline/timeline.js';

/** Here, on a break or on shop time now; undefined for somebody who is not here. */
export function presenceOf(rows: Rows, personId: string): Row<'attendance'> | undefined {
  return attendanceOf(rows, personId).find(isRunning);
}

type Said = Pick<Row<'attendance'>, 'kind' | 'words'> & { readonly attendanceId?: string | undefined };

/** From `when` (epoch ms), or as soon after as the last stretch allows: that one ends where the new one begins. */
export function goOnAs(rows: Rows, at: Circumstances, personId: string, said: Said, when: number): Row<'attendance'> {
  const { kind, words } = said;
  const brought = { id: said.attendanceId ?? at.newId(), ...recordedBy(at), personId, kind, words };
  applyEdits(rows, at, 'attendance', follow(attendanceOf(rows, personId), when).edits, brought);
  return rows.get('attendance', brought.id);
}

/** Left to run since an earlier working day: nobody said that they were gone. */
export function isOfEarlierDay(stretch: Pick<Row<'attendance'>, 'fromAt'>, at: Circumstances): boolean {
  return at.calendar.workingDayOf(stretch.fromAt) < at.calendar.workingDayOf(at.effectiveAt);
}

/** Whoever goes on a clock is here, and no longer on a break or on shop time. */
export function presentOnClock(rows: Rows, at: Circumstances, personId: string, when: number): void {
  const now = presenceOf(rows, personId);
  if (now?.kind === 'present' && !isOfEarlierDay(now, at)) return;
  goOnAs(rows, at, personId, { kind: 'present', words: null }, when);
}
