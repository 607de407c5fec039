import type { AddLine } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { jobKinds, payers } from '../tables/words.js';

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

/** A line as it comes into being: after those that the visit has, planned, and the customer not asked yet. */
export function newLine(
  rows: Rows,
  at: Circumstances,
  job: Pick<Row<'job'>, 'id' | 'kind' | 'vehicleId'>,
  input: Omit<AddLine, 'jobId'>,
): Omit<Row<'workLine'>, 'version' | 'void'> {
  const lines = rows.list('workLine', (line) => line.jobId === job.id);
  return {
    id: input.lineId ?? at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: job.vehicleId,
    position: Math.max(0, ...lines.map((line) => line.position)) + 1,
    title: input.title,
    bookMinutes: input.bookMinutes ?? null,
    equipment: input.equipment ?? null,
    skill: input.skill ?? null,
    payer: input.payer ?? usualPayer(job.kind),
    concernId: input.concernId ?? null,
    findingId: input.findingId ?? null,
    causeId: input.causeId ?? null,
    price: input.price === undefined ? null : canonical(input.price),
    choiceId: input.choiceId ?? null,
    afterLineId: input.afterLineId ?? null,
    progress: 'planned',
    goAhead: 'withCustomer',
    goAheadUpTo: null,
    standingId: null,
    withdrawnAt: null,
    fromFollowUpId: input.fromFollowUpId ?? null,
    toFollowUpId: null,
    startedAt: null,
    endedAt: null,
    endWords: null,
    handover: null,
  };
}
