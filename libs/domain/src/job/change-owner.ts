import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';

/**
 * A turn on the vehicle: it has another owner from now on, who has its history too. Visits that are here or booked keep
 * the customer they were made for; what the owner before agreed to in advance for this vehicle ends, and calls about what
 * is outstanding on it go to the new one.
 */
export const changeOwner: CommandRule<'changeOwner'> = {
  needs: ({ vehicleId, customerId }) => ({ vehicles: [vehicleId], customers: [customerId] }),
  decide(rows, { vehicleId, customerId, words }, at) {
    const vehicle = live(rows, 'vehicle', vehicleId);
    if (!vehicle) return notThere('vehicle', vehicleId);
    const customer = live(rows, 'customer', customerId);
    if (!customer) return notThere('customer', customerId);
    if (customer.erasedAt !== null) return refuse('customer.erased', { customerId });
    if (vehicle.customerId === customerId) return refuse('vehicle.ownerAlready', { customerId });
    const beforeId = vehicle.customerId;
    rows.change('vehicle', vehicleId, { customerId });
    const of = { vehicleId, beforeId, afterId: customerId };
    const { id } = rows.add('ownerChange', { id: at.newId(), ...recordedBy(at), ...of, words: words ?? null });
    const given = rows.list(
      'standingGoAhead',
      (one) => one.vehicleId === vehicleId && one.customerId === beforeId && one.jobId === null && one.endedAt === null,
    );
    for (const standing of given) rows.change('standingGoAhead', standing.id, { endedAt: at.effectiveAt });
    const calls = rows.list(
      'call',
      (call) => call.vehicleId === vehicleId && call.jobId === null && call.endedAt === null,
    );
    for (const call of calls) if (call.customerId === beforeId) rows.change('call', call.id, { customerId });
    return { facts: of, created: { ownerChange: id } };
  },
};
