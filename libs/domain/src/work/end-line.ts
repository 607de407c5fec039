/** The three ends of a line on a visit: done, carried over to a follow-up, dropped with words. */
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { CarryOverLine } from '../inputs.js';
import { limitsOf } from '../outstanding/limits.js';
import { cancelPartLine } from '../parts/cancel-part.js';
import { clocksRunningOn, live, unfinishedBefore } from '../questions/place-and-work.js';
import { absent } from '../questions/references.js';
import { isPutBack } from '../questions/totals.js';
import type { Row } from '../tables/tables.js';
import { type LineOfVisit, openLineOfVisit, stopClocksOn } from './line-of-visit.js';
import { movePartsToFollowUp, openPartsOf } from './parts-of-line.js';

export const finishLine: CommandRule<'finishLine'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    if (isPutBack(line)) return refuse('work.goAheadWithdrawn', {}, { table: 'workLine', id: line.id });
    const before = unfinishedBefore(rows, line);
    if (before)
      return refuse('work.afterUnfinished', { beforeLineId: before.id }, { table: 'workLine', id: before.id });
    if (line.startedAt === null) {
      if (line.goAhead !== 'given') return refuse('work.noGoAhead', { goAhead: line.goAhead });
      if (input.words === undefined) return refuse('work.neverStarted');
    }
    const endedAt = stopClocksOn(rows, at, line.id, at.effectiveAt);
    rows.change('workLine', line.id, { progress: 'done', endedAt, endWords: input.words ?? null });
    return { facts: { jobId: job.id, lineId: line.id } };
  },
};

export const carryOverLine: CommandRule<'carryOverLine'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    if (line.startedAt === null) return refuse('work.notStarted');
    if (input.followUpId !== undefined && rows.find('followUp', input.followUpId)) {
      return refuse('work.alreadyRecorded', { table: 'followUp', id: input.followUpId });
    }
    const refused = absent(rows, { season: input.limits?.seasonId });
    if (refused) return refused;
    const followUp = rows.add('followUp', followUpRow(rows, input, at, found));
    movePartsToFollowUp(rows, line.id, followUp.id);
    const endedAt = stopClocksOn(rows, at, line.id, at.effectiveAt);
    rows.change('workLine', line.id, {
      progress: 'carriedOver',
      endedAt,
      endWords: input.done,
      toFollowUpId: followUp.id,
    });
    const facts = { jobId: job.id, lineId: line.id, followUpId: followUp.id };
    return { facts, created: { followUp: followUp.id } };
  },
};

function followUpRow(
  rows: Rows,
  input: CarryOverLine,
  at: Circumstances,
  { job, vehicle, line }: LineOfVisit,
): Omit<Row<'followUp'>, 'version' | 'void'> {
  return {
    id: input.followUpId ?? at.newId(),
    ...recordedBy(at),
    vehicleId: vehicle.id,
    fromJobId: job.id,
    kind: 'carriedOver',
    title: line.title,
    words: input.remaining,
    urgency: input.urgency ?? 'soon',
    lineId: line.id,
    remainingMinutes: input.remainingMinutes ?? null,
    // What the customer has not said yes to, or no longer, is asked for before it goes on.
    needsGoAhead: line.goAhead !== 'given',
    needsFollowUpId: null,
    ...limitsOf(rows, input.limits ?? {}),
    state: 'open',
    closedAt: null,
    closedById: null,
    closeWords: null,
    closeLineId: null,
  };
}

/** A line whose go-ahead was withdrawn says what is charged for what was done and put back; "0" is an answer. */
export const dropLine: CommandRule<'dropLine'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    const running = clocksRunningOn(rows, line.id)[0];
    if (running) return refuse('work.clockRuns', {}, { table: 'clock', id: running.id });
    const putBack = isPutBack(line);
    if (putBack && input.charge === undefined) return refuse('work.chargeMissing');
    if (!putBack && input.charge !== undefined) return refuse('work.chargeNotDue');
    leaveParts(rows, at, line, input.words);
    rows.change('workLine', line.id, {
      progress: 'dropped',
      endedAt: at.effectiveAt,
      endWords: input.words,
      ...(input.charge === undefined ? {} : { price: canonical(input.charge) }),
    });
    return { facts: { jobId: job.id, lineId: line.id, charged: putBack } };
  },
};

/**
 * Parts that a follow-up lent to the line go back to it. Of the line's own, those only wanted are cancelled; what is on
 * order or here stays with the vehicle, and the hand-back asks what becomes of it.
 */
function leaveParts(rows: Rows, at: Circumstances, line: Row<'workLine'>, words: string): void {
  const followUp = live(rows, 'followUp', line.fromFollowUpId);
  if (followUp?.state === 'open') {
    movePartsToFollowUp(rows, line.id, followUp.id);
    return;
  }
  for (const part of openPartsOf(rows, line.id)) {
    if (part.state === 'wanted') cancelPartLine(rows, at, part.id, words);
  }
}
