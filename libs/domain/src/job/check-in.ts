import { addStanding } from '../customer/standing-go-aheads.js';
import type { CheckIn } from '../inputs.js';
import { type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Slices } from '../kernel/slices.js';
import { notUnderWay } from '../place/move-vehicle.js';
import { live, openJobOf, placeOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { earliest } from '../timeline/timeline.js';
import { type Party, partyOf } from './customer-and-contact.js';
import { addConcerns, emptyVisit, kindOf, refusedVisit } from './new-visit.js';
import { odometerUnitOf, recordOdometer } from './odometer.js';

function neededBy(input: CheckIn): Slices {
  const jobs = [input.jobId, input.expectedJobId].filter((id) => id !== undefined);
  return {
    vehicles: [input.vehicleId],
    counter: true,
    ...(jobs.length === 0 ? {} : { jobs }),
    ...(input.customerId === undefined ? {} : { customers: [input.customerId] }),
    ...(input.comebackOfLineId === undefined ? {} : { lines: [input.comebackOfLineId] }),
  };
}

/** The booked visit that begins, where one is named: not checked in yet, and of this vehicle. */
function bookedVisit(rows: Rows, input: CheckIn): Row<'job'> | null | Refused {
  const { expectedJobId, vehicleId } = input;
  if (expectedJobId === undefined) return null;
  const job = live(rows, 'job', expectedJobId);
  if (job?.vehicleId !== vehicleId) return notThere('job', expectedJobId);
  if (job.endedAt !== null) return refuse('job.calledOff', { number: job.number });
  return job.checkedInAt === null ? job : refuse('job.alreadyHere', { number: job.number, jobId: job.id });
}

/** The vehicle is here on another visit; one visit at a time is on the premises. */
function hereAlready(rows: Rows, input: CheckIn, booked: Row<'job'> | null): Refused | null {
  const here = openJobOf(rows, input.vehicleId);
  if (!here || here.id === booked?.id) return null;
  return refuse('job.alreadyHere', { number: here.number, jobId: here.id }, { table: 'job', id: here.id });
}

/** The vehicle as it stands at the desk: who it belongs to, where nobody had said so yet, and how it moves. */
function updateVehicle(rows: Rows, input: CheckIn, vehicle: Row<'vehicle'>, party: Party): Row<'vehicle'> {
  const customerId = vehicle.customerId ?? party.customerId;
  const rolls = input.rolls ?? vehicle.rolls;
  const mayBeDriven = input.mayBeDriven ?? vehicle.mayBeDriven;
  const asItWas = customerId === vehicle.customerId && rolls === vehicle.rolls && mayBeDriven === vehicle.mayBeDriven;
  return asItWas ? vehicle : rows.change('vehicle', vehicle.id, { customerId, rolls, mayBeDriven });
}

/** What the check-in says of the visit; what it leaves out stays as it was booked. */
function saidAtTheDesk(
  rows: Rows,
  input: CheckIn,
  party: Party,
  before: Pick<Row<'job'>, 'promisedAt' | 'waitsHere' | 'keyTag' | 'boardNote'>,
) {
  const { odometer } = input;
  return {
    ...party,
    promisedAt: input.promisedAt ?? before.promisedAt,
    waitsHere: input.waitsHere ?? before.waitsHere,
    keyTag: input.keyTag ?? before.keyTag,
    boardNote: input.boardNote ?? before.boardNote,
    odometerIn: odometer === undefined || odometer.source === 'notReadable' ? null : (odometer.value ?? null),
    odometerUnit: odometer?.unit ?? odometerUnitOf(rows, input.vehicleId),
  };
}

function kindAtTheDesk(input: CheckIn, booked: Row<'job'> | null): Row<'job'>['kind'] {
  const silent = input.kind === undefined && input.comebackOfLineId === undefined;
  return booked && silent ? booked.kind : kindOf(input);
}

/** A booked comeback has its line; saying "comeback" again at the desk asks for no other one. */
function withBookedLine(input: CheckIn, booked: Row<'job'> | null): CheckIn {
  const named = booked !== null && booked.comebackOfLineId !== null && input.kind === 'comeback';
  return named ? { ...input, kind: undefined } : input;
}

/** Who is said now counts; who is not said stays as it was booked, the contact while the customer does. */
function partyAtTheDesk(
  rows: Rows,
  input: CheckIn,
  at: Circumstances,
  vehicle: Row<'vehicle'>,
  booked: Row<'job'> | null,
): Party | Refused {
  const kind = kindAtTheDesk(input, booked);
  if (!booked) return partyOf(rows, input, at, vehicle, kind);
  const { customer, contact } = input;
  const customerId = input.customerId ?? (customer ? undefined : (booked.customerId ?? undefined));
  const party = partyOf(rows, { customer, contact, customerId, contactId: input.contactId }, at, vehicle, kind);
  if (party instanceof Refused || party.contactId !== null || party.customerId !== booked.customerId) return party;
  return { customerId: party.customerId, contactId: booked.contactId };
}

/** A new visit, or the booked one with its number, lines and concerns. */
function beginVisit(
  rows: Rows,
  input: CheckIn,
  at: Circumstances,
  party: Party,
  booked: Row<'job'> | null,
): Row<'job'> {
  if (booked) {
    return rows.change('job', booked.id, {
      ...saidAtTheDesk(rows, input, party, booked),
      kind: kindAtTheDesk(input, booked),
      comebackOfLineId: input.comebackOfLineId ?? booked.comebackOfLineId,
      arrivedAt: booked.arrivedAt ?? at.effectiveAt,
      checkedInAt: at.effectiveAt,
    });
  }
  const empty = emptyVisit(rows, at, input);
  const said = saidAtTheDesk(rows, input, party, empty);
  return rows.add('job', { ...empty, ...said, arrivedAt: at.effectiveAt, checkedInAt: at.effectiveAt });
}

/** It stands in the yard from now on, brought in as well as it can move. */
export function putInYard(
  rows: Rows,
  at: Circumstances,
  job: Row<'job'>,
  vehicle: Row<'vehicle'>,
  said: { readonly placeId?: string | undefined; readonly yardSpot?: string | undefined },
): Row<'place'> {
  return rows.add('place', {
    id: said.placeId ?? at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: vehicle.id,
    kind: 'yard',
    bayId: null,
    spot: null,
    yardSpot: said.yardSpot ?? null,
    movedHow: vehicle.mayBeDriven ? 'driven' : vehicle.rolls ? 'rolled' : 'towed',
    movedByName: null,
    loaded: null,
    loadKg: null,
    loadAnsweredById: null,
    ...notUnderWay,
    fromAt: earliest(placesOfVehicle(rows, vehicle.id), at.effectiveAt),
    toAt: null,
  });
}

/** One that had arrived stands where it stands; the desk may say its spot now. */
function stand(rows: Rows, input: CheckIn, at: Circumstances, job: Row<'job'>, vehicle: Row<'vehicle'>): void {
  const place = placeOf(rows, job.id);
  if (!place) putInYard(rows, at, job, vehicle, input);
  else if (place.kind === 'yard' && input.yardSpot !== undefined) {
    rows.change('place', place.id, { yardSpot: input.yardSpot });
  }
}

function addStandings(rows: Rows, input: CheckIn, at: Circumstances, job: Row<'job'>): Refused | null {
  for (const said of input.standingGoAheads ?? []) {
    if (job.customerId === null) return refuse('job.customerMissing');
    const of = { customerId: job.customerId, vehicleId: null, jobId: said.kind === 'fleetLimit' ? null : job.id };
    const standing = addStanding(rows, at, of, said);
    if (standing instanceof Refused) return standing;
  }
  return null;
}

/**
 * A claim: a vehicle comes in, unexpected or on a visit that was booked. Refused while it is here on another visit, without
 * a customer (but for an internal job), without anything reported, and for a promised time before now (epoch ms).
 * Odometer, VIN and mass stop nothing (rule 15).
 */
export const checkIn: CommandRule<'checkIn'> = {
  needs: neededBy,
  decide: (rows, input, at): Outcome | Refused => {
    const vehicle = live(rows, 'vehicle', input.vehicleId);
    if (!vehicle) return notThere('vehicle', input.vehicleId);
    const booked = bookedVisit(rows, input);
    if (booked instanceof Refused) return booked;
    const refused = hereAlready(rows, input, booked) ?? refusedVisit(rows, withBookedLine(input, booked), at);
    if (refused) return refused;
    const party = partyAtTheDesk(rows, input, at, vehicle, booked);
    if (party instanceof Refused) return party;
    const job = beginVisit(rows, input, at, party, booked);
    const wrong = addConcerns(rows, at, job.id, input.concerns) ?? addStandings(rows, input, at, job);
    if (wrong) return wrong;
    if (rows.list('concern', (one) => one.jobId === job.id).length === 0) return refuse('job.concernMissing');
    const { odometer } = input;
    if (odometer) {
      const of = { vehicleId: vehicle.id, jobId: job.id };
      recordOdometer(rows, at, of, { ...odometer, value: odometer.value ?? null });
    }
    stand(rows, input, at, job, updateVehicle(rows, input, vehicle, party));
    return outcomeOf(rows, input, job);
  },
};

function outcomeOf(rows: Rows, input: CheckIn, job: Row<'job'>): Outcome {
  const concerns = rows.list('concern', (one) => one.jobId === job.id).length;
  const { id: jobId, vehicleId, number, kind } = job;
  return {
    facts: { jobId, vehicleId, number, kind, concerns },
    created: {
      job: jobId,
      ...(input.customer && job.customerId !== null ? { customer: job.customerId } : {}),
      ...(input.contact && job.contactId !== null ? { contact: job.contactId } : {}),
    },
  };
}
