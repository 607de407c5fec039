/** Puts an invented shop of bay time straight into its tables, past the engine: years of work in seconds. */
import type { TableName } from '@holdfast/domain';
import type pg from 'pg';
import { insertRows, storedTables, writtenRow } from '../../apps/server/src/store/columns.js';
import { inShop } from '../../apps/server/src/store/shop-transaction.js';
import type { BayTimeShop } from './bay-time-shop.js';

const inOrder: readonly TableName[] = [
  'shop',
  'openingHours',
  'shopSetting',
  'bay',
  'baySpec',
  'person',
  'personHours',
];
const atOnce = 5_000;

/** Puts the shop into the database, with its clock standing at `now` (epoch ms). */
export function storeBayTimeShop(pool: pg.Pool, { shopId, rows }: BayTimeShop, now: number): Promise<void> {
  return inShop(pool, shopId, async (client) => {
    await client.query(`set local statement_timeout = '120s'; set local idle_in_transaction_session_timeout = '120s'`);
    const names = [...inOrder, ...(Object.keys(rows) as TableName[]).filter((name) => !inOrder.includes(name))];
    for (const name of names) {
      const table = storedTables[name];
      const list = rows[name] ?? [];
      for (let from = 0; from < list.length; from += atOnce) {
        const part = list.slice(from, from + atOnce).map((row) => writtenRow(table, row));
        await client.query(insertRows(table), [shopId, JSON.stringify(part)]);
      }
    }
    await client.query(
      `INSERT INTO "head" ("shop_id", "seq", "config_seq", "epoch", "last_at", "clock_real", "clock_shown", "clock_rate")
       VALUES ($1, 1, 1, gen_random_uuid(), to_timestamp($2::double precision / 1000), clock_timestamp(), to_timestamp($2::double precision / 1000), 0)`,
      [shopId, now],
    );
  });
}
