/** Book hours with the go-ahead against the hours of people, for the days ahead. */
import type { DayLoadQuery, DayLoadView } from '@holdfast/contract';
import { addDays, totalMs, workingIntervals } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { calendarsOfPeople } from './people-calendars.js';
import type { ShopAtHand, ShopOf } from './shop-of.js';
import { type Booked, type Capacity, spreadLoad } from './spread-load.js';
import { epochMs } from './wire-sql.js';

interface OpenWork {
  readonly expected_at: number | null;
  readonly is_here: boolean;
  readonly book_minutes: number | null;
  readonly clocked_ms: number;
}

/** Open lines with the go-ahead, with the time that people were clocked on them. */
const statement = {
  name: 'read-day-load',
  text: `SELECT ${epochMs('j."expected_at"')} AS expected_at, j."arrived_at" IS NOT NULL AS is_here, l."book_minutes",
  coalesce((SELECT sum(date_part('epoch', coalesce(c."to_at", to_timestamp($2::double precision / 1000)) - c."from_at") * 1000)
    FROM "clock" c WHERE c."shop_id" = $1 AND c."line_id" = l."id" AND NOT c."void"), 0)::double precision AS clocked_ms
FROM "work_line" l JOIN "job" j ON j."shop_id" = l."shop_id" AND j."id" = l."job_id"
WHERE l."shop_id" = $1 AND NOT l."void" AND NOT j."void" AND j."ended_at" IS NULL AND l."go_ahead" = 'given'
  AND l."progress" IN ('planned', 'started', 'stopped')`,
};
/** Booked visits with the book time of all that is not put off or turned down: whoever books it means it. */
const bookedStatement = {
  name: 'read-booked',
  text: `SELECT j."id", ${epochMs('j."expected_at"')} AS expected_at, coalesce((SELECT sum(l."book_minutes") FROM "work_line" l
    WHERE l."shop_id" = $1 AND l."job_id" = j."id" AND NOT l."void" AND l."go_ahead" NOT IN ('deferred', 'declined') AND l."progress" = 'planned'), 0)::int AS minutes
FROM "job" j WHERE j."shop_id" = $1 AND NOT j."void" AND j."ended_at" IS NULL AND j."arrived_at" IS NULL AND j."expected_at" IS NOT NULL`,
};

const usualDays = 14;
const minuteMs = 60_000;

/** Null: no such shop. From today on where no day is named; days are of the shop's zone. */
export function readDayLoad(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: DayLoadQuery,
): Promise<DayLoadView | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop) return null;
      const { rows: open } = await client.query<OpenWork>({ ...statement, values: [shopId, shop.now] });
      const { rows: booked } = await client.query<{ expected_at: number; minutes: number }>({
        ...bookedStatement,
        values: [shopId],
      });
      const today = shop.calendar.dateOf(shop.now);
      const wanted = query.from ?? today;
      const from = wanted < today ? today : wanted;
      const last = addDays(from, Number(query.days ?? usualDays) - 1);
      const capacities: Capacity[] = [];
      for (let day = today; day <= last; day = addDays(day, 1)) {
        capacities.push({ day, peopleMinutes: peopleMinutesOn(shop, day) });
      }
      const here = open.filter((line) => line.is_here).reduce((sum, line) => sum + leftOf(line), 0);
      const visits = booked.map((job): Booked => ({
        day: shop.calendar.dateOf(job.expected_at),
        minutes: job.minutes,
      }));
      return {
        days: spreadLoad(capacities, here, visits).filter(({ day }) => day >= from),
        linesWithoutHours: open.filter((line) => line.book_minutes === null).length,
      };
    },
    { oneView: true },
  );
}

function leftOf(line: OpenWork): number {
  return Math.max(0, Math.round((line.book_minutes ?? 0) - line.clocked_ms / minuteMs));
}

/** Minutes for which technicians are there on a day, within the hours of the shop and less breaks; of today what is left. */
function peopleMinutesOn(shop: ShopAtHand, day: string): number {
  const { rows, calendar, now } = shop;
  const people = calendarsOfPeople(shop);
  const { from, to } = calendar.dayBounds(day);
  const window = { from: Math.min(to, Math.max(from, now)), to };
  const technicians = rows.list('person', (one) => one.active && one.roles.includes('technician'));
  const ms = technicians.reduce(
    (sum, person) => sum + totalMs(workingIntervals(calendar, people.get(person.id) ?? calendar, window)),
    0,
  );
  return Math.round(ms / minuteMs);
}
