import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { cancelPartLine } from '../parts/cancel-part.js';
import { lineEnded, live, placeOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { movePartsToFollowUp } from '../work/parts-of-line.js';
import { followUpOfPart, openPartsOf } from './hand-back-blockers.js';
import { handOnParts, leavePremises } from './leaving.js';

/** Why a visit cannot be called off any more: something was done, or something would be lost. */
function againstIt(rows: Rows, job: Row<'job'>): Refused | null {
  const { id: jobId, number } = job;
  const clocked = rows.list('clock', (clock) => clock.jobId === jobId)[0];
  if (clocked) return refuse('job.workedOn', { number }, { table: 'workLine', id: clocked.lineId });
  const begun = rows.list('workLine', (line) => line.jobId === jobId && line.startedAt !== null)[0];
  if (begun) return refuse('job.workedOn', { number }, { table: 'workLine', id: begun.id });
  const place = placeOf(rows, jobId);
  if (place && place.kind !== 'yard') return refuse('job.notInYard', { number }, { table: 'job', id: jobId });
  const part = openPartsOf(rows, jobId).find((one) => one.state !== 'wanted' && !waitedForElsewhere(rows, one));
  return part ? refuse('job.partOrdered', { description: part.description }, { table: 'partLine', id: part.id }) : null;
}

/** A follow-up is its own, or lent it to this visit. */
function waitedForElsewhere(rows: Rows, part: Row<'partLine'>): boolean {
  const lentBy = live(rows, 'followUp', live(rows, 'workLine', part.lineId)?.fromFollowUpId);
  return followUpOfPart(rows, part) !== undefined || lentBy?.state === 'open';
}

/** Lines are dropped with the words; parts that a follow-up lent go back to it, those only wanted are cancelled. */
function dropLines(rows: Rows, at: Circumstances, job: Row<'job'>, words: string): void {
  handOnParts(rows, job.id);
  for (const line of rows.list('workLine', (one) => one.jobId === job.id && !lineEnded(one))) {
    const followUp = live(rows, 'followUp', line.fromFollowUpId);
    if (followUp?.state === 'open') movePartsToFollowUp(rows, line.id, followUp.id);
    rows.change('workLine', line.id, { progress: 'dropped', endedAt: at.effectiveAt, endWords: words });
  }
  for (const part of openPartsOf(rows, job.id)) if (part.state === 'wanted') cancelPartLine(rows, at, part.id, words);
}

/**
 * A turn: the visit does not take place. One that is expected may always be called off; one that is here only while nothing
 * was done on it, from the yard. Follow-ups of the vehicle stay.
 */
export const cancelJob: CommandRule<'cancelJob'> = {
  needs: ({ jobId }) => ({ jobs: [jobId] }),
  decide(rows, { jobId, words }, at) {
    const job = live(rows, 'job', jobId);
    if (!job) return notThere('job', jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    const refused = againstIt(rows, job);
    if (refused) return refused;
    dropLines(rows, at, job, words);
    const endedAt = job.arrivedAt === null ? at.effectiveAt : leavePremises(rows, at, job.vehicleId);
    rows.change('job', jobId, { endedAt, endedHow: 'cancelled', endWords: words });
    return { facts: { jobId, vehicleId: job.vehicleId, number: job.number, wasHere: job.arrivedAt !== null } };
  },
};
