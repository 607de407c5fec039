/** One piece of work for a visit. Work that was outstanding brings the part lines that wait for it along. */
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { AddLine } from '../inputs.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import { newLine } from './new-line.js';
import { isOpenPart, movePart } from './parts-of-line.js';

export const addLine: CommandRule<'addLine'> = {
  needs: ({ jobId, fromFollowUpId }) => ({ jobs: [jobId], ...(fromFollowUpId ? { followUps: [fromFollowUpId] } : {}) }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const { job, vehicle } = visit;
    if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
    const refused = badReference(rows, input, visit);
    if (refused) return refused;
    const line = rows.add('workLine', newLine(rows, at, job, input));
    if (input.fromFollowUpId !== undefined) {
      const waiting = rows.list('partLine', (part) => part.followUpId === input.fromFollowUpId && isOpenPart(part));
      for (const part of waiting) movePart(rows, part, { jobId: job.id, lineId: line.id, followUpId: null });
    }
    return {
      facts: { jobId: job.id, vehicleId: vehicle.id, lineId: line.id, followUpId: line.fromFollowUpId },
      created: { workLine: line.id },
    };
  },
};

/** References are part of the form: what they name has to be there, on this visit and open. */
function badReference(rows: Rows, input: AddLine, visit: Visit): Refused | null {
  if (input.lineId !== undefined && rows.find('workLine', input.lineId)) {
    return refuse('work.alreadyRecorded', { table: 'workLine', id: input.lineId });
  }
  const named = [
    ['concern', input.concernId],
    ['finding', input.findingId],
    ['cause', input.causeId],
    ['workLine', input.afterLineId],
  ] as const;
  for (const [table, id] of named) {
    if (id === undefined) continue;
    const row = live(rows, table, id);
    if (!row) return notThere(table, id);
    if (row.jobId !== visit.job.id) return refuse('work.otherJob', { table, id });
  }
  return input.fromFollowUpId === undefined ? null : badFollowUp(rows, input.fromFollowUpId, visit);
}

function badFollowUp(rows: Rows, followUpId: string, { job, vehicle }: Visit): Refused | null {
  const followUp = live(rows, 'followUp', followUpId);
  if (followUp?.vehicleId !== vehicle.id) return notThere('followUp', followUpId);
  const [earlier] = rows.list(
    'workLine',
    (line) => line.jobId === job.id && line.fromFollowUpId === followUpId && line.progress !== 'dropped',
  );
  if (followUp.state === 'open' && !earlier) return null;
  return refuse('work.followUpTaken', {}, earlier && { table: 'workLine', id: earlier.id });
}
