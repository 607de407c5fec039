/** How a vehicle gets from one place to the next: what stands against moving it, and the intervals that change. */
import { againstAct, flagAct } from '../cautions/against-cautions.js';
import type { Act } from '../cautions/caution-table.js';
import { againstWheels } from '../cautions/wheels-against.js';
import type { Circumstances } from '../kernel/decision.js';
import { recordedBy } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Visit } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import type { movedWays } from '../tables/words.js';
import { applyEdits, placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { close, follow, isRunning } from '../timeline/timeline.js';
import type { LoadSaid } from './lift-mass.js';
import { isLoaded } from './lift-mass.js';

/** What the rules of moving look at; where a vehicle stands settles nothing. */
export const standingTables = ['place', 'spotUse', 'caution', 'wheelRecord', 'liftingPoints', 'report'] as const;

export interface Moved {
  readonly movedHow?: (typeof movedWays)[number] | undefined;
  readonly movedByName?: string | undefined;
}

/** On dollies or towed, and somebody is named who did it. */
function isCarried({ movedHow, movedByName }: Moved): boolean {
  return (movedHow === 'dollies' || movedHow === 'towed') && movedByName !== undefined;
}

export function actOfMove(moved: Moved): Act {
  if (isCarried(moved)) return 'moveTowed';
  return moved.movedHow === 'driven' ? 'moveDriven' : 'moveRolling';
}

/** Rule 3: it rolls, or somebody is named who moved it on dollies or towed it. */
function movesWithoutRolling(vehicle: Row<'vehicle'>, moved: Moved): boolean {
  return !vehicle.rolls && !isCarried(moved);
}

/** Why an intended move is refused. */
export function againstMoving(rows: Rows, at: Circumstances, { job, vehicle }: Visit, moved: Moved): Refusal[] {
  const act = actOfMove(moved);
  const way = { table: 'vehicle', id: vehicle.id };
  return [
    ...(movesWithoutRolling(vehicle, moved) ? [{ code: 'place.doesNotRoll' as const, facts: {}, way }] : []),
    ...againstAct(rows, at, vehicle.id, act),
    ...againstWheels(rows, job.id, act),
  ];
}

/** A move that has happened is recorded all the same, and flagged for what stood against it. */
export function flagMove(rows: Rows, at: Circumstances, { job, vehicle }: Visit, moved: Moved): void {
  const subjects = { jobId: job.id, vehicleId: vehicle.id };
  if (movesWithoutRolling(vehicle, moved)) flag(rows, at, 'place.movedNotRolling', subjects);
  const act = actOfMove(moved);
  flagAct(rows, at, subjects, act);
  flagWheels(rows, at, subjects, act);
}

export function flagWheels(
  rows: Rows,
  at: Circumstances,
  of: { readonly jobId: string; readonly vehicleId: string },
  act: Act,
): void {
  for (const { code, facts } of againstWheels(rows, of.jobId, act)) {
    flag(rows, at, 'place.againstWheel', of, { ...facts, off: code === 'wheel.stillOff' });
  }
}

/** A spot of a bay that stays a vehicle's own while it is on a road test or away. */
interface Spot {
  readonly bayId: string;
  readonly spot: number;
}

export type Destination = Moved &
  LoadSaid & { readonly placeId?: string | undefined } & (
    | { readonly kind: 'yard'; readonly yardSpot?: string | undefined }
    | ({ readonly kind: 'bay' } & Spot)
    | {
        readonly kind: 'roadTest';
        readonly driverId: string;
        readonly odometerOut?: number | undefined;
        readonly odometerUnit: Row<'job'>['odometerUnit'];
        readonly dueBackAt?: number | undefined;
        readonly keeps: Spot | null;
      }
    | {
        readonly kind: 'away';
        readonly subletId: string;
        readonly dueBackAt: number | null;
        readonly keeps: Spot | null;
      }
  );

/** What only a vehicle on a road test or at another firm has. */
export const notUnderWay = {
  driverId: null,
  odometerOut: null,
  odometerIn: null,
  odometerUnit: null,
  subletId: null,
  dueBackAt: null,
} as const;

function underWay(to: Destination) {
  switch (to.kind) {
    case 'yard':
    case 'bay':
      return notUnderWay;
    case 'roadTest': {
      const { driverId, odometerOut, odometerUnit, dueBackAt } = to;
      const out = { odometerOut: odometerOut ?? null, odometerUnit, dueBackAt: dueBackAt ?? null };
      return { ...notUnderWay, driverId, ...out };
    }
    case 'away':
      return { ...notUnderWay, subletId: to.subletId, dueBackAt: to.dueBackAt };
  }
}

/** On a road test it is driven; otherwise it rolled unless somebody says more. */
function movedHowTo(to: Destination): (typeof movedWays)[number] {
  return to.movedHow ?? (to.kind === 'roadTest' || to.kind === 'away' ? 'driven' : 'rolled');
}

/** The row of the new place, but for its interval. */
export function placeRow(at: Circumstances, { job, vehicle }: Visit, to: Destination) {
  const loaded = isLoaded(to);
  return {
    id: to.placeId ?? at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: vehicle.id,
    kind: to.kind,
    bayId: to.kind === 'bay' ? to.bayId : null,
    spot: to.kind === 'bay' ? to.spot : null,
    yardSpot: to.kind === 'yard' ? (to.yardSpot ?? null) : null,
    movedHow: movedHowTo(to),
    movedByName: to.movedByName ?? null,
    loaded: loaded ?? null,
    loadKg: loaded === true ? (to.loadKg ?? null) : null,
    loadAnsweredById: loaded === undefined ? null : at.by.personId,
    ...underWay(to),
  } as const;
}

/** The spot that the vehicle has from then on, and whether it stands there; null: none. */
export function spotOf(to: Destination): (Spot & { readonly kind: Row<'spotUse'>['kind'] }) | null {
  switch (to.kind) {
    case 'yard':
      return null;
    case 'bay':
      return { bayId: to.bayId, spot: to.spot, kind: 'stands' };
    case 'roadTest':
    case 'away':
      return to.keeps && { ...to.keeps, kind: 'kept' };
  }
}

export function spotUseRow(
  at: Circumstances,
  { job, vehicle }: Visit,
  { bayId, spot, kind = 'stands' }: Spot & { readonly kind?: Row<'spotUse'>['kind'] },
) {
  return { id: at.newId(), ...recordedBy(at), jobId: job.id, vehicleId: vehicle.id, bayId, spot, kind } as const;
}

/** The spot that the vehicle stands in, or that is kept for it while it is out. */
export function ownSpotOf(rows: Rows, vehicleId: string, kind: Row<'spotUse'>['kind']): Spot | null {
  const use = usesOfVehicle(rows, vehicleId).find((one) => isRunning(one) && one.kind === kind);
  return use ? { bayId: use.bayId, spot: use.spot } : null;
}

/**
 * The vehicle goes on to its next place at `when` (epoch ms), or as soon after as its last place allows: that place and
 * the use of its spot end there, also of one that was kept for it. The caller has made sure that the new spot is free
 * from then on. Clocks run on.
 */
export function moveVehicle(rows: Rows, at: Circumstances, visit: Visit, to: Destination, when: number): Row<'place'> {
  const { from, edits } = follow(placesOfVehicle(rows, visit.vehicle.id), when);
  const place = placeRow(at, visit, to);
  applyEdits(rows, at, 'place', edits, place);
  const left = usesOfVehicle(rows, visit.vehicle.id).filter(isRunning);
  applyEdits(
    rows,
    at,
    'spotUse',
    left.map((use) => close(use, from)),
  );
  const spot = spotOf(to);
  if (spot) {
    const use = spotUseRow(at, visit, spot);
    applyEdits(rows, at, 'spotUse', [{ do: 'insert', like: null, span: { fromAt: from, toAt: null } }], use);
  }
  return rows.get('place', place.id);
}
