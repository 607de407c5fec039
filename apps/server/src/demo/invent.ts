/** Three months of a shop, ending at twenty to eleven of a working day: the same for one seed and one day. */
import type { CommandInputs } from '@holdfast/domain';
import { addDays } from '@holdfast/shop-calendar';
import {
  type BayKey,
  bays,
  council,
  demoShop,
  demoShopId,
  opening,
  owner,
  parcelFleet,
  people,
  type PersonKey,
  suppliers,
  type SupplierKey,
  townsperson,
} from './cast.js';
import { electricVan, plateOf, sweeper, tipper, townKinds, van } from './vehicles.js';
import { type Chance, chanceFrom } from './chance.js';
import { everydayVisit, type Memory, repairVisit } from './everyday.js';
import { beginExpected } from './expected.js';
import { Floor, type FloorBay, minute, type Script } from './floor.js';
import { Ledger, type Sender } from './ledger.js';
import { beginPast } from './past.js';
import { quickTasks, tasks } from './tasks.js';
import { dockVan, theVan } from './the-van.js';
import { beginThisMorning } from './this-morning.js';
import { beginPresence } from './presence.js';
import type { KnownVehicle } from './visit-parts.js';

/** What the clock of the shop shows when the demo starts. */
export const startsAt = '10:40';

const historyDays = 91;
/** Working days before today on which only short work without parts comes in. */
const quickDays = 11;
/** As long as changes are kept with their rows. */
const textsDays = 30;

export interface Invention {
  readonly ledger: Ledger;
  readonly people: ReadonlyMap<PersonKey, Sender>;
  /** The shop's time at the end, epoch ms. */
  readonly now: number;
}

/** `today` is a working day in the zone of the shop, `YYYY-MM-DD`. */
export function inventShop(seed: number, today: string): Invention {
  const chance = chanceFrom(seed);
  const textsFrom = Date.parse(addDays(today, -textsDays));
  const ledger = new Ledger({ chance, shopId: demoShopId, textsFrom });
  const floor = setUp(ledger, chance, today);
  const now = floor.at(today, startsAt);
  const memory: Memory = { done: [], fixes: [] };
  const fleet = vehicles(chance);
  floor.begin(floor.at(addDays(today, -historyDays), '05:00'), days(floor, fleet, memory));
  const story = dockVan();
  story.isHere = true;
  floor.begin(floor.on(-1, '07:00'), theVan(floor, story));
  beginPast(floor, fleet);
  beginExpected(floor, fleet);
  beginThisMorning(floor);
  floor.run(now);
  return { ledger, people: floor.parts.people, now };
}

function setUp(ledger: Ledger, chance: Chance, today: string): Floor {
  const validFrom = addDays(today, -historyDays - 2);
  const at = Date.parse(`${validFrom}T06:00:00Z`);
  const persons = new Map<PersonKey, Sender>();
  const made = ledger.send(
    null,
    'setUpShop',
    { code: '', shop: demoShop, owner: { name: owner.name, password: '' } },
    at,
  );
  const boss = { personId: made['person'] ?? '', name: owner.name, roles: owner.roles };
  persons.set('owner', boss);
  ledger.send(boss, 'setOpeningHours', { validFrom, ...opening }, at);
  const floorBays = bays.map(({ key, facts }) =>
    addBay(ledger, boss, { key, facts, at, inspectedOn: addDays(today, -40), validFrom }),
  );
  for (const { key, name, roles, skills = [], homeBay } of people) {
    const home = floorBays.find((bay) => bay.key === homeBay);
    const list = skills.map(({ skill, untilMonths }) =>
      untilMonths === undefined ? { skill } : { skill, until: addDays(today, untilMonths * 30) },
    );
    const input = {
      name,
      roles: [...roles],
      skills: list,
      ...(home ? { homeBayId: home.id } : {}),
      ...(key === 'wall' ? {} : { hours: { validFrom, ...opening } }),
    };
    const { person = '' } = ledger.send(boss, 'addPerson', input, at);
    persons.set(key, { personId: person, name, roles });
  }
  const firms = new Map<SupplierKey, string>();
  for (const { key, facts } of suppliers) firms.set(key, ledger.send(boss, 'addSupplier', facts, at)['supplier'] ?? '');
  const saltSeasonId = chance.id(at);
  ledger.send(
    boss,
    'setSeasons',
    { seasons: [{ seasonId: saltSeasonId, name: 'Salt on the roads', fromDay: '12-01', toDay: '03-31', validFrom }] },
    at,
  );
  return new Floor({ ledger, chance, today, people: persons, bays: floorBays, suppliers: firms, saltSeasonId });
}

interface NewBay {
  readonly key: BayKey;
  readonly facts: CommandInputs['addBay'];
  readonly at: number;
  readonly inspectedOn: string;
  readonly validFrom: string;
}

