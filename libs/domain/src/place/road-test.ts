/** A vehicle goes on a road test and comes back: who drives, the readings, and whether its spot is kept meanwhile. */
import { againstAct, flagAct } from '../cautions/against-cautions.js';
import { againstWheels } from '../cautions/wheels-against.js';
import type { TakeOnRoadTest } from '../inputs.js';
import type { Circumstances, Outcome } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { recordOdometer as keepReading } from '../job/odometer.js';
import { workingPerson } from '../questions/people-and-shop.js';
import { live, placeOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { contestedReport, settledReport } from '../timeline/reports.js';
import { earliest } from '../timeline/timeline.js';
import { flagWheels, moveVehicle, ownSpotOf, standingTables } from './move-vehicle.js';

interface Going extends Visit {
  readonly input: TakeOnRoadTest;
  readonly driver: Row<'person'>;
  /** Where it is now. */
  readonly place: Row<'place'> | undefined;
  /** From when it is out, epoch ms. */
  readonly from: number;
}

const tables = [...standingTables, 'odometerReading'] as const;

export const takeOnRoadTest: CommandRule<'takeOnRoadTest'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    if (input.placeId !== undefined && rows.find('place', input.placeId)) {
      return refuse('place.alreadyRecorded', { id: input.placeId });
    }
    const driverId = input.driverId ?? at.by.personId ?? '';
    const driver = live(rows, 'person', driverId);
    if (!driver) return notThere('person', driverId);
    const when = input.alreadyOut === true ? at.effectiveAt : at.now;
    const from = earliest(placesOfVehicle(rows, visit.vehicle.id), when);
    const going = { ...visit, input, driver, place: placeOf(rows, visit.job.id), from };
    return input.alreadyOut === true ? recordOut(rows, going, at) : goOut(rows, going, at);
  },
};

/** Rule 3, on the road: it rolls, may be driven, and neither a caution nor a wheel speaks against it. */
export function againstRoad(rows: Rows, at: Circumstances, { job, vehicle }: Visit): Refusal[] {
  const way = { table: 'vehicle', id: vehicle.id };
  return [
    ...(vehicle.rolls ? [] : [{ code: 'place.doesNotRoll' as const, facts: {}, way }]),
    ...(vehicle.mayBeDriven ? [] : [{ code: 'place.mayNotBeDriven' as const, facts: {}, way }]),
    ...againstAct(rows, at, vehicle.id, 'roadTest'),
    ...againstWheels(rows, job.id, 'roadTest'),
  ];
}

/** It is on the road already: marked for what stood against it. */
export function flagRoad(rows: Rows, at: Circumstances, { job, vehicle }: Visit): void {
  const of = { jobId: job.id, vehicleId: vehicle.id };
  if (!vehicle.rolls || !vehicle.mayBeDriven) flag(rows, at, 'place.drivenMayNot', of);
  flagAct(rows, at, of, 'roadTest');
  flagWheels(rows, at, of, 'roadTest');
}

function goOut(rows: Rows, going: Going, at: Circumstances): Outcome | Refused {
  const { job, driver, place } = going;
  if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
  if (!workingPerson(rows, driver.id)) return refuse('place.driverLeft');
  const refusals = [...againstLeaving(place), ...againstRoad(rows, at, going)];
  return refusals.length > 0 ? new Refused(refusals) : out(rows, going, at);
}

/** Whatever goes out has to be here: in the yard or in a bay. */
export function againstLeaving(place: Row<'place'> | undefined): Refusal[] {
  if (place?.kind === 'yard' || place?.kind === 'bay') return [];
  return [{ code: 'place.notHere', facts: { kind: place?.kind ?? null } }];
}

function factsOf({ job, vehicle, driver, input }: Going, contested: boolean) {
  const of = { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id, personId: driver.id };
  return { ...of, keepSpot: input.keepSpot, contested };
}

