/**
 * The other door: the vehicle leaves apart, let go by owner or manager with words, on a sheet of its own. Nothing is
 * settled by it and nothing is lost: what is open on the visit becomes a follow-up by itself, with what is left of it and
 * its parts. What a door forbids for people's sake it forbids here too.
 */
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { lineEnded, live } from '../questions/place-and-work.js';
import { lineSettledByChoice } from '../questions/choices.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';
import { followUpOfLine, followUpOfPart, openPartsOf, releaseBlockers, unendedFixes } from './hand-back-blockers.js';
import { closeVisit, handOnParts, keepAllowances } from './leaving.js';
import { leftOver } from './left-over.js';

const minuteMs = 60_000;

export const releaseUnfinished: CommandRule<'releaseUnfinished'> = {
  needs: ({ jobId }) => ({ jobs: [jobId] }),
  decide(rows, input, at) {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    if (job.arrivedAt === null) return refuse('handBack.notArrived', { number: job.number });
    if (input.words.trim() === '') return refuse('release.wordsMissing');
    const blockers = releaseBlockers(rows, input, at.by);
    if (blockers.length > 0) return new Refused(blockers);
    const { words, leavesBy, receivedHow } = input;
    const before = rows.list('followUp').length;
    putOffLines(rows, at, job, words);
    followUpFixes(rows, at, job);
    followUpParts(rows, at, job);
    followUpSublets(rows, at, job);
    leaveConcerns(rows, at, job, words);
    const allowed = keepAllowances(rows, input, at, job.vehicleId);
    handOnParts(rows, job.id);
    const sheet = closeVisit(rows, at, job, input, { endedHow: 'released', words });
    const followUps = rows.list('followUp').length - before;
    return {
      facts: { jobId: job.id, vehicleId: job.vehicleId, number: job.number, leavesBy, receivedHow, allowed, followUps },
      created: { sheet },
    };
  },
};

/** Whole minutes of the book time that nobody has worked yet; null where no book time is known. Never below nought. */
function minutesLeft(rows: Rows, line: Row<'workLine'>): number | null {
  if (line.bookMinutes === null) return null;
  const clocks = rows.list('clock', (clock) => clock.lineId === line.id);
  const workedMs = clocks.reduce((all, { fromAt, toAt }) => all + (toAt ?? fromAt) - fromAt, 0);
  return Math.max(0, line.bookMinutes - Math.floor(workedMs / minuteMs));
}

/** What was begun is carried over; what was agreed or is still asked for is put off; what was turned down stays so. */
function putOffLines(rows: Rows, at: Circumstances, job: Row<'job'>, words: string): void {
  for (const line of rows.list('workLine', (one) => one.jobId === job.id && !lineEnded(one))) {
    const begun = line.startedAt !== null || line.progress !== 'planned';
    const putOff = line.goAhead === 'deferred' || line.goAhead === 'declined' || lineSettledByChoice(rows, line);
    if (!begun && putOff) continue;
    const toFollowUpId = followUpOfLine(rows, line)?.id ?? leftOver(rows, at, job, leftOfLine(rows, line, begun));
    rows.change('workLine', line.id, {
      toFollowUpId,
      ...(begun ? { progress: 'carriedOver' as const, endedAt: at.effectiveAt, endWords: words } : {}),
    });
  }
}

function leftOfLine(rows: Rows, line: Row<'workLine'>, begun: boolean) {
  return {
    kind: begun ? ('carriedOver' as const) : ('deferred' as const),
    title: line.title,
    words: line.handover,
    lineId: line.id,
    remainingMinutes: minutesLeft(rows, line),
    needsGoAhead: line.goAhead !== 'given',
  };
}

/** Rule 8: a fix that has not ended keeps its permanent repair in sight. */
function followUpFixes(rows: Rows, at: Circumstances, job: Row<'job'>): void {
  for (const fix of unendedFixes(rows, job.vehicleId)) {
    if (live(rows, 'followUp', fix.followUpId)?.state === 'open') continue;
    const urgent = tierOf(fix.system) === 1 || fix.state !== 'on';
    const { beforeDay, beforeOdometer, withinDistance, withinDays, seasonId, distanceUnit } = fix;
    const limits = { beforeDay, beforeOdometer, withinDistance, withinDays, seasonId, distanceUnit };
    const left = {
      kind: 'permanentRepair',
      title: fix.endedByWhat,
      urgency: urgent ? 'urgent' : 'soon',
      limits,
    } as const;
    rows.change('temporaryFix', fix.id, { followUpId: leftOver(rows, at, job, left) });
  }
}

/** Parts that are for nothing that goes on: those of one line together, each other one for itself. */
function followUpParts(rows: Rows, at: Circumstances, job: Row<'job'>): void {
  for (const part of openPartsOf(rows, job.id)) {
    if (followUpOfPart(rows, part)) continue;
    const line = live(rows, 'workLine', part.lineId);
    const title = line?.title ?? part.description;
    const followUpId = leftOver(rows, at, job, { kind: 'deferred', title, lineId: line?.id ?? null });
    rows.change('partLine', part.id, { followUpId });
  }
}

/** A component that is still at another firm comes back without its vehicle. */
function followUpSublets(rows: Rows, at: Circumstances, job: Row<'job'>): void {
  for (const sublet of rows.list('sublet', (one) => one.jobId === job.id && one.state === 'underWay')) {
    const line = live(rows, 'workLine', sublet.lineId);
    if (line && followUpOfLine(rows, line)) continue;
    const title = sublet.component ?? line?.title ?? sublet.firm;
    leftOver(rows, at, job, { kind: 'deferred', title, words: sublet.words });
  }
}

function leaveConcerns(rows: Rows, at: Circumstances, job: Row<'job'>, words: string): void {
  for (const { id } of rows.list('concern', (one) => one.jobId === job.id && one.outcome === null)) {
    const outcomeById = at.by.personId;
    rows.change('concern', id, { outcome: 'notTried', outcomeWords: words, outcomeAt: at.effectiveAt, outcomeById });
  }
}
