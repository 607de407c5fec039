import type { CheckIn } from '../inputs.js';
import { type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Slices } from '../kernel/slices.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { earliest } from '../timeline/timeline.js';
import { type Party, partyOf } from './customer-and-contact.js';
import { odometerUnitOf, recordOdometer } from './odometer.js';
import { promisedTooEarly } from './promised-time.js';

const jobCounter = 'job';

function neededBy(input: CheckIn): Slices {
  return {
    vehicles: [input.vehicleId],
    counter: true,
    ...(input.jobId === undefined ? {} : { jobs: [input.jobId] }),
    ...(input.customerId === undefined ? {} : { customers: [input.customerId] }),
    ...(input.comebackOfLineId === undefined ? {} : { lines: [input.comebackOfLineId] }),
  };
}

function kindOf(input: CheckIn): Row<'job'>['kind'] {
  return input.kind ?? (input.comebackOfLineId === undefined ? 'normal' : 'comeback');
}

function refusedVisit(rows: Rows, input: CheckIn, at: Circumstances): Refused | null {
  const { jobId, vehicleId, comebackOfLineId } = input;
  if (rows.find('job', jobId)) return refuse('job.alreadyThere', { jobId: jobId ?? null });
  const here = openJobOf(rows, vehicleId);
  if (here) {
    return refuse('job.alreadyHere', { number: here.number, jobId: here.id }, { table: 'job', id: here.id });
  }
  if (kindOf(input) === 'comeback' && comebackOfLineId === undefined) return refuse('job.comebackLineMissing');
  const missing = absent(rows, { workLine: comebackOfLineId });
  if (missing) return missing;
  const line = rows.find('workLine', comebackOfLineId);
  if (line && line.vehicleId !== vehicleId) return refuse('job.comebackOfOtherVehicle', { lineId: line.id });
  return promisedTooEarly(input.promisedAt, at);
}

/** The next number of the shop. The counter stands at the last number given. */
function nextNumber(rows: Rows, at: Circumstances): number {
  const counter = rows.list('counter', (one) => one.name === jobCounter)[0];
  if (!counter) return rows.add('counter', { id: at.newId(), name: jobCounter, value: 1 }).value;
  return rows.change('counter', counter.id, { value: counter.value + 1 }).value;
}

function addConcerns(rows: Rows, at: Circumstances, jobId: string, concerns: CheckIn['concerns']): Refused | null {
  for (const [index, { concernId, words, conditions }] of concerns.entries()) {
    if (rows.find('concern', concernId)) return refuse('concern.alreadyThere', { concernId: concernId ?? null });
    rows.add('concern', {
      id: concernId ?? at.newId(),
      ...recordedBy(at),
      jobId,
      position: index + 1,
      words,
      conditions: conditions ?? null,
      outcome: null,
      outcomeConditions: null,
      outcomeWords: null,
      outcomeAt: null,
      outcomeById: null,
    });
  }
  return null;
}

/** The vehicle as it stands at the desk: who it belongs to, where nobody had said so yet, and how it moves. */
function updateVehicle(rows: Rows, input: CheckIn, vehicle: Row<'vehicle'>, party: Party): Row<'vehicle'> {
  const customerId = vehicle.customerId ?? party.customerId;
  const rolls = input.rolls ?? vehicle.rolls;
  const mayBeDriven = input.mayBeDriven ?? vehicle.mayBeDriven;
  const asItWas = customerId === vehicle.customerId && rolls === vehicle.rolls && mayBeDriven === vehicle.mayBeDriven;
  return asItWas ? vehicle : rows.change('vehicle', vehicle.id, { customerId, rolls, mayBeDriven });
}

function addJob(rows: Rows, input: CheckIn, at: Circumstances, party: Party): Row<'job'> {
  const { vehicleId, odometer } = input;
  const unreadable = odometer?.source === 'notReadable';
  return rows.add('job', {
    id: input.jobId ?? at.newId(),
    ...recordedBy(at),
    number: nextNumber(rows, at),
    vehicleId,
    ...party,
    kind: kindOf(input),
    comebackOfLineId: input.comebackOfLineId ?? null,
    checkedInAt: at.effectiveAt,
    promisedAt: input.promisedAt ?? null,
    waitsHere: input.waitsHere ?? false,
    keyTag: input.keyTag ?? null,
    boardNote: input.boardNote ?? null,
    odometerIn: unreadable ? null : (odometer?.value ?? null),
    odometerOut: null,
    odometerUnit: odometer?.unit ?? odometerUnitOf(rows, vehicleId),
    storedHere: false,
    endedAt: null,
    leftBy: null,
  });
}

/** It stands in the yard from now on, brought in as well as it can move. */
function putInYard(rows: Rows, input: CheckIn, at: Circumstances, job: Row<'job'>, vehicle: Row<'vehicle'>): void {
  rows.add('place', {
    id: at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: vehicle.id,
    kind: 'yard',
    bayId: null,
    spot: null,
    yardSpot: input.yardSpot ?? null,
    movedHow: vehicle.mayBeDriven ? 'driven' : vehicle.rolls ? 'rolled' : 'towed',
    movedByName: null,
    loaded: null,
    loadKg: null,
    loadAnsweredById: null,
    fromAt: earliest(placesOfVehicle(rows, vehicle.id), at.effectiveAt),
    toAt: null,
  });
}

/**
 * A claim: a vehicle comes in. Refused while it is here on an open job, without a customer (but for an internal job), and
 * for a promised time before now (epoch ms). Odometer, VIN and mass stop nothing (rule 15).
 */
export const checkIn: CommandRule<'checkIn'> = {
  needs: neededBy,
  decide: (rows, input, at): Outcome | Refused => {
    const vehicle = live(rows, 'vehicle', input.vehicleId);
    if (!vehicle) return notThere('vehicle', input.vehicleId);
    const refused = refusedVisit(rows, input, at);
    if (refused) return refused;
    const party = partyOf(rows, input, at, vehicle, kindOf(input));
    if (party instanceof Refused) return party;
    const job = addJob(rows, input, at, party);
    const concernTwice = addConcerns(rows, at, job.id, input.concerns);
    if (concernTwice) return concernTwice;
    const { odometer } = input;
    if (odometer) {
      recordOdometer(
        rows,
        at,
        { vehicleId: vehicle.id, jobId: job.id },
        { ...odometer, value: odometer.value ?? null },
      );
    }
    putInYard(rows, input, at, job, updateVehicle(rows, input, vehicle, party));
    return {
      facts: {
        jobId: job.id,
        vehicleId: vehicle.id,
        number: job.number,
        kind: job.kind,
        concerns: input.concerns.length,
      },
      created: {
        job: job.id,
        ...(input.customer && party.customerId !== null ? { customer: party.customerId } : {}),
        ...(input.contact && party.contactId !== null ? { contact: party.contactId } : {}),
      },
    };
  },
};
