/**
 * An invented shop with years of work in its bays, for the account of bay time: seeded, so that one seed gives one and
 * the same shop. Everything that the account looks at is in it: spots, a bay out of use, hours that change, a night
 * shift over a change of clocks, road tests, benches, outsiders, two people on a line, choices, lines one after another,
 * holds on lines and on whole jobs, several at once, collection, and jobs of the shop itself that are stored.
 */
import type { TableName } from '@holdfast/domain';
import { calendarOf, sameHours } from '@holdfast/shop-calendar';
import { chanceFrom } from '../../apps/server/src/demo/chance.js';
import { Invented, type Stall, visitIn } from './bay-time-visit.js';

export interface BayTimeShop {
  readonly shopId: string;
  readonly zone: string;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly rows: Partial<Record<TableName, object[]>>;
}

export interface BayTimeShopOptions {
  readonly seed: number;
  readonly bays: number;
  /** `YYYY-MM-DD`, both included */
  readonly firstDay: string;
  readonly lastDay: string;
}

const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const zone = 'Europe/London';

/** Hours from a day on; a Saturday night shift runs past midnight, and in March and October over the change of clocks. */
function hoursFrom(validFrom: string, close: string) {
  return {
    validFrom,
    week: { ...sameHours([...weekdays], [['08:00', close]]), sat: [['22:00', '06:00'] as const] },
    breaks: sameHours([...weekdays], [['12:30', '13:00']]),
  };
}

function addBays(shop: Invented, { bays, firstDay }: BayTimeShopOptions): Stall[] {
  const person = (name: string) => shop.add('person', shop.from, { name, roles: ['technician'], active: true });
  const stalls: Stall[] = [];
  const start = shop.calendar.dateOf(shop.from);
  const later = (days: number) => shop.calendar.dateOf(shop.from + days * 86_400_000 + 43_200_000);
  for (let n = 1; n <= bays; n += 1) {
    const bayId = shop.add('bay', shop.from, { name: `Bay ${n}`, position: n });
    const spec = { bayId, spots: n === bays ? 2 : 1, equipment: ['flat'], capacityUnit: 'kg' };
    shop.add('baySpec', shop.from, { ...spec, validFrom: firstDay, outOfUse: false });
    if (n === 2) {
      shop.add('baySpec', shop.from, { ...spec, validFrom: later(5), outOfUse: true });
      shop.add('baySpec', shop.from, { ...spec, validFrom: later(12), outOfUse: false });
    }
    for (let spot = 1; spot <= spec.spots; spot += 1) {
      const crew = { technician: person(`Technician ${n}.${spot}`), helper: person(`Helper ${n}.${spot}`) };
      stalls.push({ bayId, spot, crew });
      if (n % 2 === 0) continue;
      const breaks = sameHours(
        [...weekdays],
        [
          ['10:00', '10:15'],
          ['15:30', '15:45'],
        ],
      );
      const week = sameHours([...weekdays], [['08:00', '16:30']]);
      shop.add('personHours', shop.from, { personId: crew.technician, validFrom: start, week, breaks });
    }
  }
  return stalls;
}

/** The whole shop, in memory. */
export function inventBayTimeShop(options: BayTimeShopOptions): BayTimeShop {
  const { seed, firstDay, lastDay } = options;
  const first = { ...hoursFrom(firstDay, '17:00') };
  const middle = new Date((Date.parse(firstDay) + Date.parse(lastDay)) / 2).toISOString().slice(0, 10);
  const hours = [first, hoursFrom(middle, '18:00')];
  const calendar = calendarOf({ zone, hours, exceptions: [] });
  const from = calendar.dayBounds(firstDay).from;
  const until = calendar.workingDayBounds(lastDay).to;
  const shop = new Invented(chanceFrom(seed), from, calendar);
  shop.add('shop', from, {
    id: shop.shopId,
    name: 'Invented',
    zone,
    currency: 'GBP',
    units: 'metric',
    locale: 'en-GB',
  });
  for (const row of hours) shop.add('openingHours', from, { ...row });
  shop.add('shopSetting', from, {
    validFrom: firstDay,
    graceMinutes: 15,
    personFiguresToLeads: false,
    tolerancePercent: '10',
    floorRecordsGoAheads: true,
  });
  for (const [at, stall] of addBays(shop, options).entries()) {
    const vehicleId = shop.add('vehicle', from, {
      plate: `BT ${at}`,
      plateKey: `BT${at}`,
      description: 'van',
      kind: 'light',
      drive: 'combustion',
      rolls: true,
      mayBeDriven: true,
    });
    let free = shop.later(from, shop.chance.between(0, 200));
    while (free < until) {
      free = shop.later(visitIn(shop, stall, vehicleId, free), shop.chance.of([0, 10, 30, 90, 200]));
    }
  }
  return { shopId: shop.shopId, zone, firstDay, lastDay, rows: shop.rows };
}
