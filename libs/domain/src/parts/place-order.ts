import type { PlaceOrder } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import { addDueIn, refusedDue } from './due-in.js';

type OrderedLine = PlaceOrder['lines'][number];

function refusalsOfLine(rows: Rows, { partLineId, version, due }: OrderedLine): readonly Refusal[] {
  const part = live(rows, 'partLine', partLineId);
  if (!part) return notThere('partLine', partLineId).refusals;
  const way = { table: 'partLine', id: partLineId } as const;
  const found: Refusal[] = [];
  if (version !== undefined && version !== part.version) {
    found.push({ code: 'row.stale', facts: { ...way, version, current: part.version }, way });
  }
  if (part.state !== 'wanted') found.push({ code: 'parts.notToOrder', facts: { partLineId, state: part.state }, way });
  return [...found, ...((due && refusedDue(due)?.refusals) ?? [])];
}

/** All reasons at once: an order has many lines, and its sender corrects them together. */
function refusedOrder(rows: Rows, input: PlaceOrder): Refused | null {
  const { orderId, supplierId, lines } = input;
  if (orderId !== undefined && rows.find('partsOrder', orderId)) {
    return refuse('parts.alreadyThere', { table: 'partsOrder', id: orderId });
  }
  const missing = absent(rows, { supplier: supplierId });
  if (missing) return missing;
  const refusals = lines.flatMap((line) => refusalsOfLine(rows, line));
  const ids = lines.map((line) => line.partLineId);
  const twice = new Set(ids.filter((id, n) => ids.indexOf(id) !== n));
  for (const partLineId of twice) refusals.push({ code: 'parts.namedTwice', facts: { partLineId } });
  return refusals.length > 0 ? new Refused(refusals) : null;
}

function orderLine(
  rows: Rows,
  at: Circumstances,
  line: OrderedLine,
  order: { orderId: string; supplierId: string },
): void {
  const part = rows.change('partLine', line.partLineId, {
    ...order,
    state: 'ordered',
    ...(line.unitPrice === undefined ? {} : { unitPrice: canonical(line.unitPrice) }),
  });
  if (line.due) addDueIn(rows, at, part, line.due);
}

/**
 * A claim: wanted part lines, of one or more vehicles, go to one supplier under one reference; prices in the shop's
 * currency per unit. Refused are lines that are not wanted (any more), stale, or named twice.
 */
export const placeOrder: CommandRule<'placeOrder'> = {
  needs: (input) => ({
    partLines: input.lines.map((line) => line.partLineId),
    ...(input.orderId === undefined ? {} : { orders: [input.orderId] }),
  }),
  decide: (rows, input, at) => {
    const refused = refusedOrder(rows, input);
    if (refused) return refused;
    const { supplierId, lines } = input;
    const orderId = input.orderId ?? at.newId();
    rows.add('partsOrder', {
      id: orderId,
      ...recordedBy(at),
      supplierId,
      reference: input.reference,
      words: input.words ?? null,
    });
    for (const line of lines) orderLine(rows, at, line, { orderId, supplierId });
    return { facts: { orderId, supplierId, parts: lines.length }, created: { partsOrder: orderId } };
  },
};
