/** One piece of work for a visit. Work that was outstanding brings the part lines that wait for it along. */
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { AddLine } from '../inputs.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import type { jobKinds, payers } from '../tables/words.js';
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
    const line = rows.add('workLine', lineRow(rows, input, at, visit));
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

/** Who pays where nothing is said. */
function usualPayer(kind: (typeof jobKinds)[number]): (typeof payers)[number] {
  switch (kind) {
    case 'normal':
      return 'customer';
    case 'guarantee':
      return 'guarantee';
    case 'comeback':
    case 'internal':
      return 'shop';
  }
}

function lineRow(
  rows: Rows,
  input: AddLine,
  at: Circumstances,
  { job, vehicle }: Visit,
): Omit<Row<'workLine'>, 'version' | 'void'> {
  const lines = rows.list('workLine', (line) => line.jobId === job.id);
  return {
    id: input.lineId ?? at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: vehicle.id,
    position: Math.max(0, ...lines.map((line) => line.position)) + 1,
    title: input.title,
    bookMinutes: input.bookMinutes ?? null,
    equipment: input.equipment ?? null,
    skill: input.skill ?? null,
    payer: input.payer ?? usualPayer(job.kind),
    concernId: input.concernId ?? null,
    findingId: input.findingId ?? null,
    price: input.price === undefined ? null : canonical(input.price),
    choiceId: input.choiceId ?? null,
    afterLineId: input.afterLineId ?? null,
    progress: 'planned',
    goAhead: 'withCustomer',
    goAheadUpTo: null,
    fromFollowUpId: input.fromFollowUpId ?? null,
    toFollowUpId: null,
    startedAt: null,
    endedAt: null,
    endWords: null,
    handover: null,
  };
}
