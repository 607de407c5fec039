import type pg from 'pg';
import { v7 as uuidV7 } from 'uuid';
import type { Audit } from '../providers.js';
import { shopNow } from './head.js';
import { inShop } from './shop-transaction.js';

/** Who read the log. Written once and never changed; no change of the shop itself. */
export function makeAudit(pool: pg.Pool): Audit {
  return {
    keep: (shopId, personId, { filter, form, entries }) =>
      inShop(pool, shopId, async (client) => {
        await client.query(
          `insert into audit_read (shop_id, id, read_at, person_id, filter, form, entries)
           select $1, $2, ${shopNow}, $3, $4, $5, $6 from head h where h.shop_id = $1`,
          [shopId, uuidV7(), personId, JSON.stringify(filter), form, entries],
        );
      }),
  };
}
