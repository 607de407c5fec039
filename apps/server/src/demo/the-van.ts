/**
 * The story of the demo: a delivery van backed into a loading dock. Its rear step bumper is on backorder, one end of it
 * is left off, a sensor bracket is held by a temporary fastener, and a lamp is sealed until its lens arrives, which is
 * after the salt season begins.
 */
import { parcelFleet } from './cast.js';
import { plateOf, van } from './vehicles.js';
import type { Floor, Script } from './floor.js';
import { arrange } from './past.js';
import { Visit } from './visit.js';
import type { KnownVehicle } from './visit-parts.js';

const longestWait = 90;

/** The day before which the lamp must be done, and the later one that its supplier names; null when the season is far. */
function lensDay(floor: Floor): string | null {
  const { today } = floor.parts;
  const year = Number(today.slice(0, 4));
  const first = [`${year}-12-01`, `${year + 1}-12-01`].find((day) => day > today) ?? today;
  const away = (Date.parse(first) - Date.parse(today)) / 86_400_000;
  return away <= longestWait ? floor.calendar.nextWorkingDay(first, 6) : null;
}

export function dockVan(): KnownVehicle {
  return {
    plate: plateOf(3),
    kind: van,
    customer: parcelFleet,
    odometer: 118_400,
    isHere: false,
    id: null,
    lastHere: 0,
  };
}

export function* theVan(floor: Floor, vehicle: KnownVehicle): Script {
  const visit = new Visit(floor, vehicle);
  const bay = floor.bay('south');
  yield floor.on(-1, '07:48');
  visit.checkIn(
    [
      { words: 'Backed into a loading dock, step bumper hangs down on the right', conditions: 'Always' },
      { words: 'Parking sensor sounds without anything behind', conditions: 'Reverse gear' },
    ],
    { promisedAt: floor.at(floor.parts.today, '09:30'), keyTag: '17', yardSpot: 'Y2', boardNote: 'Round starts 10:00' },
  );
  yield floor.later(6);
  const look = visit.line('Make it safe and see what is bent', {
    bookMinutes: 40,
    price: '60',
    concernId: visit.concerns[0]?.id,
  });
  visit.answer(look, 'given', 'there');
  yield floor.on(-1, '08:12');
  yield* floor.both('tomasz', bay);
  visit.toBay('tomasz', bay);
  yield* visit.work('tomasz', look, 38);
  visit.finding('tomasz', {
    place: 'Rear step bumper, right end',
    kind: 'fault',
    words: 'Bracket torn, end bent under the sill',
    concernId: visit.concerns[0]?.id,
  });
  visit.finding('tomasz', { place: 'Reversing lamp, right', kind: 'fault', words: 'Lens broken, reflector dry' });
  visit.finish('tomasz', look);
  yield* repairAsked(visit);
}

function* repairAsked(visit: Visit): Script {
  const { floor } = visit;
  yield floor.later(5);
  const bumper = visit.line(
    'Rear step bumper, new',
    { bookMinutes: 110, price: '845', concernId: visit.concerns[0]?.id },
    'tomasz',
  );
  const sensor = visit.line(
    'Sensor bracket, rear right',
    { bookMinutes: 30, price: '75', concernId: visit.concerns[1]?.id },
    'tomasz',
  );
  const lamp = visit.line('Lens of the reversing lamp', { bookMinutes: 20, price: '58' }, 'tomasz');
  yield floor.later(35);
  for (const lineId of [bumper, sensor, lamp]) visit.answer(lineId, 'given', 'telephone');
  const [bumperPart, lens] = wantParts(visit, bumper, lamp);
  yield floor.later(20);
  orderParts(visit, bumperPart, lens);
  yield* visit.work('tomasz', bumper, 45);
  visit.hold('tomasz', 'parts', {
    lineIds: [bumper, lamp],
    partLineIds: [bumperPart, lens],
    moveOf: 'Lantern Body Supply',
    words: 'Step bumper and lens',
  });
  yield* visit.work('tomasz', sensor, 32);
  const fixes = setAside(visit, bumper, sensor, lamp);
  visit.finish('tomasz', sensor);
  floor.release('tomasz');
  yield* nextMorning(visit, { fixes, bumper, bumperPart });
}

