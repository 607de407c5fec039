/** An ordinary visit, with the accidents of ordinary visits: parts that slip or come broken, answers that take their time. */
import { type Technician, technicians } from './cast.js';
import { whoAgrees } from './customer-file.js';
import { type Floor, type FloorBay, type Script } from './floor.js';
import { roadTest, tryIt } from './road-test.js';
import { extraWork, type Task, type TaskPart } from './tasks.js';
import { nobodyAnswers, speak } from './telephone.js';
import { Visit } from './visit.js';
import type { KnownVehicle } from './visit-parts.js';
import { dropsIn, tightened, tightenLater, wheelsOff, wheelsOn } from './wheels.js';

export interface Plan {
  readonly vehicle: KnownVehicle;
  readonly task: Task;
  /** When it drives in, epoch ms. */
  readonly at: number;
  /** Line that it comes back for. */
  readonly comebackOf?: string;
  readonly memory: Memory;
  /** The go-ahead comes at once, so that it has gone home by the evening. */
  readonly atOnce?: boolean;
}

/** What ordinary visits leave behind for later ones. */
export interface Memory {
  readonly done: {
    readonly vehicle: KnownVehicle;
    readonly lineId: string;
    readonly task: Task;
    readonly at: number;
  }[];
  readonly fixes: {
    readonly vehicle: KnownVehicle;
    readonly fixId: string;
    readonly followUpId: string;
    readonly task: Task;
    readonly at: number;
  }[];
}

const skilled: Readonly<Record<string, readonly Technician[]>> = { highVoltage: ['aoife'], refrigerant: ['samuel'] };
const checkers: readonly Technician[] = ['tomasz', 'aoife'];

function fitsTask({ where }: Task, { curbKg = 0 }: KnownVehicle['kind']): (bay: FloorBay) => boolean {
  return (bay) => {
    if (bay.capacityKg !== null && curbKg > bay.capacityKg) return false;
    switch (where) {
      case 'lift':
        return bay.lifts && bay.key !== 'rack';
      case 'rack':
        return bay.key === 'rack';
      case 'floor':
        return bay.key === 'gate' || bay.key === 'long' || bay.key === 'quay';
    }
  };
}

export function* everydayVisit(floor: Floor, plan: Plan): Script {
  const { vehicle, task } = plan;
  const { chance } = floor;
  const visit = new Visit(floor, vehicle);
  yield plan.at;
  const promisedAt = floor.now + (task.minutes + chance.between(120, 420)) * 60_000;
  const comeback =
    plan.comebackOf === undefined ? {} : { kind: 'comeback' as const, comebackOfLineId: plan.comebackOf };
  visit.checkIn([{ words: task.concern, conditions: task.conditions }], {
    ...comeback,
    ...(chance.odds(0.7) ? { promisedAt } : {}),
    ...(chance.odds(0.15) ? { boardNote: 'Customer rings at noon' } : {}),
  });
  yield floor.later(4, 18);
  const { title, minutes, price, skill } = task;
  const lineId = visit.line(title, {
    bookMinutes: minutes,
    price,
    ...(skill === undefined ? {} : { skill }),
    ...(visit.concerns[0] ? { concernId: visit.concerns[0].id } : {}),
  });
  if (plan.atOnce === true) visit.answer(lineId, 'given', 'there');
  else yield* waitForWord(visit, lineId, plan.comebackOf !== undefined);
  const who = (skill === undefined ? undefined : skilled[skill]) ?? technicians;
  let wanted: string | null = null;
  if (task.part?.needed === 'beforeStart') {
    wanted = yield* waitForPart(visit, lineId, task.part, 'manager');
  }
  const [worker, bay] = yield* floor.someoneAndBay(fitsTask(task, vehicle.kind), who);
  visit.toBay(worker, bay);
  yield floor.later(3, 12);
  const last = yield* doWork(visit, { task, lineId, worker, wanted, who });
  yield floor.later(2, 15);
  visit.finish(last, lineId);
  const retorqueId = task.wheels === undefined ? null : tightenLater(visit, last);
  if (chance.odds(0.16)) yield* roadTest(visit, last);
  floor.release(last);
  yield* afterwards(visit, plan, last);
  yield* visit.leave(chance.odds(0.93) ? 'gone' : 'couldNotAppear');
  plan.memory.done.push({ vehicle, lineId, task, at: floor.now });
  if (retorqueId !== null) yield* dropsIn(visit, retorqueId);
}

