import type { ReceiveParts } from '../inputs.js';
import { canonical, compare, minus, plus } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { absent } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { countedPieces, stateOf } from './pieces.js';

type Item = ReceiveParts['items'][number];

function refusedDelivery(rows: Rows, input: ReceiveParts): Refused | null {
  const { deliveryId, supplierId, orderId, items } = input;
  if (deliveryId !== undefined && rows.find('delivery', deliveryId)) {
    return refuse('parts.alreadyThere', { table: 'delivery', id: deliveryId });
  }
  return absent(rows, { supplier: supplierId, partsOrder: orderId, partLine: items.map((item) => item.partLineId) });
}

function addArrival(rows: Rows, at: Circumstances, deliveryId: string, item: Item): void {
  rows.add('arrival', {
    id: at.newId(),
    ...recordedBy(at),
    deliveryId,
    partLineId: item.partLineId,
    quantity: canonical(item.quantity),
    verdict: item.verdict,
    foundAtVehicle: item.foundAtVehicle ?? false,
    bin: item.bin ?? null,
    words: item.words ?? null,
  });
}

/** Counts the part line anew and gives it the state that follows. */
function recount(rows: Rows, at: Circumstances, part: Row<'partLine'>, bin: string | undefined): void {
  const pieces = countedPieces(rows, part);
  const state = stateOf(part, pieces);
  const endedAt = state === 'cancelled' ? part.endedAt : state === 'fitted' ? (part.endedAt ?? at.effectiveAt) : null;
  rows.change('partLine', part.id, { ...pieces, state, endedAt, ...(bin === undefined ? {} : { bin }) });
  const before = plus(part.here, part.fitted);
  const now = plus(pieces.here, pieces.fitted);
  if (compare(now, before) <= 0 || compare(now, part.quantity) <= 0) return;
  const { jobId, vehicleId } = part;
  flag(rows, at, 'parts.more', { jobId, vehicleId }, { partLineId: part.id, more: minus(now, part.quantity) });
}

/**
 * A fact, also for vehicles that have left. Good and accepted pieces count as here; damaged and wrong ones do not, and
 * found at the vehicle they take back what had been counted (found there and accepted changes no count). More than was
 * asked for is recorded and flagged. Quantities are in the unit of their part line. Which holds that ends or opens again
 * is settled afterwards.
 */
export const receiveParts: CommandRule<'receiveParts'> = {
  needs: (input) => ({
    partLines: input.items.map((item) => item.partLineId),
    ...(input.orderId === undefined ? {} : { orders: [input.orderId] }),
  }),
  decide: (rows, input, at) => {
    const refused = refusedDelivery(rows, input);
    if (refused) return refused;
    const deliveryId = input.deliveryId ?? at.newId();
    rows.add('delivery', {
      id: deliveryId,
      ...recordedBy(at),
      supplierId: input.supplierId ?? rows.find('partsOrder', input.orderId)?.supplierId ?? null,
      orderId: input.orderId ?? null,
      note: input.note ?? null,
    });
    const bins = new Map<string, string | undefined>();
    for (const item of input.items) {
      addArrival(rows, at, deliveryId, item);
      bins.set(item.partLineId, item.bin ?? bins.get(item.partLineId));
    }
    for (const [partLineId, bin] of bins) recount(rows, at, rows.get('partLine', partLineId), bin);
    const bad = input.items.filter((item) => item.verdict === 'damaged' || item.verdict === 'wrong');
    return { facts: { deliveryId, parts: bins.size, bad: bad.length }, created: { delivery: deliveryId } };
  },
};
