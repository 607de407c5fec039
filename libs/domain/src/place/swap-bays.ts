/** Two vehicles change their bays in one go: each has to be one that may stand where the other stood. */
import type { SwapBays } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { usableEquipment } from '../questions/bay-use.js';
import { specOn, todayOf } from '../questions/people-and-shop.js';
import { placeOf } from '../questions/place-and-work.js';
import { type Visit, visitOf } from '../questions/visit.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { earliest } from '../timeline/timeline.js';
import { moveVehicle, ownSpotOf, standingTables } from './move-vehicle.js';
import { againstStanding, flagAllowed, type Taking } from './take-into-bay.js';

/** A vehicle in the spot of a bay where it stands now. */
interface Standing extends Visit {
  readonly bayId: string;
  readonly spot: number;
}

function standingOf(rows: Rows, jobId: string): Standing | Refused {
  const visit = visitOf(rows, jobId);
  if (visit instanceof Refused) return visit;
  const { job, vehicle } = visit;
  if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
  const spot = placeOf(rows, job.id)?.kind === 'bay' ? ownSpotOf(rows, vehicle.id, 'stands') : null;
  return spot
    ? { ...visit, ...spot }
    : refuse('place.notInBay', { jobNumber: job.number }, { table: 'job', id: job.id });
}

/** Both go at one instant: now, or as soon after as the last place of either allows. */
function instantOf(rows: Rows, at: Circumstances, both: readonly Standing[]): number {
  return Math.max(...both.map(({ vehicle }) => earliest(placesOfVehicle(rows, vehicle.id), at.now)));
}

/** Each goes where the other stands. */
function takingOf(
  rows: Rows,
  at: Circumstances,
  input: SwapBays,
  [one, to]: readonly [Standing, Standing],
  fromAt: number,
): Taking {
  const { job, vehicle } = one;
  const { movedHow, movedByName } = input;
  const spec = specOn(rows, to.bayId, todayOf(at));
  const said = input.loaded?.find((answer) => answer.jobId === job.id);
  return {
    job,
    vehicle,
    bay: rows.get('bay', to.bayId),
    spec,
    usable: usableEquipment(rows, spec),
    spot: to.spot,
    span: { fromAt, toAt: null },
    input: { movedHow, movedByName, loaded: said?.loaded, loadKg: said?.loadKg },
  };
}

/** Each reason says of which visit it speaks. */
function against(rows: Rows, at: Circumstances, taking: Taking): Refusal[] {
  const { id: jobId, number: jobNumber } = taking.job;
  return againstStanding(rows, taking, at).map((one) => ({ ...one, facts: { ...one.facts, jobId, jobNumber } }));
}

export const swapBays: CommandRule<'swapBays'> = {
  needs: ({ jobIds }) => ({ jobs: jobIds, hotWork: true, tables: standingTables }),
  decide(rows, input, at) {
    const one = standingOf(rows, input.jobIds[0]);
    if (one instanceof Refused) return one;
    const other = standingOf(rows, input.jobIds[1]);
    if (other instanceof Refused) return other;
    if (one.job.id === other.job.id) return refuse('place.swapWithItself');
    const fromAt = instantOf(rows, at, [one, other]);
    const ways = [[one, other] as const, [other, one] as const];
    const takings = ways.map((way) => takingOf(rows, at, input, way, fromAt));
    const refusals = takings.flatMap((taking) => against(rows, at, taking));
    if (refusals.length > 0) return new Refused(refusals);
    for (const taking of takings) {
      flagAllowed(rows, at, taking);
      const { bay, spot, input: said } = taking;
      moveVehicle(rows, at, taking, { ...said, kind: 'bay', bayId: bay.id, spot }, fromAt);
    }
    const facts = { jobId: one.job.id, otherJobId: other.job.id, bayId: other.bayId, otherBayId: one.bayId };
    return { facts: { ...facts, jobNumber: one.job.number, otherJobNumber: other.job.number } };
  },
};