/** Most say yes at once; some have to be rung, and a hold says so meanwhile. */
function* waitForWord(visit: Visit, lineId: string, isComeback: boolean): Script {
  const { floor } = visit;
  if (isComeback) {
    visit.giveItself(lineId);
    return;
  }
  if (visit.restsOn(lineId) !== null || floor.chance.odds(0.75)) {
    visit.answer(lineId, 'given', 'there');
    return;
  }
  if (floor.chance.odds(0.5)) visit.hold('desk', 'goAhead', { moveOf: visit.vehicle.customer.contact.name });
  yield floor.later(30, 220);
  yield* floor.untilOpen();
  if (floor.chance.odds(0.3)) {
    const again = floor.later(20, 90);
    nobodyAnswers(visit, 'goAhead', again);
    yield again;
    yield* floor.untilOpen();
  }
  const withName = whoAgrees(visit.vehicle.customer, visit.priceOf(lineId));
  speak(visit, 'goAhead', { way: 'telephone', withName, reached: true, answer: 'Go ahead', moveOf: 'shop' });
  visit.answer(lineId, 'given', 'telephone');
}

interface Working {
  readonly task: Task;
  readonly lineId: string;
  readonly worker: Technician;
  readonly wanted: string | null;
  readonly who: readonly Technician[];
}

/** The work itself; gives who did the last of it, still taken. */
function* doWork(visit: Visit, { task, lineId, worker, wanted, who }: Working): Script<Technician> {
  const { floor } = visit;
  const actual = Math.max(15, Math.round(task.minutes * (0.75 + floor.chance.below(60) / 100)));
  const caution = task.caution && floor.chance.odds(0.6) ? visit.caution(worker, task.caution) : null;
  if (task.part?.needed !== 'beforeRefit') {
    yield* withWheelsOff(visit, worker, { task, lineId, minutes: actual });
    noteFinding(visit, task, worker);
    if (wanted !== null) floor.send(worker, 'fitPart', { partLineId: wanted });
    if (caution !== null) floor.send(worker, 'endCaution', { cautionId: caution });
    return worker;
  }
  yield* visit.work(worker, lineId, Math.ceil(actual / 3));
  noteFinding(visit, task, worker);
  if (caution !== null) floor.send(worker, 'endCaution', { cautionId: caution });
  floor.release(worker);
  const part = yield* waitForPart(visit, lineId, task.part, worker);
  const second = visit.bay ? yield* floor.someone(who) : yield* backInBay(visit, task, who);
  yield* withWheelsOff(visit, second, { task, lineId, minutes: Math.ceil((actual * 2) / 3) });
  floor.send(second, 'fitPart', { partLineId: part });
  return second;
}

/** The wheels that the task asks for come off at its beginning and are on and tightened at its end. */
function* withWheelsOff(
  visit: Visit,
  by: Technician,
  { task, lineId, minutes }: { readonly task: Task; readonly lineId: string; readonly minutes: number },
): Script {
  const { wheels } = task;
  if (!wheels) {
    yield* visit.work(by, lineId, minutes);
    return;
  }
  wheelsOff(visit, by, wheels, lineId);
  yield* visit.work(by, lineId, minutes);
  const atOnce = visit.floor.chance.odds(0.7);
  wheelsOn(visit, by, wheels, { torqued: atOnce });
  if (atOnce) return;
  yield visit.floor.later(3, 9);
  tightened(visit, by, wheels);
}

function* backInBay(visit: Visit, task: Task, who: readonly Technician[]): Script<Technician> {
  const [worker, bay] = yield* visit.floor.someoneAndBay(fitsTask(task, visit.vehicle.kind), who);
  visit.toBay(worker, bay);
  yield visit.floor.later(2, 9);
  return worker;
}

/** What was looked at, whether it showed itself, and now and then what is behind it. */
function noteFinding(visit: Visit, { finding, cause }: Task, by: Technician): void {
  const { floor } = visit;
  if (finding && floor.chance.odds(0.8)) visit.finding(by, finding);
  if (cause === undefined || floor.chance.odds(0.5)) return;
  tryIt(visit, by, { appeared: true });
  visit.cause(by, cause, floor.chance.odds(0.8) ? 'found' : 'likely');
  visit.showed = true;
}

