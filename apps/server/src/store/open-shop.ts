import type pg from 'pg';
import { inShop } from './shop-transaction.js';

/**
 * The head of a new shop's log, at number 0. With `ownClock` the shop keeps a time of its own (rate 1, from now), which
 * the demo may set. A head that stands is left as it is, and with it its clock.
 */
export function makeOpenShop(
  pool: pg.Pool,
): (shopId: string, options: { readonly ownClock: boolean }) => Promise<void> {
  return (shopId, { ownClock }) =>
    inShop(pool, shopId, async (client) => {
      await client.query(
        `insert into head (shop_id, epoch, last_at, clock_real, clock_shown, clock_rate)
         select $1, gen_random_uuid(), now(), own.at, own.at, case when own.at is null then null else 1.0 end
           from (select case when $2::boolean then now() end as at) own
         on conflict (shop_id) do nothing`,
        [shopId, ownClock],
      );
    });
}
