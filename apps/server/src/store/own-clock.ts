import type pg from 'pg';
import type { ClockResult, ClockSetting, SetOwnClock } from '../providers.js';
import { shopNow } from './head.js';
import { inShop } from './shop-transaction.js';

interface ClockRow {
  readonly own: boolean;
  readonly behind: boolean;
}

/** Sets the clock of a demo or test shop, which stands in the head of its log; commands wait on the same lock. */
export function makeSetOwnClock(pool: pg.Pool): SetOwnClock {
  return (shopId, setting) =>
    inShop(pool, shopId, async (client): Promise<ClockResult> => {
      const { rows } = await client.query<ClockRow>(
        `select clock_rate is not null as own, coalesce($2::float8 < extract(epoch from last_at) * 1000, false) as behind
           from head where shop_id = $1 for no key update`,
        [shopId, setting.at],
      );
      if (rows[0]?.own !== true) return { kind: 'real' };
      if (rows[0].behind) return { kind: 'behind' };
      return { kind: 'set', now: await setClock(client, shopId, setting) };
    });
}

async function setClock(client: pg.ClientBase, shopId: string, { at, rate }: ClockSetting): Promise<number> {
  const { rows } = await client.query<{ now: number }>(
    `update head h set clock_shown = coalesce(to_timestamp($2::float8 / 1000), ${shopNow}), clock_real = clock_timestamp(),
            clock_rate = $3
      where h.shop_id = $1
      returning (extract(epoch from ${shopNow}) * 1000)::bigint as now`,
    [shopId, at, rate],
  );
  return rows[0]?.now ?? 0;
}