function addBay(ledger: Ledger, by: Sender, { key, facts, at, inspectedOn, validFrom }: NewBay): FloorBay {
  const lifts = facts.equipment.some((item) => item.grips !== null);
  const { bay = '' } = ledger.send(by, 'addBay', { ...facts, validFrom, ...(lifts ? { inspectedOn } : {}) }, at);
  const capacityKg = facts.capacity === undefined ? null : Number(facts.capacity);
  return { key, id: bay, lifts, capacityKg, free: facts.spots, kept: false };
}

function vehicles(chance: Chance): KnownVehicle[] {
  const one = (number: number, kind: KnownVehicle['kind'], customer: KnownVehicle['customer']): KnownVehicle => ({
    plate: plateOf(number),
    kind,
    customer,
    odometer: chance.between(18_000, 190_000),
    isHere: false,
    id: null,
    lastHere: 0,
  });
  const fleet = Array.from({ length: 14 }, (_, n) => one(10 + n, n % 4 === 3 ? electricVan : van, parcelFleet));
  const town = Array.from({ length: 130 }, (_, n) => one(30 + n, chance.of(townKinds), townsperson(n)));
  return [...fleet, one(24, tipper, council), one(25, sweeper, council), ...town];
}

/** Each morning it is settled who drives in on that day. */
function* days(floor: Floor, fleet: readonly KnownVehicle[], memory: Memory): Script {
  const { today, ledger } = floor.parts;
  const last = floor.day(-1);
  for (let day = floor.calendar.dateOf(floor.now); day <= last; day = addDays(day, 1)) {
    yield floor.at(day, '05:00');
    ledger.tidy(floor.now);
    if (!floor.calendar.isWorkingDay(day)) continue;
    beginPresence(floor, day);
    if (day >= floor.day(-4)) floor.bay('quay').kept = true;
    if (day === last) keepBays(floor);
    planDay(floor, fleet, memory, day);
  }
  yield floor.at(today, '05:00');
  ledger.tidy(floor.now);
  beginPresence(floor, today);
}

/** The bays that this morning's scenes need; what is left serves the last ordinary day. */
function keepBays(floor: Floor): void {
  floor.bay('south').kept = true;
}

/** In the last days only short work comes in, so that the past has gone home when this morning begins. */
function planDay(floor: Floor, fleet: readonly KnownVehicle[], memory: Memory, day: string): void {
  const { chance } = floor;
  const left = [...Array(quickDays).keys()].map((n) => -1 - n).find((offset) => floor.day(offset) === day);
  const isEnd = left !== undefined;
  const arrivals = left === -1 ? 5 : chance.between(5, 6);
  const latest = left === -1 ? 75 : left === -2 ? 200 : 330;
  for (let n = 0; n < arrivals; n += 1) {
    const candidates = fleet.filter((one) => !one.isHere && floor.now - one.lastHere > 6 * 86_400_000);
    const vehicle = chance.of(candidates);
    const mine = (isEnd ? quickTasks : tasks).filter(
      (task) => task.only === undefined || (task.only === 'electric') === (vehicle.kind.drive === 'electric'),
    );
    vehicle.isHere = true;
    const at = floor.at(day, '07:33') + chance.between(0, latest) * minute + chance.below(50_000);
    const atOnce = left !== undefined && left >= -2;
    // There is one rack: on the last days nobody queues for it.
    const task = chance.of(atOnce || tooHeavyForRack(vehicle) ? mine.filter(({ where }) => where !== 'rack') : mine);
    floor.begin(at, everydayVisit(floor, { vehicle, task, at, memory, atOnce }));
  }
  if (!isEnd) planReturns(floor, memory, day);
}

function tooHeavyForRack({ kind }: KnownVehicle): boolean {
  return (kind.curbKg ?? 0) > 3_500;
}

/** Comebacks, and vehicles that come for the permanent repair of an earlier fix. */
function planReturns(floor: Floor, memory: Memory, day: string): void {
  const { chance } = floor;
  const at = () => floor.at(day, '08:05') + chance.between(0, 200) * minute + chance.below(50_000);
  if (chance.odds(0.15)) {
    const done = memory.done.find(
      (one) => !one.vehicle.isHere && floor.now - one.at > 3 * 86_400_000 && chance.odds(0.3),
    );
    if (done) {
      const { vehicle, lineId, task } = done;
      memory.done.splice(memory.done.indexOf(done), 1);
      vehicle.isHere = true;
      const when = at();
      floor.begin(when, everydayVisit(floor, { vehicle, task, at: when, comebackOf: lineId, memory }));
    }
  }
  const due = memory.fixes.find((one) => !one.vehicle.isHere && floor.now - one.at > 12 * 86_400_000);
  if (due && chance.odds(0.4)) {
    memory.fixes.splice(memory.fixes.indexOf(due), 1);
    due.vehicle.isHere = true;
    const when = at();
    floor.begin(when, repairVisit(floor, due, when));
  }
}
