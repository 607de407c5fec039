/**
 * A hold put right: another reason, other times. The lines and parts that it named are named by the hold as it stands
 * now; when it ends by itself follows from the rows as ever (see ../settle).
 */
import type { CorrectHold } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import { mayEnd } from '../hold/end-hold.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { settledTables } from '../settle/settled-tables.js';
import type { Row } from '../tables/tables.js';
import { isRunning, type Span } from '../timeline/timeline.js';
import {
  againstMonths,
  againstSpan,
  instantsOf,
  iso,
  keepCorrection,
  mayCorrect,
  onlyEnds,
  spanSaid,
  type TimesSaid,
  told,
} from './corrections.js';

export const correctHold: CommandRule<'correctHold'> = {
  needs: (input) => ({ holds: [input.holdId], times: instantsOf(input), tables: settledTables }),
  decide(rows, input, at) {
    const before = live(rows, 'hold', input.holdId);
    if (!before) return notThere('hold', input.holdId);
    const said = { reason: input.reason ?? before.reason, ...spanSaid(before, input) };
    const ends = onlyEnds(before, input) && said.reason === before.reason;
    const refused = refusedCorrection(rows, at, before, said, ends ? input : {});
    if (refused) return refused;
    const ending = endingOf(before, said, input, at);
    const after = ends
      ? rows.change('hold', before.id, { toAt: said.toAt, ...ending })
      : replaced(rows, at, before, { ...said, ...ending });
    const how = ends ? 'ended' : 'replaced';
    keepCorrection(rows, at, { kind: how, table: 'hold', before, after, words: input.words });
    const facts = { jobId: before.jobId, holdId: after.id, reason: said.reason, how };
    return { facts, created: ends ? {} : { hold: after.id } };
  },
};

type Said = Span & Pick<Row<'hold'>, 'reason'>;

/** `ending` says the times where only the missing end is set. */
function refusedCorrection(
  rows: Rows,
  at: Circumstances,
  before: Row<'hold'>,
  said: Said,
  ending: TimesSaid,
): Refused | null {
  const { id: holdId, reason, fromAt, toAt, openedById } = before;
  if (said.reason === reason && said.fromAt === fromAt && said.toAt === toAt) return refuse('time.nothingChanged');
  if (toAt === null && said.toAt !== null && !mayEnd(at.by, before))
    return refuse('hold.mayNotEnd', { holdId, reason });
  return (
    mayCorrect(at, openedById, onlyEnds(before, ending) ? [] : [fromAt, said.fromAt]) ??
    againstSpan(said, at) ??
    againstMonths(rows, at, before, said, ending) ??
    againstVisit(rows, before, said) ??
    againstReason(rows, before, said)
  );
}

/** Within the visit; one that was opened before the vehicle arrived, for parts of a booked visit, not before that. */
function againstVisit(rows: Rows, before: Row<'hold'>, { fromAt, toAt }: Span): Refused | null {
  const { number, arrivedAt, endedAt } = rows.get('job', before.jobId);
  if (toAt === null && endedAt !== null) return refuse('time.cannotRun');
  const tooEarly = arrivedAt !== null && fromAt < Math.min(arrivedAt, before.fromAt);
  const tooLate = endedAt !== null && Math.max(toAt ?? fromAt, fromAt) > Math.max(endedAt, before.toAt ?? endedAt);
  if (!tooEarly && !tooLate) return null;
  const visit = { fromAt: arrivedAt ?? before.fromAt, toAt: endedAt };
  return refuse('time.outsideVisit', { jobNumber: number, ...told(visit) });
}

function againstReason(rows: Rows, before: Row<'hold'>, said: Said): Refused | null {
  switch (said.reason) {
    case 'parts':
      return rows.list('holdPart', (one) => one.holdId === before.id).length > 0 ? null : refuse('hold.partsNeeded');
    case 'setting': {
      const endsAt = before.endsAt ?? said.toAt;
      if (endsAt === null) return refuse('hold.endMissing');
      return endsAt > said.fromAt
        ? null
        : refuse('hold.endBeforeStart', { endsAt: iso(endsAt), fromAt: iso(said.fromAt) });
    }
    case 'other':
      return before.words === null ? refuse('hold.wordsMissing') : null;
    default:
      return null;
  }
}

type Ending = Pick<Row<'hold'>, 'endedHow' | 'endWords' | 'endedById'>;

/** How it ended stays said where it had ended; an end that the correction brings was set by hand, with its words. */
function endingOf(before: Row<'hold'>, span: Span, { words }: CorrectHold, at: Circumstances): Ending {
  if (span.toAt === null) return { endedHow: null, endWords: null, endedById: null };
  if (isRunning(before)) return { endedHow: 'byHand', endWords: words, endedById: at.by.personId };
  const { endedHow, endWords, endedById } = before;
  return { endedHow, endWords, endedById };
}

function replaced(rows: Rows, at: Circumstances, before: Row<'hold'>, said: Said & Ending): Row<'hold'> {
  const { version: _version, void: _void, ...old } = before;
  const endsAt = said.reason === 'setting' ? (before.endsAt ?? said.toAt) : null;
  rows.change('hold', before.id, { void: true });
  const after = rows.add('hold', { ...old, ...recordedBy(at), id: at.newId(), ...said, endsAt });
  nameAgain(rows, at, before, after);
  for (const again of rows.list('hold', (one) => one.againOfId === before.id)) {
    rows.change('hold', again.id, { againOfId: after.id });
  }
  return after;
}

function nameAgain(rows: Rows, at: Circumstances, before: Row<'hold'>, after: Row<'hold'>): void {
  for (const { id, jobId, lineId } of rows.list('holdLine', (one) => one.holdId === before.id)) {
    rows.change('holdLine', id, { void: true });
    rows.add('holdLine', { id: at.newId(), holdId: after.id, jobId, lineId });
  }
  for (const { id, jobId, partLineId } of rows.list('holdPart', (one) => one.holdId === before.id)) {
    rows.change('holdPart', id, { void: true });
    if (after.reason === 'parts') rows.add('holdPart', { id: at.newId(), holdId: after.id, jobId, partLineId });
  }
}
