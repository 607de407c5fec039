/** Who is to come, today and in the next days: one that is late, one that stands here and nobody has checked it in. */
import { addDays } from '@holdfast/shop-calendar';
import type { CommandInputs } from '@holdfast/domain';
import { townsperson } from './cast.js';
import { partyOf, remember } from './customer-file.js';
import type { Floor, Script } from './floor.js';
import { sceneVehicle } from './scene-vehicle.js';
import { townKinds, van } from './vehicles.js';
import type { KnownVehicle } from './visit-parts.js';

type Booked = Omit<CommandInputs['bookJob'], 'vehicleId'>;

export function beginExpected(floor: Floor, fleet: readonly KnownVehicle[]): void {
  for (const scene of [late, leftBeforeOpening, thisAfternoon, fleetVan, newcomer]) {
    floor.begin(floor.on(-1, '15:10'), scene(floor, fleet));
  }
}

/** One that the shop knows and that is not here; nobody else has it come in from now on. */
function known(fleet: readonly KnownVehicle[], isFleet: boolean): KnownVehicle {
  const found = fleet.find((one) => one.id !== null && !one.isHere && (one.customer.fleet !== undefined) === isFleet);
  if (!found) throw new Error('nobody is left to be expected');
  found.isHere = true;
  return found;
}

/** By telephone; gives the visit. */
function book(floor: Floor, vehicle: KnownVehicle, booked: Booked): string {
  vehicle.id ??= floor.send('desk', 'addVehicle', { plate: vehicle.plate, ...vehicle.kind })('vehicle');
  const created = floor.send('desk', 'bookJob', {
    vehicleId: vehicle.id,
    ...partyOf(floor, vehicle.customer),
    ...booked,
  });
  remember(floor, vehicle.customer, created);
  return created('job');
}

function* late(floor: Floor, fleet: readonly KnownVehicle[]): Script {
  yield floor.on(-1, '15:20');
  book(floor, known(fleet, false), {
    expectedAt: floor.at(floor.parts.today, '08:30'),
    waitsHere: true,
    concerns: [{ words: 'Squeals when turning', conditions: 'Full lock, car park' }],
    lines: [{ title: 'Look for what squeals', bookMinutes: 30, price: '60' }],
  });
}

/** The key lies in the box by the gate. */
function* leftBeforeOpening(floor: Floor, fleet: readonly KnownVehicle[]): Script {
  yield floor.on(-1, '15:42');
  const jobId = book(floor, known(fleet, false), {
    expectedAt: floor.at(floor.parts.today, '08:00'),
    promisedAt: floor.at(floor.parts.today, '16:45'),
    concerns: [{ words: 'Smells of fuel', conditions: 'After filling up' }],
  });
  yield floor.on(0, '07:34');
  floor.send('desk', 'recordArrival', { jobId, keyTag: 'Box 2', yardSpot: 'Y8' });
}

function* thisAfternoon(floor: Floor, fleet: readonly KnownVehicle[]): Script {
  yield floor.on(-1, '16:05');
  book(floor, known(fleet, false), {
    expectedAt: floor.at(floor.parts.today, '14:00'),
    waitsHere: true,
    concerns: [{ words: 'Service is due', conditions: 'By the book' }],
    lines: [{ title: 'Yearly service, oil and filters', bookMinutes: 80, price: '240' }],
  });
}

function* fleetVan(floor: Floor, fleet: readonly KnownVehicle[]): Script {
  yield floor.on(-1, '16:20');
  book(floor, known(fleet, true), {
    expectedAt: floor.at(floor.day(1), '08:00'),
    promisedAt: floor.at(floor.day(1), '15:30'),
    boardNote: 'Driver brings it after the early round',
    concerns: [{ words: 'Rear doors rattle', conditions: 'Empty, cobbles' }],
    lines: [
      { title: 'Rear doors, hinges and latch', bookMinutes: 90, price: '190' },
      { title: 'Look over before the yearly test', bookMinutes: 45, price: '80' },
    ],
  });
}

/** Nobody here has seen this one before. */
function* newcomer(floor: Floor): Script {
  yield floor.on(0, '09:18');
  const vehicle = sceneVehicle(560, townKinds[3] ?? van, townsperson(560));
  book(floor, vehicle, {
    expectedAt: floor.at(floor.day(2), '09:30'),
    concerns: [{ words: 'Wants winter wheels on', conditions: `Before ${addDays(floor.day(2), 3)}` }],
    lines: [{ title: 'Change four wheels', bookMinutes: 30, price: '55' }],
  });
}
