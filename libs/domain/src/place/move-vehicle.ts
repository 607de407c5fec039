/** How a vehicle gets from one place to the next: what stands against moving it, and the intervals that change. */
import type { Circumstances } from '../kernel/decision.js';
import { recordedBy } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { openCaution } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';
import type { CautionCode, movedWays } from '../tables/words.js';
import { applyEdits, placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { close, follow, isRunning } from '../timeline/timeline.js';
import type { LoadSaid } from './lift-mass.js';
import { isLoaded } from './lift-mass.js';
import type { Visit } from '../questions/visit.js';

/** What the rules of moving look at; where a vehicle stands settles nothing. */
export const standingTables = ['place', 'spotUse', 'caution', 'report'] as const;

export interface Moved {
  readonly movedHow?: (typeof movedWays)[number] | undefined;
  readonly movedByName?: string | undefined;
}

/** Rule 3: it rolls, or somebody is named who moved it on dollies or towed it. */
function movesWithoutRolling(vehicle: Row<'vehicle'>, moved: Moved): boolean {
  const carried = moved.movedHow === 'dollies' || moved.movedHow === 'towed';
  return !vehicle.rolls && !(carried && moved.movedByName !== undefined);
}

/** The tag that speaks against this move: "do not move" always, "do not start" where it is driven. */
function tagAgainst(rows: Rows, vehicle: Row<'vehicle'>, moved: Moved): CautionCode | null {
  if (openCaution(rows, vehicle.id, 'doNotMove')) return 'doNotMove';
  return moved.movedHow === 'driven' && openCaution(rows, vehicle.id, 'doNotStart') ? 'doNotStart' : null;
}

/** Why an intended move is refused. */
export function againstMoving(rows: Rows, vehicle: Row<'vehicle'>, moved: Moved): Refusal[] {
  const refusals: Refusal[] = [];
  if (movesWithoutRolling(vehicle, moved)) refusals.push({ code: 'place.doesNotRoll', facts: {} });
  const tag = tagAgainst(rows, vehicle, moved);
  if (tag) {
    const caution = openCaution(rows, vehicle.id, tag);
    refusals.push({
      code: 'place.tagged',
      facts: { code: tag },
      ...(caution ? { way: { table: 'caution', id: caution.id } } : {}),
    });
  }
  return refusals;
}

/** A move that has happened is recorded all the same, and flagged for what stood against it. */
export function flagMove(rows: Rows, at: Circumstances, { job, vehicle }: Visit, moved: Moved): void {
  const subjects = { jobId: job.id, vehicleId: vehicle.id };
  if (movesWithoutRolling(vehicle, moved)) flag(rows, at, 'place.movedNotRolling', subjects);
  const tag = tagAgainst(rows, vehicle, moved);
  if (tag) flag(rows, at, 'work.againstCaution', subjects, { code: tag });
}

export type Destination = Moved &
  LoadSaid & { readonly placeId?: string | undefined } & (
    | { readonly kind: 'yard'; readonly yardSpot?: string | undefined }
    | { readonly kind: 'bay'; readonly bayId: string; readonly spot: number }
  );

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
    movedHow: to.movedHow ?? 'rolled',
    movedByName: to.movedByName ?? null,
    loaded: loaded ?? null,
    loadKg: loaded === true ? (to.loadKg ?? null) : null,
    loadAnsweredById: loaded === undefined ? null : at.by.personId,
  } as const;
}

export function spotUseRow(at: Circumstances, { job, vehicle }: Visit, spot: { bayId: string; spot: number }) {
  const of = { jobId: job.id, vehicleId: vehicle.id, bayId: spot.bayId, spot: spot.spot };
  return { id: at.newId(), ...recordedBy(at), ...of, kind: 'stands' } as const;
}

/**
 * The vehicle goes on to its next place at `when` (epoch ms), or as soon after as its last place allows: that place and
 * the use of its spot end there. The caller has made sure that the new spot is free from then on. Clocks run on.
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
  if (to.kind === 'bay') {
    const use = spotUseRow(at, visit, to);
    applyEdits(rows, at, 'spotUse', [{ do: 'insert', like: null, span: { fromAt: from, toAt: null } }], use);
  }
  return rows.get('place', place.id);
}
