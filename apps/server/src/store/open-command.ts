/**
 * Opens a command: the lock on the shop's head first, and behind it in the same write what has to see what the lock
 * waited for: the time, the key, the slices.
 */
import type pg from 'pg';
import type { OpenCall, OpenedCommand } from '../engine/ports.js';
import { readRow, rowOf, storedTables } from './columns.js';
import { headOf, type HeadRow, headStatement } from './head.js';
import { inOneWrite } from './one-write.js';
import { bagOf, decodeTables, type makeShopCache, type TablesOfRows } from './shop-cache.js';
import { type LoadCall, loadCall } from './slices.js';
import { readTakenBack, slicesAround } from './taken-back.js';

const headText = headStatement(readRow(storedTables.counter, 't'));

/** Null when there is no such shop. The id of the shop must have been checked to be a UUID. */
export async function openCommand(
  client: pg.ClientBase,
  shops: ReturnType<typeof makeShopCache>,
  call: OpenCall,
): Promise<OpenedCommand | null> {
  const { shopId } = call;
  const load = loadCall(shopId, call.slices);
  const { locked, head, loaded } = inOneWrite(client, () => ({
    // The UUID was checked, so it needs no parameter, and the three fit into one simple query. All that follows goes by
    // key: the general plan of each statement is as good as one for its values, and is made once.
    locked: client.query(
      `BEGIN; SELECT set_config('app.shop_id', '${shopId}', true), set_config('plan_cache_mode', 'force_generic_plan', true); SELECT 1 FROM "head" WHERE "shop_id" = '${shopId}' FOR NO KEY UPDATE`,
    ),
    head: client.query<HeadRow>({
      name: 'read-head',
      text: headText,
      values: [shopId, call.sender, call.key, call.afterKey],
    }),
    loaded: load ? query(client, load) : null,
  }));
  const results = await Promise.allSettled([locked, head, loaded]);
  for (const result of results) if (result.status === 'rejected') throw result.reason;
  const row = (await head).rows[0];
  if (!row) return null;
  const shop = await shops.of(client, shopId, row.config_seq);
  const takenBack = call.slices.change === undefined ? null : await readTakenBack(client, shopId, call.slices.change);
  const around = takenBack ? loadCall(shopId, slicesAround(takenBack)) : null;
  return {
    head: headOf(row),
    stored: row.answer,
    versionsAfter: row.after ? new Map(row.after.map(([table, id, version]) => [`${table}/${id}`, version])) : null,
    rows: bagOf(
      shop,
      loaded ? contentOf(await loaded) : null,
      row.counter ? { counter: [rowOf<'counter'>(storedTables.counter, row.counter)] } : null,
      around ? contentOf(await query(client, around)) : null,
      takenBack?.content,
    ),
    calendar: shop.calendar,
    takenBack,
  };
}

const query = (client: pg.ClientBase, { values, ...statement }: LoadCall) =>
  client.query<{ rows: string }>({ ...statement, values: [...values] });

const contentOf = ({ rows }: pg.QueryResult<{ rows: string }>): TablesOfRows => decodeTables(rows[0]?.rows ?? '{}');
