/** What a customer agrees to before anybody knows what it will be: up to an amount, for a visit, a vehicle, or all of theirs. */
import type { StandingFacts } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

export interface StandingOf {
  readonly customerId: string;
  readonly vehicleId: string | null;
  readonly jobId: string | null;
}

/** The row, where it may be given; also the check-in gives some. The amount is in the shop's currency. */
export function addStanding(
  rows: Rows,
  at: Circumstances,
  of: StandingOf,
  said: StandingFacts,
): Row<'standingGoAhead'> | Refused {
  const { standingGoAheadId = null, kind, upTo, orderNumber, byName, untilDay } = said;
  if (rows.find('standingGoAhead', standingGoAheadId)) return refuse('standing.alreadyThere', { standingGoAheadId });
  if (kind === 'fleetLimit' && orderNumber === undefined) return refuse('standing.orderNumberMissing');
  if (untilDay !== undefined && untilDay < todayOf(at)) return refuse('standing.dayPast', { untilDay });
  return rows.add('standingGoAhead', {
    id: standingGoAheadId ?? at.newId(),
    ...recordedBy(at),
    ...of,
    kind,
    upTo: canonical(upTo),
    orderNumber: orderNumber ?? null,
    byName,
    untilDay: untilDay ?? null,
    endedAt: null,
    endWords: null,
  });
}

/** A fact. The visit has to be open, and visit and vehicle this customer's. */
export const giveStandingGoAhead: CommandRule<'giveStandingGoAhead'> = {
  needs: ({ customerId, vehicleId, jobId, standingGoAheadId }) => ({
    customers: [customerId],
    tables: ['customer', 'standingGoAhead'],
    ...(vehicleId === undefined ? {} : { vehicles: [vehicleId] }),
    ...(jobId === undefined ? {} : { jobs: [jobId] }),
    ...(standingGoAheadId === undefined ? {} : { standingGoAheads: [standingGoAheadId] }),
  }),
  decide(rows, input, at) {
    const { customerId, vehicleId, jobId } = input;
    if (!live(rows, 'customer', customerId)) return notThere('customer', customerId);
    if (vehicleId !== undefined) {
      const vehicle = live(rows, 'vehicle', vehicleId);
      if (!vehicle) return notThere('vehicle', vehicleId);
      if (vehicle.customerId !== customerId)
        return refuse('standing.ofOtherCustomer', { table: 'vehicle', id: vehicleId });
    }
    if (jobId !== undefined) {
      const job = live(rows, 'job', jobId);
      if (!job) return notThere('job', jobId);
      if (job.customerId !== customerId) return refuse('standing.ofOtherCustomer', { table: 'job', id: jobId });
      if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
      const other = vehicleId !== undefined && job.vehicleId !== vehicleId;
      if (other) return refuse('standing.jobOfOtherVehicle', { number: job.number }, { table: 'job', id: jobId });
    }
    const of = { customerId, vehicleId: vehicleId ?? null, jobId: jobId ?? null };
    const standing = addStanding(rows, at, of, input);
    if (standing instanceof Refused) return standing;
    const facts = { ...of, standingGoAheadId: standing.id, kind: standing.kind };
    return { facts, created: { standingGoAhead: standing.id } };
  },
};

/** A turn: what rests on it already stays given. */
export const endStandingGoAhead: CommandRule<'endStandingGoAhead'> = {
  needs: ({ standingGoAheadId }) => ({ standingGoAheads: [standingGoAheadId], tables: ['standingGoAhead'] }),
  decide(rows, { standingGoAheadId, words }, at) {
    const standing = live(rows, 'standingGoAhead', standingGoAheadId);
    if (!standing) return notThere('standingGoAhead', standingGoAheadId);
    if (standing.endedAt !== null) return refuse('standing.ended', { standingGoAheadId });
    rows.change('standingGoAhead', standing.id, { endedAt: at.effectiveAt, endWords: words });
    return { facts: { customerId: standing.customerId, standingGoAheadId } };
  },
};
