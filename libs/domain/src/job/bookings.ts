/** Visits that are expected: booked, put off, called off, and those that arrive before anybody checks them in. */
import type { BookJob } from '../inputs.js';
import type { Circumstances, Outcome } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { newLine } from '../work/new-line.js';
import { putInYard } from './check-in.js';
import { type Party, partyOf } from './customer-and-contact.js';
import { addConcerns, emptyVisit, kindOf, refusedVisit } from './new-visit.js';
import { odometerUnitOf } from './odometer.js';
import { promisedTooEarly } from './promised-time.js';

/** Today is not over yet, whatever hour was named. Epoch ms; days of the shop's zone. */
function expectedTooEarly(expectedAt: number, at: Circumstances): Refused | null {
  if (at.calendar.dateOf(expectedAt) >= todayOf(at)) return null;
  return refuse('job.expectedInPast', { expectedAt: new Date(expectedAt).toISOString() });
}

function addLines(
  rows: Rows,
  at: Circumstances,
  job: Row<'job'>,
  lines: NonNullable<BookJob['lines']>,
): Refused | null {
  for (const line of lines) {
    const { lineId = null } = line;
    if (rows.find('workLine', lineId)) return refuse('work.alreadyRecorded', { table: 'workLine', id: lineId });
    rows.add('workLine', newLine(rows, at, job, line));
  }
  return null;
}

function addBooked(rows: Rows, at: Circumstances, input: BookJob, party: Party): Row<'job'> {
  return rows.add('job', {
    ...emptyVisit(rows, at, input),
    ...party,
    expectedAt: input.expectedAt,
    waitsHere: input.waitsHere ?? false,
    boardNote: input.boardNote ?? null,
    odometerUnit: odometerUnitOf(rows, input.vehicleId),
  });
}

/** A claim: a visit is expected. A vehicle may be booked several times, and while it is here for another visit. */
export const bookJob: CommandRule<'bookJob'> = {
  needs: (input) => ({
    vehicles: [input.vehicleId],
    counter: true,
    ...(input.jobId === undefined ? {} : { jobs: [input.jobId] }),
    ...(input.customerId === undefined ? {} : { customers: [input.customerId] }),
    ...(input.comebackOfLineId === undefined ? {} : { lines: [input.comebackOfLineId] }),
  }),
  decide(rows, input, at) {
    const vehicle = live(rows, 'vehicle', input.vehicleId);
    if (!vehicle) return notThere('vehicle', input.vehicleId);
    const refused = refusedVisit(rows, input, at) ?? expectedTooEarly(input.expectedAt, at);
    if (refused) return refused;
    const party = partyOf(rows, input, at, vehicle, kindOf(input));
    if (party instanceof Refused) return party;
    const job = addBooked(rows, at, input, party);
    if (vehicle.customerId === null && party.customerId !== null) {
      rows.change('vehicle', vehicle.id, { customerId: party.customerId });
    }
    const wrong = addConcerns(rows, at, job.id, input.concerns ?? []) ?? addLines(rows, at, job, input.lines ?? []);
    if (wrong) return wrong;
    return outcomeOf(input, job, at.calendar.dateOf(input.expectedAt));
  },
};

function outcomeOf(input: BookJob, job: Row<'job'>, day: string): Outcome {
  const { id: jobId, vehicleId, number, kind, customerId, contactId } = job;
  return {
    facts: { jobId, vehicleId, number, kind, day },
    created: {
      job: jobId,
      ...(input.customer && customerId !== null ? { customer: customerId } : {}),
      ...(input.contact && contactId !== null ? { contact: contactId } : {}),
    },
  };
}

/** The visit, while it is only expected. */
function expected(rows: Rows, jobId: string): Row<'job'> | Refused {
  const job = live(rows, 'job', jobId);
  if (!job) return notThere('job', jobId);
  if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
  return job.arrivedAt === null ? job : refuse('job.alreadyHere', { number: job.number, jobId });
}

/** A turn on a visit that has not come yet. Instants are epoch ms. */
export const changeBooking: CommandRule<'changeBooking'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: [] }),
  decide(rows, { jobId, expectedAt, promisedAt, waitsHere }, at) {
    const job = expected(rows, jobId);
    if (job instanceof Refused) return job;
    const refused =
      (expectedAt === undefined ? null : expectedTooEarly(expectedAt, at)) ?? promisedTooEarly(promisedAt, at);
    if (refused) return refused;
    rows.change('job', jobId, {
      ...(expectedAt === undefined ? {} : { expectedAt }),
      ...(promisedAt === undefined ? {} : { promisedAt }),
      ...(waitsHere === undefined ? {} : { waitsHere }),
    });
    const dayOf = (instant: number | null) => (instant === null ? null : at.calendar.dateOf(instant));
    return { facts: { jobId, before: dayOf(job.expectedAt), day: dayOf(expectedAt ?? job.expectedAt) } };
  },
};

/**
 * A fact: it stands here, and nobody has checked it in. One vehicle cannot be here on two visits: then the other one has to
 * be ended, or this one called off, first.
 */
export const recordArrival: CommandRule<'recordArrival'> = {
  needs: ({ jobId }) => ({ jobs: [jobId] }),
  decide(rows, input, at) {
    const job = expected(rows, input.jobId);
    if (job instanceof Refused) return job;
    const here = openJobOf(rows, job.vehicleId);
    if (here) {
      return refuse('job.alreadyHere', { number: here.number, jobId: here.id }, { table: 'job', id: here.id });
    }
    if (rows.find('place', input.placeId)) return refuse('place.alreadyRecorded', { placeId: input.placeId ?? null });
    const arrived = rows.change('job', job.id, { arrivedAt: at.effectiveAt, keyTag: input.keyTag ?? job.keyTag });
    const place = putInYard(rows, at, arrived, rows.get('vehicle', job.vehicleId), input);
    return {
      facts: { jobId: job.id, vehicleId: job.vehicleId, number: job.number },
      created: { place: place.id },
    };
  },
};
