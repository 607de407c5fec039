/** Time worked put right: a clock that nobody started, other times, line or person, the end of a forgotten one. */
import type { CorrectClock } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { NewRow, Rows } from '../kernel/rows.js';
import { lineEnded, live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { settledTables } from '../settle/settled-tables.js';
import type { Row } from '../tables/tables.js';
import { clocksOfPerson } from '../timeline/lanes.js';
import { clashes, isRunning, type Span } from '../timeline/timeline.js';
import { lineOfVisit, type LineOfVisit } from '../work/line-of-visit.js';
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
import { recountLine } from './recount-line.js';

const tables = [...settledTables, 'clock'] as const;

/** Rule 1: a person is on one clock at a time. */
function againstOthers(rows: Rows, personId: string, span: Span, butId: string | null): Refused | null {
  const [other] = clashes(
    clocksOfPerson(rows, personId).filter((one) => one.id !== butId),
    span,
  );
  if (!other) return null;
  const jobNumber = rows.find('job', other.jobId)?.number ?? 0;
  return refuse('time.onAnotherClock', { jobNumber, ...told(other) }, { table: 'clock', id: other.id });
}

export const addClock: CommandRule<'addClock'> = {
  needs: (input) => ({
    lines: [input.lineId],
    people: [input.personId],
    times: instantsOf(input),
    clockedJobs: true,
    tables,
  }),
  decide(rows, input, at) {
    const { clockId, personId, fromAt, toAt, words } = input;
    const found = lineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    if (!live(rows, 'person', personId)) return notThere('person', personId);
    if (clockId !== undefined && rows.find('clock', clockId)) {
      return refuse('time.alreadyRecorded', { table: 'clock', id: clockId });
    }
    const span = { fromAt, toAt };
    const refused =
      mayCorrect(at, personId, [fromAt]) ??
      againstSpan(span, at) ??
      againstClosedMonth(rows, at, [span]) ??
      againstOthers(rows, personId, span, null);
    if (refused) return refused;
    const of = { jobId: found.job.id, lineId: found.line.id, personId };
    const row = { id: clockId ?? at.newId(), ...recordedBy(at), ...of, bench: input.bench ?? false, ...span };
    const added = rows.add('clock', row);
    recountLine(rows, added.lineId);
    keepCorrection(rows, at, { kind: 'added', table: 'clock', before: null, after: added, words });
    return { facts: { ...of, workedMs: toAt - fromAt }, created: { clock: added.id } };
  },
};

export const correctClock: CommandRule<'correctClock'> = {
  needs: (input) => ({
    clocks: [input.clockId],
    lines: input.lineId === undefined ? [] : [input.lineId],
    people: input.personId === undefined ? [] : [input.personId],
    times: instantsOf(input),
    clockedJobs: true,
    tables,
  }),
  decide(rows, input, at) {
    const before = live(rows, 'clock', input.clockId);
    if (!before) return notThere('clock', input.clockId);
    const found = lineOfVisit(rows, input.lineId ?? before.lineId);
    if (found instanceof Refused) return found;
    const said = saidOf(input, before, found);
    const ends = isSame(before, { ...said, toAt: before.toAt }) && onlyEnds(before, input);
    const refused = refusedCorrection(rows, at, before, said, ends ? input : {});
    if (refused) return refused;
    const after = ends ? rows.change('clock', before.id, { toAt: said.toAt }) : replaced(rows, at, before.id, said);
    for (const lineId of new Set([before.lineId, after.lineId])) recountLine(rows, lineId);
    const how = ends ? 'ended' : 'replaced';
    keepCorrection(rows, at, { kind: how, table: 'clock', before, after, words: input.words });
    const { jobId, lineId, personId } = after;
    return { facts: { jobId, lineId, personId, how }, created: ends ? {} : { clock: after.id } };
  },
};

type Said = Pick<NewRow<'clock'>, 'jobId' | 'lineId' | 'personId' | 'bench' | 'fromAt' | 'toAt'>;

function saidOf(input: CorrectClock, before: Row<'clock'>, { job, line }: LineOfVisit): Said {
  return {
    jobId: job.id,
    lineId: line.id,
    personId: input.personId ?? before.personId,
    bench: input.bench ?? before.bench,
    ...spanSaid(before, input),
  };
}

function isSame(before: Row<'clock'>, said: Said): boolean {
  return (Object.keys(said) as (keyof Said)[]).every((name) => before[name] === said[name]);
}

/** `ending` says the times where only the missing end is set. */
function refusedCorrection(
  rows: Rows,
  at: Circumstances,
  before: Row<'clock'>,
  said: Said,
  ending: TimesSaid,
): Refused | null {
  const { personId } = said;
  if (!live(rows, 'person', personId)) return notThere('person', personId);
  if (isSame(before, said)) return refuse('time.nothingChanged');
  const refused =
    mayCorrect(at, before.personId, onlyEnds(before, ending) ? [] : [before.fromAt, said.fromAt]) ??
    (personId === before.personId ? null : mayCorrect(at, personId, [said.fromAt])) ??
    againstSpan(said, at) ??
    againstMonths(rows, at, before, said, ending);
  if (refused) return refused;
  return againstRunning(rows, said) ?? againstOthers(rows, personId, said, before.id);
}

function againstRunning(rows: Rows, said: Said): Refused | null {
  const over = rows.get('job', said.jobId).endedAt !== null || lineEnded(rows.get('workLine', said.lineId));
  return isRunning(said) && over ? refuse('time.cannotRun') : null;
}

function replaced(rows: Rows, at: Circumstances, id: string, said: Said): Row<'clock'> {
  rows.change('clock', id, { void: true });
  return rows.add('clock', { id: at.newId(), ...recordedBy(at), ...said });
}
