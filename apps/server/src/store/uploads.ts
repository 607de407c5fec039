import type pg from 'pg';
import { withShop } from '../database/pools.js';
import type { Uploads } from '../providers.js';
import { inShop } from './shop-transaction.js';

/** Rows of what was uploaded; the files themselves are kept by http/. */
export function makeUploads(pool: pg.Pool): Uploads {
  return {
    async add(shopId, personId, { content, width, height, bytes }) {
      await inShop(pool, shopId, async (client) => {
        await client.query(
          `insert into upload (shop_id, content, width, height, bytes, person_id, uploaded_at)
           values ($1, $2, $3, $4, $5, $6, clock_timestamp()) on conflict (shop_id, content) do nothing`,
          [shopId, content, width, height, bytes, personId],
        );
      });
    },
    has: (shopId, content) =>
      withShop(pool, shopId, async (client) => {
        const { rows } = await client.query('select from upload where shop_id = $1 and content = $2', [
          shopId,
          content,
        ]);
        return rows.length > 0;
      }),
  };
}