function out(rows: Rows, going: Going, at: Circumstances): Outcome {
  const { job, vehicle, input, driver, from } = going;
  const { placeId, odometerOut, dueBackAt } = input;
  const keeps = input.keepSpot ? ownSpotOf(rows, vehicle.id, 'stands') : null;
  const to = { kind: 'roadTest', placeId, odometerOut, dueBackAt, keeps } as const;
  const place = moveVehicle(rows, at, going, { ...to, driverId: driver.id, odometerUnit: job.odometerUnit }, from);
  read(rows, at, going, odometerOut);
  return { facts: factsOf(going, false), created: { place: place.id } };
}

function read(rows: Rows, at: Circumstances, { job, vehicle }: Visit, value: number | undefined): void {
  if (value === undefined) return;
  const of = { vehicleId: vehicle.id, jobId: job.id };
  keepReading(rows, at, of, { value, unit: job.odometerUnit, source: 'read' });
}

function recordOut(rows: Rows, going: Going, at: Circumstances): Outcome {
  const { job, vehicle, place, input } = going;
  const spot = ownSpotOf(rows, vehicle.id, 'stands');
  const of = { jobId: job.id, vehicleId: vehicle.id, personId: going.driver.id };
  const bay = spot && input.keepSpot ? { bayId: spot.bayId } : {};
  const said = { kind: 'takeOnRoadTest', ...of, ...bay, said: input, happenedAt: going.from } as const;
  if (job.endedAt === null && place?.kind === 'roadTest') {
    return { facts: factsOf(going, false), created: { report: settledReport(rows, at, said).id } };
  }
  flagRoad(rows, at, going);
  if (job.endedAt !== null || place?.kind === 'away') {
    const report = contestedReport(rows, at, said, place ? [place.id] : []);
    return { facts: factsOf(going, true), created: { report: report.id } };
  }
  const { facts, created } = out(rows, going, at);
  return { facts, created: { ...created, report: settledReport(rows, at, said).id } };
}

export const returnFromRoadTest: CommandRule<'returnFromRoadTest'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    if (input.placeId !== undefined && rows.find('place', input.placeId)) {
      return refuse('place.alreadyRecorded', { id: input.placeId });
    }
    const { job, vehicle } = visit;
    const test = placeOf(rows, job.id);
    const from = earliest(placesOfVehicle(rows, vehicle.id), at.effectiveAt);
    const said = { kind: 'returnFromRoadTest', jobId: job.id, vehicleId: vehicle.id, said: input } as const;
    const facts = { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id };
    if (job.endedAt !== null || test?.kind !== 'roadTest') {
      read(rows, at, visit, input.odometerIn);
      const report = contestedReport(rows, at, { ...said, happenedAt: from }, test ? [test.id] : []);
      return { facts: { ...facts, contested: true }, created: { report: report.id } };
    }
    const kept = ownSpotOf(rows, vehicle.id, 'kept');
    if (input.intoKeptSpot === true && !kept) return refuse('place.spotNotKept');
    read(rows, at, visit, input.odometerIn);
    rows.change('place', test.id, { odometerIn: input.odometerIn ?? null });
    const place = moveVehicle(rows, at, visit, backTo(input, kept), from);
    const report = settledReport(rows, at, { ...said, happenedAt: from });
    return { facts: { ...facts, contested: false }, created: { place: place.id, report: report.id } };
  },
};

interface Back {
  readonly placeId?: string | undefined;
  readonly intoKeptSpot?: boolean | undefined;
  readonly yardSpot?: string | undefined;
}

/** Where a vehicle that comes back stands: the spot that was kept where that is said, else the yard. */
export function backTo({ placeId, intoKeptSpot, yardSpot }: Back, kept: ReturnType<typeof ownSpotOf>) {
  const on = { placeId, movedHow: 'driven' } as const;
  return intoKeptSpot === true && kept
    ? ({ ...on, kind: 'bay', ...kept } as const)
    : ({ ...on, kind: 'yard', yardSpot } as const);
}
