/** What is not in a bay or the yard this morning though it is here: on the road, at another firm; and wheels half done. */
import { parcelFleet } from './cast.js';
import type { Floor, Script } from './floor.js';
import { arrange } from './past.js';
import { goOut, tryIt } from './road-test.js';
import { sceneVehicle } from './scene-vehicle.js';
import { electricVan, estate, townKinds } from './vehicles.js';
import { Visit } from './visit.js';
import { tightenLater, wheelsOff, wheelsOn } from './wheels.js';

export const outScenes: readonly ((floor: Floor) => Script)[] = [
  onTheRoad,
  atTheGlassFirm,
  wheelsJustOn,
  liveToMeasure,
];

/** A new bearing is in; whether the hum is gone shows on the quay road. Its spot waits. */
function* onTheRoad(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(530, townKinds[5] ?? estate));
  const bay = floor.bay('quay');
  yield floor.on(-1, '15:02');
  visit.checkIn([{ words: 'Hums on the motorway', conditions: 'Above 80 km/h, louder in right bends' }], {
    promisedAt: floor.at(floor.parts.today, '12:00'),
  });
  const concernId = visit.concerns[0]?.id;
  const lineId = visit.line('Wheel bearing, rear left', { bookMinutes: 90, price: '310', concernId });
  visit.answer(lineId, 'given', 'telephone');
  yield floor.on(0, '07:36');
  yield* floor.both('wen', bay);
  visit.toBay('wen', bay);
  yield floor.later(2);
  const clockId = visit.start('wen', lineId);
  tryIt(visit, 'wen', { appeared: true, words: 'Rough by hand as well' });
  visit.cause('wen', 'Bearing rough, water behind the seal', 'likely');
  wheelsOff(visit, 'wen', ['2L'], lineId);
  yield floor.on(0, '08:58');
  wheelsOn(visit, 'wen', ['2L']);
  floor.send('wen', 'stopWork', {
    clockId,
    handover: 'Bearing is in. Take it out on the quay road before it is done.',
  });
  tightenLater(visit, 'wen');
  floor.release('wen');
  yield floor.on(0, '10:29');
  yield* floor.someone(['samuel']);
  const placeId = goOut(visit, 'samuel', 25);
  yield floor.on(0, '10:36');
  tryIt(visit, 'samuel', { appeared: false, conditions: 'Quay road, 60 km/h, straight', placeId });
}

function* atTheGlassFirm(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(532, estate));
  yield floor.on(-1, '13:35');
  visit.checkIn([{ words: 'Stone has broken the windscreen', conditions: 'On the coast road' }], { keyTag: '31' });
  const concernId = visit.concerns[0]?.id;
  const lineId = visit.line('Windscreen, at the glass firm', { bookMinutes: 20, price: '470', concernId });
  visit.answer(lineId, 'given', 'there');
  const subletId = arrange(visit, 'vehicleOut', lineId, {
    firm: 'Marram Glass',
    slotAt: floor.at(floor.parts.today, '09:30'),
    price: '395',
    dueBackAt: floor.at(floor.day(1), '11:00'),
  });
  yield floor.on(0, '09:12');
  floor.send('desk', 'sendAway', { subletId, keepSpot: false, movedHow: 'driven' });
}

/** On again, and not tightened: the wrench is on another vehicle. */
function* wheelsJustOn(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(534, townKinds[4] ?? estate));
  const bay = floor.bay('rack');
  const all = ['1L', '1R', '2L', '2R'];
  yield floor.on(0, '09:05');
  visit.checkIn([{ words: 'Winter wheels on', conditions: 'Wheels lie in the boot' }], {
    promisedAt: floor.at(floor.parts.today, '11:30'),
  });
  const lineId = visit.line('Change four wheels', { bookMinutes: 30, price: '55', concernId: visit.concerns[0]?.id });
  visit.answer(lineId, 'given', 'there');
  yield floor.on(0, '09:44');
  yield* floor.both('samuel', bay);
  visit.toBay('samuel', bay);
  const clockId = visit.start('samuel', lineId);
  wheelsOff(visit, 'samuel', all, lineId);
  yield floor.on(0, '10:19');
  wheelsOn(visit, 'samuel', all, { torqued: false });
  floor.send('samuel', 'stopWork', { clockId, handover: 'All four on, none tightened yet. Tomasz has the wrench.' });
  visit.toYard('samuel', 'Y4');
  floor.release('samuel');
}

/** It logs while it is live; the tag says who may go near. */
function* liveToMeasure(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(536, electricVan, parcelFleet));
  const bay = floor.bay('quay');
  yield floor.on(0, '08:12');
  visit.checkIn([{ words: 'Range has dropped', conditions: 'Since the cold weather' }], {
    promisedAt: floor.at(floor.day(1), '12:00'),
  });
  floor.send('desk', 'addCaution', { vehicleId: visit.vehicleId, standing: true, code: 'electricDrive' });
  const concernId = visit.concerns[0]?.id;
  const facts = { bookMinutes: 120, price: '160', skill: 'highVoltage', concernId } as const;
  const lineId = visit.line('Measure the high-voltage battery', facts);
  visit.answer(lineId);
  yield floor.on(0, '09:09');
  yield* floor.both('aoife', bay);
  visit.toBay('aoife', bay);
  visit.caution('aoife', 'highVoltageLive', 'Covers off, tape round it. Aoife only.');
  const clockId = visit.start('aoife', lineId);
  yield floor.on(0, '09:28');
  floor.send('aoife', 'stopWork', { clockId, handover: 'Logger runs until noon. Live: nobody goes inside the tape.' });
  floor.release('aoife');
}
