import type { RecordAttendance } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { isLead } from '../questions/people-and-shop.js';
import { live, runningClockOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, attendanceOf } from '../timeline/lanes.js';
import { close, earliest } from '../timeline/timeline.js';
import { noteClocksOf } from '../work/line-of-visit.js';
import { goOnAs, isOfEarlierDay, presenceOf } from './presence.js';

/**
 * A fact: somebody is here, on a break, on shop time, or has gone. It ends the stretch before it, and whoever turns to
 * something else than work on a vehicle is on no clock any more: that one stops at the same instant.
 */
export const recordAttendance: CommandRule<'recordAttendance'> = {
  needs: ({ personId }) => ({
    sender: true,
    people: personId === undefined ? [] : [personId],
    clockedJobs: true,
    tables: ['workLine', 'clock', 'attendance'],
  }),
  decide(rows, input, at) {
    const personId = input.personId ?? at.by.personId ?? '';
    const refused = refusedSaying(rows, input, personId, at);
    if (refused) return refused;
    const clock = input.kind === 'present' ? undefined : runningClockOf(rows, personId);
    const when = earliest([...attendanceOf(rows, personId), ...(clock ? [clock] : [])], at.effectiveAt);
    if (clock) {
      applyEdits(rows, at, 'clock', [close(clock, when)]);
      noteClocksOf(rows, clock.lineId);
    }
    const made = isSo(presenceOf(rows, personId), input, at) ? null : carryOn(rows, at, personId, input, when);
    const stopped = clock ? { jobId: clock.jobId, lineId: clock.lineId, workedMs: when - clock.fromAt } : {};
    const facts = { personId, kind: input.kind, stopped: clock !== undefined, ...stopped };
    return made ? { facts, created: { attendance: made.id } } : { facts };
  },
};

function refusedSaying(rows: Rows, input: RecordAttendance, personId: string, at: Circumstances): Refused | null {
  const { attendanceId } = input;
  if (!live(rows, 'person', personId)) return notThere('person', personId);
  if (personId !== at.by.personId && !isLead(at.by)) return refuse('time.othersAttendance');
  if (attendanceId !== undefined && rows.find('attendance', attendanceId)) {
    return refuse('time.alreadyRecorded', { table: 'attendance', id: attendanceId });
  }
  return input.kind === 'shopTime' && input.words === undefined ? refuse('time.wordMissing') : null;
}

/** Said once more of what is so already: nothing begins anew. */
function isSo(now: Row<'attendance'> | undefined, said: RecordAttendance, at: Circumstances): boolean {
  const { kind, words } = said;
  if (kind === 'gone') return now === undefined;
  if (now && isOfEarlierDay(now, at)) return false;
  return now?.kind === kind && (kind !== 'shopTime' || now.words === words);
}

function carryOn(rows: Rows, at: Circumstances, personId: string, input: RecordAttendance, when: number) {
  const { attendanceId, kind, words } = input;
  if (kind !== 'gone') return goOnAs(rows, at, personId, { attendanceId, kind, words: words ?? null }, when);
  const now = presenceOf(rows, personId);
  if (now) applyEdits(rows, at, 'attendance', [close(now, when)]);
  return null;
}
