/** What the past has once: work by other firms in each of its forms, and a reading told by telephone between visits. */
import type { CommandInputs } from '@holdfast/domain';
import type { Floor, Script } from './floor.js';
import { sceneVehicle } from './scene-vehicle.js';
import { estate, townKinds } from './vehicles.js';
import { Visit } from './visit.js';
import type { KnownVehicle } from './visit-parts.js';

type Sublet = Omit<CommandInputs['arrangeSublet'], 'jobId' | 'lineId' | 'form' | 'subletId'>;

export function beginPast(floor: Floor, fleet: readonly KnownVehicle[]): void {
  for (const scene of [glassFirm, painter, trimmer]) floor.begin(floor.on(-45, '07:00'), scene(floor));
  for (const weeks of [3, 5, 7, 9]) floor.begin(floor.on(-5 * weeks, '11:20'), readingTold(floor, fleet));
}

interface Told {
  readonly words: string;
  readonly conditions: string;
  readonly title: string;
  readonly minutes: number;
  readonly price: string;
}

function checkedIn(visit: Visit, { words, conditions, title, minutes, price }: Told): string {
  visit.checkIn([{ words, conditions }]);
  const concernId = visit.concerns[0]?.id;
  const lineId = visit.line(title, { bookMinutes: minutes, price, concernId });
  visit.answer(lineId, 'given', 'there');
  return lineId;
}

export function arrange(
  visit: Visit,
  form: CommandInputs['arrangeSublet']['form'],
  lineId: string,
  facts: Sublet,
): string {
  return visit.floor.send('desk', 'arrangeSublet', { jobId: visit.jobId, lineId, form, ...facts })('sublet');
}

/** The vehicle itself is away for a day. */
function* glassFirm(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(541, townKinds[5] ?? estate));
  yield floor.on(-38, '08:20');
  const lineId = checkedIn(visit, {
    words: 'Crack in the windscreen grows',
    conditions: 'Since the frost',
    title: 'Windscreen, at the glass firm',
    minutes: 20,
    price: '460',
  });
  const dueBackAt = floor.at(floor.day(-37), '11:00');
  const subletId = arrange(visit, 'vehicleOut', lineId, { firm: 'Marram Glass', price: '390', dueBackAt });
  yield floor.on(-38, '09:10');
  floor.send('desk', 'sendAway', { subletId, keepSpot: false, movedHow: 'driven' });
  yield floor.on(-37, '11:25');
  floor.send('desk', 'bringBack', { subletId, yardSpot: 'Y11', price: '402.50' });
  visit.finish('manager', lineId, 'Fitted by the glass firm, looked over here');
  yield* visit.leave();
}

/** A piece of it goes to the painter; the vehicle keeps its bay meanwhile. */
function* painter(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(543, estate));
  yield floor.on(-31, '08:05');
  const lineId = checkedIn(visit, {
    words: 'Boot lid scraped',
    conditions: 'Since the car park',
    title: 'Boot lid, off, painted, on',
    minutes: 80,
    price: '520',
  });
  const [worker, bay] = yield* floor.someoneAndBay((one) => one.key === 'gate');
  visit.toBay(worker, bay);
  yield* visit.work(worker, lineId, 35);
  floor.release(worker);
  const facts = {
    firm: 'Slipway Paint',
    component: 'Boot lid',
    price: '280',
    dueBackAt: floor.at(floor.day(-30), '15:00'),
  };
  const subletId = arrange(visit, 'componentOut', lineId, facts);
  floor.send('desk', 'sendComponentAway', { subletId });
  yield floor.on(-30, '15:40');
  floor.send('desk', 'bringBack', { subletId, words: 'Clear coat, dry to the touch' });
  const other = yield* floor.someone();
  yield* visit.work(other, lineId, 40);
  visit.finish(other, lineId);
  floor.release(other);
  yield* visit.leave();
}

/** Somebody of another firm comes in. */
function* trimmer(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(545, townKinds[4] ?? estate));
  yield floor.on(-24, '08:30');
  const lineId = checkedIn(visit, {
    words: 'Seat seam has opened',
    conditions: 'Always',
    title: 'Seat cushion, sewn in place',
    minutes: 10,
    price: '140',
  });
  const slotAt = floor.at(floor.day(-24), '13:30');
  const subletId = arrange(visit, 'outsiderIn', lineId, { firm: 'Needle & Awl Trimmers', price: '95', slotAt });
  yield floor.on(-24, '13:42');
  floor.send('desk', 'letOutsiderIn', { subletId });
  yield floor.on(-24, '15:20');
  floor.send('desk', 'bringBack', { subletId });
  visit.finish('manager', lineId, 'Sewn by the trimmer');
  yield* visit.leave();
}

/** The fleet's office reads out what a van has run. */
function* readingTold(floor: Floor, fleet: readonly KnownVehicle[]): Script {
  const van = fleet.find(
    (one) => one.id !== null && !one.isHere && one.customer.fleet !== undefined && floor.chance.odds(0.4),
  );
  if (van?.id == null) return;
  van.odometer += floor.chance.between(150, 350);
  floor.send('desk', 'recordOdometer', { vehicleId: van.id, value: van.odometer, unit: 'km', source: 'told' });
  yield floor.now;
}
