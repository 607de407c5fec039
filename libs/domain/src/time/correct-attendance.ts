/** The presence of a person put right: a stretch that was missing, other times or another kind for one that is there. */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { attendanceOf } from '../timeline/lanes.js';
import { clashes, type Span } from '../timeline/timeline.js';
import {
  againstMonths,
  againstSpan,
  instantsOf,
  keepCorrection,
  mayCorrect,
  onlyEnds,
  spanSaid,
  type TimesSaid,
  told,
} from './corrections.js';
import { againstClosedMonth } from './months.js';

const tables = ['attendance'] as const;

/** Rule 1: a person is in one state of presence at a time. */
function againstOthers(rows: Rows, personId: string, span: Span, butId: string | null): Refused | null {
  const [other] = clashes(
    attendanceOf(rows, personId).filter((one) => one.id !== butId),
    span,
  );
  if (!other) return null;
  return refuse('time.otherPresence', { kind: other.kind, ...told(other) }, { table: 'attendance', id: other.id });
}

export const addAttendance: CommandRule<'addAttendance'> = {
  needs: (input) => ({ people: [input.personId], times: instantsOf(input), tables }),
  decide(rows, input, at) {
    const { attendanceId, personId, kind, words, fromAt, toAt } = input;
    const span = { fromAt, toAt };
    if (!live(rows, 'person', personId)) return notThere('person', personId);
    if (attendanceId !== undefined && rows.find('attendance', attendanceId)) {
      return refuse('time.alreadyRecorded', { table: 'attendance', id: attendanceId });
    }
    const refused =
      mayCorrect(at, personId, [fromAt]) ??
      againstSpan(span, at) ??
      againstClosedMonth(rows, at, [span]) ??
      againstOthers(rows, personId, span, null);
    if (refused) return refused;
    const added = rows.add('attendance', {
      id: attendanceId ?? at.newId(),
      ...recordedBy(at),
      personId,
      kind,
      words: kind === 'shopTime' ? words : null,
      ...span,
    });
    keepCorrection(rows, at, { kind: 'added', table: 'attendance', before: null, after: added, words });
    return { facts: { personId, kind }, created: { attendance: added.id } };
  },
};

export const correctAttendance: CommandRule<'correctAttendance'> = {
  needs: (input) => ({ attendances: [input.attendanceId], times: instantsOf(input), tables }),
  decide(rows, input, at) {
    const before = live(rows, 'attendance', input.attendanceId);
    if (!before) return notThere('attendance', input.attendanceId);
    const { personId } = before;
    const said = { kind: input.kind ?? before.kind, ...spanSaid(before, input) };
    const ends = onlyEnds(before, input) && said.kind === before.kind;
    const refused = refusedCorrection(rows, at, before, said, ends ? input : {});
    if (refused) return refused;
    const after = ends
      ? rows.change('attendance', before.id, { toAt: said.toAt })
      : replaced(rows, at, before.id, said, input.words);
    const how = ends ? 'ended' : 'replaced';
    keepCorrection(rows, at, { kind: how, table: 'attendance', before, after, words: input.words });
    return { facts: { personId, kind: said.kind, how }, created: ends ? {} : { attendance: after.id } };
  },
};

type Said = Span & Pick<Row<'attendance'>, 'kind'>;

/** `ending` says the times where only the missing end is set. */
function refusedCorrection(
  rows: Rows,
  at: Circumstances,
  before: Row<'attendance'>,
  said: Said,
  ending: TimesSaid,
): Refused | null {
  const { personId, kind, fromAt, toAt } = before;
  if (said.kind === kind && said.fromAt === fromAt && said.toAt === toAt) return refuse('time.nothingChanged');
  return (
    mayCorrect(at, personId, onlyEnds(before, ending) ? [] : [fromAt, said.fromAt]) ??
    againstSpan(said, at) ??
    againstMonths(rows, at, before, said, ending) ??
    againstOthers(rows, personId, said, before.id)
  );
}

function replaced(rows: Rows, at: Circumstances, id: string, more: Said, words: string) {
  const { version: _version, void: _void, ...old } = rows.get('attendance', id);
  rows.change('attendance', id, { void: true });
  // Shop time has a word: where it had none, what the correction says of it.
  const word = more.kind === 'shopTime' ? (old.words ?? words) : null;
  return rows.add('attendance', { ...old, ...recordedBy(at), id: at.newId(), ...more, words: word });
}
