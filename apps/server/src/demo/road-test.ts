/** Tries to make a concern appear, here and on the road, with the bay kept meanwhile. */
import type { Technician } from './cast.js';
import { minute, type Script } from './floor.js';
import type { VisitUnderWay } from './visit-parts.js';

interface Try {
  readonly appeared: boolean;
  readonly conditions?: string;
  readonly words?: string;
  /** The road test it was made on. */
  readonly placeId?: string;
}

/** One attempt for each thing that was reported, under the customer's own conditions where no others are said. */
export function tryIt(visit: VisitUnderWay, by: Technician | 'desk', { conditions, ...found }: Try): void {
  const { floor, vehicle } = visit;
  for (const concern of visit.concerns) {
    const under = conditions ?? concern.conditions ?? 'Round on the quay road';
    const odometer = { odometer: vehicle.odometer, odometerUnit: 'km' } as const;
    floor.send(by, 'recordAttempt', { concernId: concern.id, conditions: under, ...odometer, ...found });
  }
}

/** Out of its bay, which stays its own; gives the place that the attempts are made on. */
export function goOut(visit: VisitUnderWay, by: Technician, minutes: number): string {
  const { floor, jobId, vehicle } = visit;
  const out = { jobId, keepSpot: true, odometerOut: vehicle.odometer, dueBackAt: floor.now + minutes * minute };
  return floor.send(by, 'takeOnRoadTest', out)('place');
}

/** There and back within working time, with one to three tries under way, of which none shows it any more. */
export function* roadTest(visit: VisitUnderWay, by: Technician): Script {
  const { floor, vehicle, jobId } = visit;
  yield* floor.untilWorking();
  const placeId = goOut(visit, by, 20);
  for (let tries = floor.chance.between(1, 3); tries > 0; tries -= 1) {
    yield floor.later(3, 7);
    vehicle.odometer += floor.chance.between(2, 5);
    tryIt(visit, by, { appeared: false, placeId });
  }
  yield floor.later(2, 5);
  vehicle.odometer += 2;
  floor.send(by, 'returnFromRoadTest', { jobId, odometerIn: vehicle.odometer, intoKeptSpot: true });
}
