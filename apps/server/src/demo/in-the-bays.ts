/** What stands in the bays this morning: worked, left without a reason, waiting for an answer. */
import { council, parcelFleet } from './cast.js';
import type { Floor, Script } from './floor.js';
import { sceneVehicle } from './scene-vehicle.js';
import { electricEstate, estate, tipper, van } from './vehicles.js';
import { Visit } from './visit.js';
import { wheelsOff } from './wheels.js';

export const bayScenes: readonly ((floor: Floor) => Script)[] = [brakes, tipperLeftStanding, askedFirst, vanService];

function* brakes(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(503, estate));
  yield floor.on(0, '07:36');
  visit.checkIn([{ words: 'Grinds when braking', conditions: 'Cold, first braking in the morning' }], {
    promisedAt: floor.at(floor.parts.today, '15:00'),
    waitsHere: false,
  });
  yield floor.later(4);
  const lineId = visit.line('Front discs and pads', {
    bookMinutes: 110,
    price: '390',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'there');
  yield floor.on(0, '08:04');
  const bay = floor.bay('north');
  yield* floor.both('tomasz', bay);
  visit.toBay('tomasz', bay);
  yield floor.later(4);
  wheelsOff(visit, 'tomasz', ['1L', '1R'], lineId);
  visit.caution('tomasz', 'brakesOpen');
  yield* visit.work('tomasz', lineId, 190);
}

function* tipperLeftStanding(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(501, tipper, council));
  const bay = floor.bay('long');
  yield floor.on(-1, '14:05');
  visit.checkIn([{ words: 'Body does not come down all the way', conditions: 'Loaded with grit' }], { keyTag: '8' });
  yield floor.later(8);
  const lineId = visit.line('Find what stops the tipping body', {
    bookMinutes: 90,
    price: '180',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'telephone');
  yield floor.on(0, '07:44');
  yield* floor.both('samuel', bay);
  visit.toBay('samuel', bay);
  yield floor.later(5);
  const clockId = visit.start('samuel', lineId);
  yield floor.on(0, '08:58');
  visit.finding('samuel', { place: 'Beacon, cab roof', kind: 'fault', words: 'Holder corroded, loose' });
  visit.fix('samuel', {
    kind: 'standIn',
    standsInFor: 'Beacon holder',
    place: 'Beacon, cab roof',
    heldWith: 'Magnetic beacon from our own stock',
    system: 'lighting',
    endedByWhat: 'New holder fitted',
    withinDays: 21,
  });
  yield floor.on(0, '09:41');
  floor.send('samuel', 'stopWork', {
    clockId,
    handover: 'Guide rail is bent, safety prop stands under the body. Needs the long bar.',
  });
  floor.send('samuel', 'askQuestion', {
    jobId: visit.jobId,
    lineId,
    toId: floor.person('manager').personId,
    words: 'Straighten the rail, or a new one? The council has another tipper out on Friday.',
  });
  floor.release('samuel');
}

function* askedFirst(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(509, electricEstate));
  const bay = floor.bay('gate');
  yield floor.on(0, '07:58');
  visit.checkIn([{ words: 'Charges slowly', conditions: 'At any post' }], {
    promisedAt: floor.at(floor.parts.today, '16:30'),
  });
  floor.send('desk', 'addCaution', { vehicleId: visit.vehicleId, standing: true, code: 'electricDrive' });
  yield floor.later(3);
  const lineId = visit.line('Find why it charges slowly', {
    bookMinutes: 60,
    price: '130',
    skill: 'highVoltage',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'there');
  yield floor.on(0, '08:19');
  yield* floor.both('aoife', bay);
  visit.toBay('aoife', bay);
  yield floor.later(3);
  visit.caution('aoife', 'highVoltageDead', 'Plug in my pocket');
  yield* visit.work('aoife', lineId, 41);
  visit.finding('aoife', {
    place: 'Charging inlet',
    kind: 'fault',
    words: 'One contact burnt',
    concernId: visit.concerns[0]?.id,
  });
  visit.finish('aoife', lineId);
  const inlet = visit.line(
    'Charging inlet with harness',
    { bookMinutes: 120, price: '880', skill: 'highVoltage', concernId: visit.concerns[0]?.id },
    'aoife',
  );
  visit.hold('desk', 'goAhead', { lineIds: [inlet], moveOf: visit.vehicle.customer.contact.name });
  floor.release('aoife');
}

function* vanService(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(506, van, parcelFleet));
  const bay = floor.bay('gate');
  yield floor.on(0, '08:40');
  visit.checkIn([{ words: 'Sliding door sticks', conditions: 'In the wet' }], {
    promisedAt: floor.at(floor.parts.today, '13:00'),
  });
  yield floor.later(4);
  const lineId = visit.line('Sliding door, rollers and rail', {
    bookMinutes: 100,
    price: '240',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'telephone');
  yield floor.on(0, '09:06');
  yield* floor.both('wen', bay);
  visit.toBay('wen', bay);
  yield floor.later(3);
  visit.caution('wen', 'hotWork', 'Cutting off a seized roller, screens stand round it');
  yield* visit.work('wen', lineId, 150);
}
