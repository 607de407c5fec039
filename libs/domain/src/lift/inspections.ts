/** Inspections of lifts: what an inspector found, and the one decision to go on with a lift whose inspection is overdue. */
import { addDays } from '@holdfast/shop-calendar';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import {
  decisionOn,
  inspectionDue,
  intervalOf,
  isOverdue,
  lastInspection,
  lifts,
  runningOutage,
} from '../questions/bay-use.js';
import { specOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/** Rule 4: the decision ends at most so many days after the day on which it is made. */
export const mostDaysOverdue = 14;

/** Why a lift is out of use whose inspector said nothing more. */
const failedWords = 'Inspection failed';

/** A failed lift is out of use from now on, each one of the bay; vehicles that stand there stay. */
function takeLiftsOutOfUse(rows: Rows, at: Circumstances, spec: Row<'baySpec'>, words: string): string | undefined {
  const kinds = new Set(lifts(spec).map(({ kind }) => kind));
  const outages = [...kinds]
    .filter((equipment) => !runningOutage(rows, spec.bayId, equipment))
    .map((equipment) => {
      const when = { fromAt: at.now, toAt: null, endWords: null };
      return rows.add('outage', { id: at.newId(), ...recordedBy(at), bayId: spec.bayId, equipment, words, ...when });
    });
  return outages[0]?.id;
}

/**
 * A claim. An interval that is not said is the one that was followed before. Where a later inspection is known already,
 * this one only completes the record.
 */
export const recordLiftInspection: CommandRule<'recordLiftInspection'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    const { inspectionId, bayId, inspectedOn, outcome } = input;
    const bay = live(rows, 'bay', bayId);
    if (!bay) return notThere('bay', bayId);
    if (rows.find('liftInspection', inspectionId)) return refuse('lift.alreadyRecorded', { id: inspectionId ?? null });
    const today = todayOf(at);
    const spec = specOn(rows, bayId, today);
    if (lifts(spec).length === 0) return refuse('lift.noneInBay', { bayId }, { table: 'bay', id: bayId });
    if (inspectedOn > today) return refuse('lift.inspectedInFuture', { inspectedOn, today });
    const before = lastInspection(rows, spec);
    const id = inspectionId ?? at.newId();
    rows.add('liftInspection', {
      id,
      ...recordedBy(at),
      bayId,
      inspectedOn,
      outcome,
      intervalMonths: input.intervalMonths ?? intervalOf(rows, spec),
      inspector: input.inspector ?? null,
      words: input.words ?? null,
    });
    const counts = before === undefined || inspectedOn >= before.on;
    const outage =
      outcome === 'failed' && counts ? takeLiftsOutOfUse(rows, at, spec, input.words ?? failedWords) : undefined;
    const created = { liftInspection: id, ...(outage === undefined ? {} : { outage }) };
    return { facts: { bayId, inspectedOn, outcome }, created };
  },
};

/** A claim, by owner or manager: one decision for each overdue inspection; it holds from today to its last day, included. */
export const allowOverdueLift: CommandRule<'allowOverdueLift'> = {
  needs: () => ({}),
  decide: (rows, { decisionId, bayId, untilDay, words }, at) => {
    const bay = live(rows, 'bay', bayId);
    if (!bay) return notThere('bay', bayId);
    if (rows.find('liftDecision', decisionId)) return refuse('lift.alreadyRecorded', { id: decisionId ?? null });
    const today = todayOf(at);
    const spec = specOn(rows, bayId, today);
    const way = { table: 'bay', id: bayId };
    if (lifts(spec).length === 0) return refuse('lift.noneInBay', { bayId }, way);
    const last = lastInspection(rows, spec);
    if (last?.outcome === 'failed') return refuse('lift.failed', { inspectedOn: last.on }, way);
    const due = inspectionDue(rows, spec);
    if (due === null || !isOverdue(due, today)) return refuse('lift.notOverdue', { dueOn: due?.dueOn ?? null }, way);
    const made = decisionOn(rows, bayId, due);
    if (made) return refuse('lift.decidedAlready', { untilDay: made.untilDay }, way);
    const latest = addDays(today, mostDaysOverdue);
    if (untilDay < today || untilDay > latest) return refuse('lift.endOutside', { today, latest });
    const id = decisionId ?? at.newId();
    const { inspectedOn } = due;
    rows.add('liftDecision', { id, ...recordedBy(at), bayId, inspectedOn, untilDay, words });
    return { facts: { bayId, untilDay }, created: { liftDecision: id } };
  },
};
