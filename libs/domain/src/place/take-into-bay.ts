/** A vehicle goes into a bay: intended, which may be refused, or seen there already, which is recorded and flagged. */
import { againstAct, flagAct, flagAllowedAct } from '../cautions/against-cautions.js';
import type { Act } from '../cautions/caution-table.js';
import { againstHotWork, flagHotWork } from '../cautions/hot-work-near.js';
import type { Circumstances, Outcome } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import { type Facts, type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { CommandRule } from '../kernel/family.js';
import type { Rows } from '../kernel/rows.js';
import type { TakeIntoBay } from '../inputs.js';
import { overdueUndecided, runningOutage, usableEquipment } from '../questions/bay-use.js';
import { capacityKg, specOn, todayOf } from '../questions/people-and-shop.js';
import { freeSpot, live, placeOf, usedByOthers } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { EquipmentItem } from '../tables/shop.js';
import type { Row } from '../tables/tables.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { contestedReport, settledReport } from '../timeline/reports.js';
import { earliest, type Span } from '../timeline/timeline.js';
import { judgeMass } from './lift-mass.js';
import { againstMoving, flagMove, moveVehicle, ownSpotOf, standingTables } from './move-vehicle.js';
import { type Visit, visitOf } from '../questions/visit.js';

/** A vehicle that is to stand in a spot of a bay, and what is said about it. */
export interface Taking extends Visit {
  readonly input: Pick<TakeIntoBay, 'movedHow' | 'movedByName' | 'loaded' | 'loadKg'>;
  readonly bay: Row<'bay'>;
  readonly spec: Row<'baySpec'>;
  /** What of the bay can be used now: a bay whose lift is out of use is a place to stand, and lifts nothing. */
  readonly usable: readonly EquipmentItem[];
  /** From when the vehicle would stand there, epoch ms, open-ended. */
  readonly span: Span;
  /** The spot asked for, else the lowest free one, else the first. */
  readonly spot: number;
}

export const takeIntoBay: CommandRule<'takeIntoBay'> = {
  needs: ({ jobId, bayId }) => ({ jobs: [jobId], bays: [bayId], hotWork: true, tables: standingTables }),
  decide(rows, input, at) {
    const taking = takingOf(rows, input, at);
    if (taking instanceof Refused) return taking;
    return input.alreadyThere === true ? recordSeen(rows, taking, input, at) : place(rows, taking, input, at);
  },
};

function takingOf(rows: Rows, input: TakeIntoBay, at: Circumstances): Taking | Refused {
  const visit = visitOf(rows, input.jobId);
  if (visit instanceof Refused) return visit;
  const bay = live(rows, 'bay', input.bayId);
  if (!bay) return notThere('bay', input.bayId);
  if (input.placeId !== undefined && rows.find('place', input.placeId)) {
    return refuse('place.alreadyRecorded', { id: input.placeId });
  }
  const spec = specOn(rows, bay.id, todayOf(at));
  if (input.spot !== undefined && input.spot > spec.spots) {
    return refuse('place.noSuchSpot', { spot: input.spot, spots: spec.spots });
  }
  const when = input.alreadyThere === true ? at.effectiveAt : at.now;
  const span = { fromAt: earliest(placesOfVehicle(rows, visit.vehicle.id), when), toAt: null };
  const spot =
    input.spot ??
    ownSpot(rows, visit, bay) ??
    keptSpot(rows, visit, bay) ??
    freeSpot(rows, bay.id, spec.spots, span, visit.vehicle.id) ??
    1;
  return { ...visit, input, bay, spec, usable: usableEquipment(rows, spec), span, spot };
}

/** The spot of the bay that the vehicle stands in, if it does. */
function ownSpot(rows: Rows, { job }: Visit, bay: Row<'bay'>): number | undefined {
  const place = placeOf(rows, job.id);
  return place?.kind === 'bay' && place.bayId === bay.id ? (place.spot ?? undefined) : undefined;
}

/** The spot of the bay that is kept for the vehicle while it is out. */
function keptSpot(rows: Rows, { vehicle }: Visit, bay: Row<'bay'>): number | undefined {
  const kept = ownSpotOf(rows, vehicle.id, 'kept');
  return kept?.bayId === bay.id ? kept.spot : undefined;
}

function factsOf(taking: Taking, contested: boolean): Facts {
  const { job, vehicle, bay, spot } = taking;
  return { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id, bayId: bay.id, spot, contested };
}

function place(rows: Rows, taking: Taking, input: TakeIntoBay, at: Circumstances): Outcome | Refused {
  const { job, bay, spot, span } = taking;
  if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
  const refusals = [...againstSpot(rows, taking), ...againstStanding(rows, taking, at)];
  if (refusals.length > 0) return new Refused(refusals);
  flagAllowed(rows, at, taking);
  const made = moveVehicle(rows, at, taking, { ...input, kind: 'bay', bayId: bay.id, spot }, span.fromAt);
  return { facts: factsOf(taking, false), created: { place: made.id } };
}

/** What speaks against this vehicle in this bay, whoever else stands there: the bay, the move, its cautions, its mass. */
export function againstStanding(rows: Rows, taking: Taking, at: Circumstances): Refusal[] {
  const { vehicle, bay, usable, input } = taking;
  return [
    ...againstBay(rows, taking, at),
    ...againstMoving(rows, at, taking, input),
    ...actsIn(usable).flatMap((act) => againstAct(rows, at, vehicle.id, act)),
    ...againstHotWork(rows, at, vehicle.id, bay.id),
    ...againstInspection(rows, taking, at),
    ...againstMass(taking),
  ];
}

/** Marks what a caution allows in this bay with a flag. */
export function flagAllowed(rows: Rows, at: Circumstances, { job, vehicle, usable }: Taking): void {
  for (const act of actsIn(usable)) flagAllowedAct(rows, at, { jobId: job.id, vehicleId: vehicle.id }, act);
}

/** What the equipment that can be used there does with a vehicle. */
function actsIn(usable: readonly EquipmentItem[]): Act[] {
  return [
    ...(usable.some((item) => item.kind === 'pit') ? ['placeOverPit' as const] : []),
    ...(usable.some((item) => item.grips === 'points') ? ['liftByPoints' as const] : []),
  ];
}

const liftsIn = (usable: readonly EquipmentItem[]): boolean => usable.some((item) => item.grips !== null);

function isEnded(bay: Row<'bay'>, at: Circumstances): boolean {
  return bay.endedOn !== null && bay.endedOn <= todayOf(at);
}

/** Out of use as a whole, or because the facts of the bay say of nothing in it that it is in use. */
function isOutOfUse(rows: Rows, spec: Row<'baySpec'>): boolean {
  if (spec.outOfUse || runningOutage(rows, spec.bayId, null)) return true;
  return spec.equipment.length > 0 && spec.equipment.every((item) => !item.inUse);
}

function againstBay(rows: Rows, { bay, spec }: Taking, at: Circumstances): Refusal[] {
  const way = { table: 'bay', id: bay.id };
  if (isEnded(bay, at)) return [{ code: 'place.bayEnded', facts: {}, way }];
  return isOutOfUse(rows, spec) ? [{ code: 'place.bayOutOfUse', facts: {}, way }] : [];
}

/** Rule 4: a lift whose inspection is overdue takes nothing, but for as long as the one decision on it holds. */
function againstInspection(rows: Rows, { bay, spec, usable }: Taking, at: Circumstances): Refusal[] {
  const due = liftsIn(usable) ? overdueUndecided(rows, spec, todayOf(at)) : null;
  return due ? [{ code: 'lift.overdue', facts: { dueOn: due.dueOn }, way: { table: 'bay', id: bay.id } }] : [];
}

function againstSpot(rows: Rows, taking: Taking): Refusal[] {
  const { bay, spot, span, vehicle } = taking;
  if (ownSpot(rows, taking, bay) === spot) return [{ code: 'place.thisSpot', facts: { spot } }];
  return usedByOthers(rows, bay.id, spot, span, vehicle.id)
    .slice(0, 1)
    .map((use) => ({
      code: 'place.spotTaken',
      facts: {
        spot,
        jobNumber: live(rows, 'job', use.jobId)?.number ?? 0,
        since: new Date(use.fromAt).toISOString(),
      },
      way: { table: 'job', id: use.jobId },
    }));
}

/** The rated capacity where the bay lifts; null where no lift can be used or its rating is not known. */
function ratingOf({ spec, usable }: Taking): number | null {
  return liftsIn(usable) ? capacityKg(spec) : null;
}

function againstMass(taking: Taking): Refusal[] {
  const { vehicle, input } = taking;
  const rating = ratingOf(taking);
  if (rating === null) return [];
  const capacity = { capacityKg: Math.floor(rating) };
  const judged = judgeMass(vehicle, rating, input);
  const way = { table: 'vehicle', id: vehicle.id };
  switch (judged.verdict) {
    case 'passes':
      return [];
    case 'above':
      return [{ code: 'place.aboveCapacity', facts: { massKg: judged.massKg, ...capacity }, way }];
    case 'asks':
      return [{ code: 'place.loadAsked', facts: capacity, way }];
    case 'asksWeight':
      return [{ code: 'place.loadWeightAsked', facts: { grossKg: judged.grossKg, ...capacity }, way }];
  }
}

function recordSeen(rows: Rows, taking: Taking, input: TakeIntoBay, at: Circumstances): Outcome {
  const { job, vehicle, bay, spot, span } = taking;
  const said = { kind: 'takeIntoBay', jobId: job.id, vehicleId: vehicle.id, bayId: bay.id, said: input } as const;
  const report = { ...said, happenedAt: span.fromAt };
  const here = job.endedAt === null;
  if (here && ownSpot(rows, taking, bay) === spot) {
    return { facts: factsOf(taking, false), created: { report: settledReport(rows, at, report).id } };
  }
  flagMove(rows, at, taking, input);
  flagBay(rows, at, taking);
  const of = { jobId: job.id, vehicleId: vehicle.id };
  for (const act of actsIn(taking.usable)) flagAct(rows, at, of, act);
  flagHotWork(rows, at, of, bay.id);
  flagInspection(rows, at, taking);
  flagMass(rows, at, taking);
  const clash = usedByOthers(rows, bay.id, spot, span, vehicle.id).map((use) => use.id);
  if (!here || clash.length > 0) {
    return { facts: factsOf(taking, true), created: { report: contestedReport(rows, at, report, clash).id } };
  }
  const made = moveVehicle(rows, at, taking, { ...input, kind: 'bay', bayId: bay.id, spot }, span.fromAt);
  const kept = settledReport(rows, at, report);
  return { facts: factsOf(taking, false), created: { place: made.id, report: kept.id } };
}

function flagBay(rows: Rows, at: Circumstances, { job, vehicle, bay, spec }: Taking): void {
  if (!isEnded(bay, at) && !isOutOfUse(rows, spec)) return;
  flag(rows, at, 'place.bayOutOfUse', { jobId: job.id, vehicleId: vehicle.id, bayId: bay.id });
}

function flagInspection(rows: Rows, at: Circumstances, taking: Taking): void {
  const subjects = { jobId: taking.job.id, vehicleId: taking.vehicle.id, bayId: taking.bay.id };
  for (const { facts } of againstInspection(rows, taking, at)) flag(rows, at, 'lift.overdue', subjects, facts);
}

function flagMass(rows: Rows, at: Circumstances, taking: Taking): void {
  const { job, vehicle, bay, input } = taking;
  const rating = ratingOf(taking);
  if (rating === null) return;
  const subjects = { jobId: job.id, vehicleId: vehicle.id, bayId: bay.id };
  const capacity = { capacityKg: Math.floor(rating) };
  const judged = judgeMass(vehicle, rating, input);
  if (judged.verdict === 'above') {
    flag(rows, at, 'place.aboveCapacity', subjects, { massKg: judged.massKg, ...capacity });
  } else if (judged.verdict !== 'passes') {
    flag(rows, at, 'place.loadNotAsked', subjects, capacity);
  }
}
