/** Whom the desk has to call this morning: one that is ready, and one whose parts came when it was gone. */
import type { Floor, Script } from './floor.js';
import { sceneVehicle } from './scene-vehicle.js';
import { nobodyAnswers } from './telephone.js';
import { estate, townKinds } from './vehicles.js';
import { Visit } from './visit.js';

/** Ready since yesterday; nobody answered, and the next try is named. */
export function* readyAndNotReached(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(538, townKinds[1] ?? estate));
  yield floor.on(-2, '10:40');
  visit.checkIn([{ words: 'Wipers judder', conditions: 'Light rain' }], { yardSpot: 'Y13', keyTag: '44' });
  const lineId = visit.line('Wiper arms and blades', {
    bookMinutes: 30,
    price: '96',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(lineId, 'given', 'there');
  const worker = yield* floor.someone();
  yield* visit.work(worker, lineId, 25);
  visit.finish(worker, lineId);
  floor.release(worker);
  floor.send('desk', 'recordConcernOutcome', { concernId: visit.concerns[0]?.id ?? '', outcome: 'gone' });
  yield floor.on(-1, '16:35');
  nobodyAnswers(visit, 'ready', floor.at(floor.parts.today, '12:15'));
}

/** It went home without its lamp; the lamp came this morning. */
export function* partsCameForOneGone(floor: Floor): Script {
  const visit = new Visit(floor, sceneVehicle(539, townKinds[2] ?? estate));
  yield floor.on(-6, '11:10');
  visit.checkIn([{ words: 'Rear light leaks', conditions: 'Car wash' }]);
  const title = 'Rear light unit, left';
  const lineId = visit.line(title, { bookMinutes: 25, price: '145', concernId: visit.concerns[0]?.id });
  visit.answer(lineId, 'given', 'there');
  const lamp = {
    description: title,
    number: 'LB-0911',
    quantity: '1',
    unitPrice: '88',
    needed: 'beforeStart',
  } as const;
  const partLineId = visit.want('manager', { lineId }, { ...lamp, supplierId: floor.supplier('body') });
  visit.order(partLineId, 'body', { state: 'toOrder', dueOn: floor.day(0) });
  floor.send('desk', 'addFollowUp', {
    vehicleId: visit.vehicleId,
    jobId: visit.jobId,
    kind: 'carriedOver',
    title,
    lineId,
    partLineIds: [partLineId],
    remainingMinutes: 25,
    withinDays: 30,
  });
  yield* visit.leave('stillThere');
  yield floor.on(0, '09:37');
  visit.receive(partLineId, '1');
}