/** Wanted, held for, ordered, told later dates, and at last here: gives the part line with all its pieces good. */
function* waitForPart(visit: Visit, lineId: string, part: TaskPart, by: Technician | 'manager'): Script<string> {
  const { floor } = visit;
  const { chance } = floor;
  const { supplier, ...facts } = part;
  const partLineId = visit.want(by, { lineId }, { ...facts, supplierId: floor.supplier(supplier) });
  if (chance.odds(0.85)) visit.hold(by, 'parts', { lineIds: [lineId], partLineIds: [partLineId], moveOf: 'Supplier' });
  yield floor.later(10, 45);
  yield* floor.untilOpen();
  let day = nextDay(floor, chance.between(1, 3));
  visit.order(partLineId, supplier, { state: 'inStock', dueOn: day });
  if (visit.bay && chance.odds(0.88)) {
    yield floor.later(5, 40);
    yield* floor.untilWorking();
    visit.toYard('manager');
  }
  while (chance.odds(0.2)) {
    yield floor.at(day, '11:40') + chance.between(0, 50) * 60_000;
    day = nextDay(floor, chance.between(1, 3));
    visit.due(partLineId, { state: 'backorderedWithDate', dueOn: day, words: 'Not on the van' });
  }
  yield floor.at(day, chance.of(['10:20', '11:50', '14:40'])) + chance.between(0, 20) * 60_000;
  yield* arrival(visit, partLineId, facts.quantity);
  return partLineId;
}

/** A working day of the shop, so many after the day that it now is. */
function nextDay(floor: Floor, days: number): string {
  const today = floor.calendar.dateOf(floor.now);
  return floor.calendar.nextWorkingDay(today, days) ?? today;
}

function* arrival(visit: Visit, partLineId: string, quantity: string): Script {
  const { floor } = visit;
  const { chance } = floor;
  yield* floor.untilOpen();
  if (quantity === '2' && chance.odds(0.3)) {
    visit.receive(partLineId, '1');
    yield* nextRun(visit, partLineId);
    visit.receive(partLineId, '1');
    return;
  }
  if (chance.odds(0.08)) {
    visit.receive(partLineId, quantity, chance.odds(0.6) ? 'damaged' : 'wrong', 'Sent back with the next van');
    yield* nextRun(visit, partLineId);
  }
  visit.receive(partLineId, quantity);
}

function* nextRun(visit: Visit, partLineId: string): Script {
  const { floor } = visit;
  const day = nextDay(floor, 1);
  visit.due(partLineId, { state: 'inStock', dueOn: day });
  yield floor.at(day, '10:25') + floor.chance.between(0, 25) * 60_000;
  yield* floor.untilOpen();
}

/** A temporary fix where the task has one, and now and then work that the customer puts off. */
function* afterwards(visit: Visit, { task, memory }: Plan, by: Technician): Script {
  const { floor, vehicle } = visit;
  if (task.fix && floor.chance.odds(0.5)) {
    const { fixId, followUpId } = visit.fix(by, { ...task.fix, withinDistance: 5_000, withinDays: 90 });
    yield floor.later(4, 20);
    const other = checkers.find((one) => one !== by) ?? 'tomasz';
    visit.secondCheck(other, fixId, 'Looked at on the lift, holds');
    memory.fixes.push({ vehicle, fixId, followUpId, task, at: floor.now });
  }
  if (!floor.chance.odds(0.15)) return;
  const extra = floor.chance.of(extraWork);
  const lineId = visit.line(extra.title, { bookMinutes: extra.minutes, price: extra.price }, by);
  yield floor.later(5, 40);
  yield* floor.untilOpen();
  visit.answer(lineId, floor.chance.odds(0.7) ? 'deferred' : 'declined');
  floor.send('desk', 'addFollowUp', {
    vehicleId: visit.vehicleId,
    jobId: visit.jobId,
    kind: 'deferred',
    title: extra.title,
    lineId,
    urgency: 'whenItSuits',
    withinDays: 120,
  });
}

/** The vehicle comes back for the permanent repair of an earlier fix. */
export function* repairVisit(floor: Floor, fix: Memory['fixes'][number], at: number): Script {
  const { vehicle, task, fixId, followUpId } = fix;
  const visit = new Visit(floor, vehicle);
  yield at;
  visit.checkIn([{ words: `For good now: ${task.title.toLowerCase()}`, conditions: task.conditions }]);
  yield floor.later(3, 12);
  const lineId = visit.line(task.fix?.endedByWhat ?? task.title, {
    bookMinutes: 45,
    price: '95',
    fromFollowUpId: followUpId,
  });
  visit.answer(lineId, 'given', 'there');
  const [worker, bay] = yield* floor.someoneAndBay(fitsTask(task, vehicle.kind));
  visit.toBay(worker, bay);
  yield floor.later(2, 8);
  yield* visit.work(worker, lineId, floor.chance.between(25, 55));
  visit.finish(worker, lineId);
  floor.release(worker);
  floor.send('manager', 'endTemporaryFix', { temporaryFixId: fixId, how: 'repaired', lineId });
  yield* visit.leave();
}
