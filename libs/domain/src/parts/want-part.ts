import type { WantPart } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { recordedBy } from '../kernel/decision.js';
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

/** A fact. The part line belongs to the vehicle and has one purpose; wanting it opens no hold by itself (rule 6). */
export const wantPart: CommandRule<'wantPart'> = {
  needs: ({ lineId, followUpId }) => ({
    ...(lineId === undefined ? {} : { lines: [lineId] }),
    ...(followUpId === undefined ? {} : { followUps: [followUpId] }),
  }),
  decide: (rows, input, at) => {
    const refused = refusedWanting(rows, input);
    if (refused) return refused;
    const line = rows.find('workLine', input.lineId);
    const vehicleId = line?.vehicleId ?? rows.find('followUp', input.followUpId)?.vehicleId ?? '';
    const partLineId = input.partLineId ?? at.newId();
    rows.add('partLine', {
      id: partLineId,
      ...recordedBy(at),
      vehicleId,
      jobId: line?.jobId ?? null,
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
    const facts = { jobId: line?.jobId ?? null, vehicleId, partLineId, needed: input.needed };
    return { facts, created: { partLine: partLineId } };
  },
};
