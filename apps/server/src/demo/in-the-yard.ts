/** What stands in the yard this morning: waiting for parts, for its owner, for a word; and one that nobody can place. */
import { council, parcelFleet } from './cast.js';
import type { Floor, Script } from './floor.js';
import { partsCameForOneGone, readyAndNotReached } from './to-be-called.js';
import { speak } from './telephone.js';
import { sceneVehicle } from './scene-vehicle.js';
import { electricVan, estate, sweeper, townKinds, van } from './vehicles.js';
import { Visit } from './visit.js';

export const yardScenes: readonly ((floor: Floor) => Script)[] = [
  partsLate,
  partsCame,
  waitsForItsOwner,
  sweeperNotToStart,
  seenInTheWrongBay,
  fixFailed,
  onTheBench,
  toBeRung,
  readyAndNotReached,
  partsCameForOneGone,
];

function* partsLate(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(512, van, parcelFleet));
  yield floor.on(-3, '13:20');
  visit.checkIn([{ words: 'Loses coolant', conditions: 'A litre in a week' }], { yardSpot: 'Y5', mayBeDriven: false });
  yield floor.later(6);
  const lineId = visit.line('Water pump', { bookMinutes: 140, price: '460', concernId: visit.concerns[0]?.id });
  visit.answer(lineId);
  const pump = visit.want(
    'manager',
    { lineId },
    {
      description: 'Water pump with seal',
      number: 'CF-301',
      quantity: '1',
      unitPrice: '96',
      needed: 'beforeStart',
      supplierId: floor.supplier('factors'),
    },
  );
  yield floor.later(15);
  visit.order(pump, 'factors', { state: 'inStock', dueOn: floor.day(-2) });
  visit.hold('clerk', 'parts', { lineIds: [lineId], partLineIds: [pump], moveOf: 'Coast Road Factors' });
  yield floor.on(-2, '12:10');
  visit.due(pump, { state: 'backorderedWithDate', dueOn: floor.day(-1), words: 'Sorted onto the wrong van' });
}

function* partsCame(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(514, townKinds[5] ?? estate));
  yield floor.on(-2, '09:15');
  visit.checkIn([{ words: 'Knocks over bumps, front', conditions: 'Cobbles on the quay, 30 km/h' }], {
    promisedAt: floor.at(floor.parts.today, '16:00'),
    yardSpot: 'Y9',
  });
  yield floor.later(7);
  const lineId = visit.line('Drop links, front, both', {
    bookMinutes: 70,
    price: '180',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId);
  const links = visit.want(
    'manager',
    { lineId },
    {
      description: 'Drop link, front',
      number: 'PN-2207',
      quantity: '2',
      unitPrice: '31.20',
      needed: 'beforeStart',
      supplierId: floor.supplier('pier'),
    },
  );
  visit.order(links, 'pier', { state: 'toOrder', dueOn: floor.day(-1) });
  visit.hold('clerk', 'parts', { lineIds: [lineId], partLineIds: [links], moveOf: 'Pier Nine Parts' });
  yield floor.on(-1, '14:20');
  visit.receive(links, '1');
  visit.due(links, { state: 'inStock', dueOn: floor.day(0) });
  yield floor.on(0, '10:21');
  visit.receive(links, '1');
}

function* waitsForItsOwner(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(516, townKinds[4] ?? estate));
  yield floor.on(-2, '08:35');
  visit.checkIn([{ words: 'Service is due', conditions: 'By the book' }], {
    promisedAt: floor.at(floor.day(-1), '12:00'),
    yardSpot: 'Y1',
  });
  yield floor.later(5);
  const lineId = visit.line('Yearly service, oil and filters', {
    bookMinutes: 80,
    price: '240',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'there');
  const [worker, bay] = yield* floor.someoneAndBay((one) => one.lifts);
  visit.toBay(worker, bay);
  yield* visit.work(worker, lineId, 75);
  visit.finish(worker, lineId);
  floor.release(worker);
  visit.toYard('manager', 'Y1');
  floor.send('desk', 'recordConcernOutcome', { concernId: visit.concerns[0]?.id ?? '', outcome: 'gone' });
  yield floor.later(10);
  const withName = visit.vehicle.customer.contact.name;
  speak(visit, 'ready', {
    way: 'telephone',
    withName,
    reached: true,
    answer: 'Comes with the bus',
    moveOf: 'customer',
  });
  visit.hold('desk', 'collection', {
    moveOf: visit.vehicle.customer.contact.name,
    words: 'Comes with the evening bus',
  });
}