function wantParts(visit: Visit, bumper: string, lamp: string): [bumperPart: string, lens: string] {
  const supplierId = visit.floor.supplier('body');
  const step = { description: 'Rear step bumper with brackets', number: 'LB-2051', unitPrice: '512' } as const;
  const lens = { description: 'Lens, reversing lamp, right', number: 'LB-0866', unitPrice: '24.90' } as const;
  return [
    visit.want('tomasz', { lineId: bumper }, { ...step, quantity: '1', needed: 'beforeRefit', supplierId }),
    visit.want('tomasz', { lineId: lamp }, { ...lens, quantity: '1', needed: 'beforeStart', supplierId }),
  ];
}

function orderParts(visit: Visit, bumperPart: string, lens: string): void {
  const { floor } = visit;
  const words = 'One in the country, spoken for';
  visit.order(bumperPart, 'body', { state: 'backorderedWithDate', dueOn: floor.day(4), words });
  const dueOn = lensDay(floor);
  visit.order(lens, 'body', dueOn === null ? { state: 'backorderedNoDate' } : { state: 'backorderedWithDate', dueOn });
}

/** What stands in until the parts are here: three fixes on tier-2 systems, each with its limits. */
function setAside(visit: Visit, bumper: string, sensor: string, lamp: string): string[] {
  const { floor } = visit;
  const { saltSeasonId } = floor.parts;
  const bumperFix = visit.fix(
    'tomasz',
    {
      kind: 'leftOff',
      lineId: bumper,
      standsInFor: 'Right end of the rear step bumper',
      place: 'Rear step bumper, right end',
      system: 'mayDrop',
      endedByWhat: 'New step bumper fitted',
      removedPieceAt: 'Loft, shelf 2, tied to the old bracket',
      beforeDay: floor.day(15),
    },
    { remainingMinutes: 65 },
  );
  const sensorFix = visit.fix('tomasz', {
    kind: 'heldBy',
    lineId: sensor,
    standsInFor: 'Clip of the sensor bracket',
    place: 'Parking sensor, rear right',
    heldWith: 'Bolt M6 × 20 with washer and a cable tie',
    system: 'driverAssistance',
    endedByWhat: 'Bracket of the new bumper takes the sensor',
    withinDistance: 3_000,
    distanceUnit: 'km',
  });
  const lampFix = visit.fix(
    'tomasz',
    {
      kind: 'leftOpen',
      lineId: lamp,
      standsInFor: 'Lens of the reversing lamp',
      place: 'Reversing lamp, right',
      heldWith: 'Clear lamp film, edges sealed',
      system: 'lighting',
      endedByWhat: 'New lens fitted',
      seasonId: saltSeasonId,
    },
    { words: 'Film does not stand salt water' },
  );
  return [bumperFix.fixId, sensorFix.fixId, lampFix.fixId];
}

interface Overnight {
  readonly fixes: readonly string[];
  readonly bumper: string;
  readonly bumperPart: string;
}

/** The corner trim, which is not torn, gets its colour while the van keeps its bay. */
function toThePainter(visit: Visit, bumper: string): void {
  const { floor } = visit;
  const facts = { component: 'Corner trim, rear right', price: '85', dueBackAt: floor.at(floor.day(1), '14:00') };
  const subletId = arrange(visit, 'componentOut', bumper, { firm: 'Slipway Paint', ...facts });
  floor.send('desk', 'sendComponentAway', { subletId });
}

function* nextMorning(visit: Visit, { fixes, bumper, bumperPart }: Overnight): Script {
  const { floor } = visit;
  const { ledger } = floor.parts;
  yield floor.on(0, '07:52');
  for (const fixId of fixes) {
    visit.secondCheck('aoife', fixId, 'Pulled and shaken, holds; nothing sharp stands out');
    yield floor.later(2);
  }
  yield floor.on(0, '08:12');
  toThePainter(visit, bumper);
  yield floor.on(0, '08:31');
  // A day typed wrong is taken back within the minute, and the right one told.
  visit.due(bumperPart, { state: 'backorderedWithDate', dueOn: floor.day(5), words: 'By telephone' });
  yield floor.later(1);
  floor.send('clerk', 'takeBack', { seq: ledger.changes.length });
  visit.due(bumperPart, { state: 'backorderedWithDate', dueOn: floor.day(9), words: 'By telephone' });
}
