import type { WantPart } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { absent } from '../questions/references.js';

function refusedWanting(rows: Rows, input: WantPart): Refused | null {
  const { partLineId, lineId, followUpId, supplierId } = input;
  if ((lineId === undefined) === (followUpId === undefined)) return refuse('parts.purposeNotOne');
  if (partLineId !== undefined && rows.find('partLine', partLineId)) {
    return refuse('parts.alreadyThere', { table: 'partLine', id: partLineId });
  }
  return absent(rows, { workLine: lineId, followUp: followUpId, supplier: supplierId });
}

function want(rows: Rows, input: WantPart, at: Circumstances): Outcome {
  const line = rows.find('workLine', input.lineId);
  const { vehicleId } = line ?? rows.get('followUp', input.followUpId ?? '');
  const jobId = line?.jobId ?? null;
  const partLineId = input.partLineId ?? at.newId();
  rows.add('partLine', {
    id: partLineId,
    ...recordedBy(at),
    ...{ vehicleId, jobId },
    lineId: line?.id ?? null,
    followUpId: input.followUpId ?? null,
    number: input.number ?? null,
    description: input.description,
    quantity: canonical(input.quantity),
    unit: input.unit ?? 'piece',
    unitPrice: input.unitPrice === undefined ? null : canonical(input.unitPrice),
    needed: input.needed,
    source: 'supplier',
    supplierId: input.supplierId ?? null,
    orderId: null,
    state: 'wanted',
    here: '0',
    fitted: '0',
    bin: null,
    dueOn: null,
    dueState: null,
    endWords: null,
    endedAt: null,
  });
  return { facts: { jobId, vehicleId, partLineId, needed: input.needed }, created: { partLine: partLineId } };
}

/**
 * A fact: a quantity in the unit said (pieces where none is), a price per unit in the shop's currency. The part line
 * belongs to the vehicle and has one purpose; wanting it opens no hold by itself (rule 6).
 */
export const wantPart: CommandRule<'wantPart'> = {
  needs: ({ lineId, followUpId }) => ({
    ...(lineId === undefined ? {} : { lines: [lineId] }),
    ...(followUpId === undefined ? {} : { followUps: [followUpId] }),
  }),
  decide: (rows, input, at) => refusedWanting(rows, input) ?? want(rows, input, at),
};