function* sweeperNotToStart(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(518, sweeper, council));
  yield floor.on(0, '09:27');
  visit.checkIn([{ words: 'Brush motor smells burnt', conditions: 'After ten minutes of sweeping' }], {
    yardSpot: 'Y12',
    mayBeDriven: false,
    promisedAt: floor.at(floor.day(2), '12:00'),
  });
  visit.caution('manager', 'doNotStart', 'Brush must not turn until looked at');
  yield floor.later(6);
  visit.line('Brush motor, find the fault', { bookMinutes: 120, price: '220', concernId: visit.concerns[0]?.id });
  visit.hold('manager', 'information', { moveOf: council.contact.name, words: 'Which motor was put in last year?' });
}

/** Reported in a bay where the board knows another vehicle: a card until somebody settles it. */
function* seenInTheWrongBay(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(520, townKinds[6] ?? estate));
  yield floor.on(0, '07:50');
  visit.checkIn([{ words: 'Fridge and lights die overnight', conditions: 'Standing for two nights' }], {
    yardSpot: 'Y7',
    promisedAt: floor.at(floor.day(1), '16:00'),
  });
  yield floor.later(5);
  const lineId = visit.line('Find the drain on the second battery', {
    bookMinutes: 90,
    price: '190',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'there');
  yield floor.on(0, '08:44');
  floor.send('wen', 'takeIntoBay', {
    jobId: visit.jobId,
    bayId: floor.bay('south').id,
    alreadyThere: true,
    movedHow: 'driven',
  });
}

/** An earlier fix did not hold: its repair is urgent now. */
function* fixFailed(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(522, { ...estate, description: 'Estate car, petrol' }));
  yield floor.on(-3, '08:20');
  visit.checkIn([{ words: 'Rattle underneath', conditions: 'Pulling away, cold' }]);
  const lineId = visit.line('Exhaust mountings', { bookMinutes: 50, price: '120', concernId: visit.concerns[0]?.id });
  visit.answer(lineId, 'given', 'there');
  const [worker, bay] = yield* floor.someoneAndBay((one) => one.lifts, ['samuel', 'wen']);
  visit.toBay(worker, bay);
  yield* visit.work(worker, lineId, 35);
  const { fixId } = visit.fix(worker, {
    kind: 'heldBy',
    standsInFor: 'Rear exhaust mounting',
    place: 'Exhaust, rear left',
    heldWith: 'Two turns of stainless strap',
    system: 'exhaust',
    endedByWhat: 'New rear mounting fitted',
    withinDistance: 2_000,
  });
  visit.secondCheck('aoife', fixId, 'Looked at on the lift, holds');
  visit.finish(worker, lineId);
  floor.release(worker);
  yield* visit.leave();
  yield floor.on(0, '08:52');
  const again = new Visit(floor, visit.vehicle);
  again.checkIn([{ words: 'Rattles again', conditions: 'Since the railway crossing' }], {
    kind: 'comeback',
    comebackOfLineId: lineId,
    yardSpot: 'Y3',
    waitsHere: true,
  });
  floor.send('manager', 'endTemporaryFix', {
    temporaryFixId: fixId,
    how: 'failed',
    words: 'Strap slipped off the hanger',
  });
  const mend = again.line('Rear exhaust mounting, new', { bookMinutes: 40, price: '60' });
  again.giveItself(mend);
}

/** Work at the bench counts for the person and not for a bay. */
function* onTheBench(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(524, { ...estate, description: 'Estate car, hybrid', drive: 'hybrid' }));
  yield floor.on(-1, '15:40');
  visit.checkIn([{ words: 'Window does not go up', conditions: 'Driver, since yesterday' }], { yardSpot: 'Y10' });
  const lineId = visit.line('Window regulator, mend at the bench', {
    bookMinutes: 70,
    price: '150',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId);
  yield floor.on(0, '09:34');
  yield* floor.someone(['aoife']);
  const clockId = visit.start('aoife', lineId, true);
  yield floor.on(0, '10:00');
  floor.send('aoife', 'stopWork', { clockId });
  yield floor.on(0, '10:16');
  visit.start('aoife', lineId, true);
}

function* toBeRung(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(526, electricVan, parcelFleet));
  yield floor.on(0, '09:52');
  visit.checkIn(
    [
      { words: 'Wiper leaves a stripe', conditions: 'Rain' },
      { words: 'Tread is low in front', conditions: 'Seen by the driver' },
    ],
    { yardSpot: 'Y6', promisedAt: floor.at(floor.parts.today, '17:00') },
  );
  yield floor.later(7);
  visit.line('Wiper blades, front', { bookMinutes: 15, price: '48', concernId: visit.concerns[0]?.id });
  const concernId = visit.concerns[1]?.id;
  const two = visit.line('Two tyres, front, as they are', { bookMinutes: 45, price: '260', concernId });
  const four = visit.line('Four tyres for the whole year', { bookMinutes: 80, price: '495', concernId });
  floor.send('manager', 'makeChoice', { jobId: visit.jobId, lineIds: [two, four] });
}
