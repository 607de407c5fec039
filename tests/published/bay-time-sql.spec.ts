/** A month of an invented shop, accounted for twice: by the server, and by one SQL query written independently. */
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { bayTimeClasses } from '@holdfast/bay-time';
import { calendarOf } from '@holdfast/shop-calendar';
import { withShop } from '../../apps/server/src/database/pools.js';
import { readBayTime } from '../../apps/server/src/read/bay-time.js';
import { makeShopOf } from '../../apps/server/src/read/shop-of.js';
import { type BayTimeShop, inventBayTimeShop } from '../kit/bay-time-shop.js';
import { type BayClasses, bayTimeInSql } from '../kit/bay-time-sql.js';
import { type FreshDatabase, freshDatabase } from '../kit/database.js';
import { storeBayTimeShop } from '../kit/store-bay-time-shop.js';

let database: FreshDatabase;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.drop());

const noNoughts = (sums: Readonly<Record<string, number>>) =>
  Object.fromEntries(Object.entries(sums).filter(([, ms]) => ms !== 0));

async function bothOpinions(shop: BayTimeShop, from: string, to: string, now: number) {
  await storeBayTimeShop(database.app, shop, now);
  const calendar = calendarOf({
    zone: shop.zone,
    hours: (shop.rows.openingHours ?? []) as Parameters<typeof calendarOf>[0]['hours'],
    exceptions: [],
  });
  const window = { from: calendar.workingDayBounds(from).from, to: calendar.workingDayBounds(to).to };
  const view = await readBayTime(database.app, makeShopOf(), shop.shopId, { from, to, segments: 'false' });
  const ours = new Map<string, BayClasses>(
    (view?.bays ?? []).map(({ bayId, totals }) => [
      bayId,
      { classMs: noNoughts(totals.classMs), heldMs: noNoughts(totals.heldMs) },
    ]),
  );
  const theirs = await withShop(database.app, shop.shopId, (client) => bayTimeInSql(client, shop.shopId, window, now));
  return { ours, theirs };
}

describe('bay time of a month with a change of clocks, by two roads', () => {
  const at = (iso: string): number => Date.parse(iso);

  it('every class and every reason of every bay, to the millisecond, in three shops that have every class', async () => {
    const found = new Set<string>();
    for (const seed of [1, 2, 3]) {
      const shop = inventBayTimeShop({ seed, bays: 6, firstDay: '2026-02-20', lastDay: '2026-04-10' });
      const { ours, theirs } = await bothOpinions(shop, '2026-03-01', '2026-03-31', at('2026-04-20T12:00:00Z'));
      expect(theirs).toEqual(ours);
      for (const { classMs, heldMs } of ours.values()) {
        for (const name of [...Object.keys(classMs), ...Object.keys(heldMs)]) found.add(name);
      }
    }
    const reasons = ['parts', 'goAhead', 'tool', 'information'];
    expect([...bayTimeClasses, ...reasons].filter((name) => !found.has(name))).toEqual([]);
  });

  it('the same while the month goes on: what runs ends now', async () => {
    const shop = inventBayTimeShop({ seed: 4, bays: 6, firstDay: '2026-02-20', lastDay: '2026-04-10' });
    const { ours, theirs } = await bothOpinions(shop, '2026-03-01', '2026-03-31', at('2026-03-18T14:07:00.123Z'));
    expect(theirs).toEqual(ours);
  });
});
