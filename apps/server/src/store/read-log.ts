/** The log as feeds and catch-ups read it. A read-only transaction for each call; nothing is locked. */
import type pg from 'pg';
import type { LogReader } from '../engine/ports.js';
import { withShop } from '../database/pools.js';
import { shopNow } from './head.js';

interface HeadRow {
  readonly seq: number;
  readonly epoch: string;
  readonly now: number;
}

export function makeLogReader(pool: pg.Pool): LogReader {
  async function head(client: pg.ClientBase, shopId: string) {
    const { rows } = await client.query<HeadRow>({
      name: 'log-head',
      text: `SELECT h."seq", h."epoch", (extract(epoch from ${shopNow}) * 1000)::bigint AS now FROM "head" h WHERE h."shop_id" = $1`,
      values: [shopId],
    });
    return rows[0] ?? null;
  }
  return {
    head: (shopId) => withShop(pool, shopId, (client) => head(client, shopId)),
    changesAfter: (shopId, after, audience, limit) =>
      withShop(
        pool,
        shopId,
        async (client) => {
          const column = audience === 'staff' ? 'staff' : 'wall';
          const { rows } = await client.query<{ seq: number; text: string }>({
            name: `log-after-${column}`,
            text: `SELECT r."seq", r."${column}" AS text FROM "change_rows" r WHERE r."shop_id" = $1 AND r."seq" > $2 ORDER BY r."seq" LIMIT $3`,
            values: [shopId, after, limit],
          });
          if (rows[0] && rows[0].seq !== after + 1) return null;
          if (rows.length > 0) return rows;
          const now = await head(client, shopId);
          return now && after === now.seq ? [] : null;
          // One view: a change between the two reads would look like a log that does not reach back far enough.
        },
        { oneView: true },
      ),
  };
}
