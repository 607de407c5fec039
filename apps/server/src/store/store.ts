/**
 * This folder hides SQL from the engine. One command is one transaction: it locks the shop's log head, then (in later
 * statements, so that they see what the lock waited for) reads the time, the key and the slices, and writes everything
 * or nothing. Guarantees rules 11 and 12: numbers without a gap in the order they become visible, one answer for a key.
 */
import type pg from 'pg';
import type { OpenCall, OpenedCommand, WriteStore } from '../engine/ports.js';
import { readRow, rowOf, storedTables } from './columns.js';
import { headOf, type HeadRow, headStatement } from './head.js';
import { inOneWrite } from './one-write.js';
import { writeFailure } from './pg-errors.js';
import { save } from './save.js';
import { bagOf, decodeTables, makeShopCache, type TablesOfRows } from './shop-cache.js';
import { loadCall } from './slices.js';
import { readTakenBack, slicesAround, type TakenBackRows } from './taken-back.js';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const headText = headStatement(readRow(storedTables.counter, 't'));

export function makeStore(pool: pg.Pool): WriteStore {
  const shops = makeShopCache();

  async function open(client: pg.ClientBase, call: OpenCall): Promise<OpenedCommand | null> {
    const { shopId } = call;
    const load = loadCall(shopId, call.slices);
    const { locked, head, loaded } = inOneWrite(client, () => ({
      // The UUID was checked, so it needs no parameter, and the three fit into one simple query.
      locked: client.query(
        `BEGIN; SELECT set_config('app.shop_id', '${shopId}', true); SELECT 1 FROM "head" WHERE "shop_id" = '${shopId}' FOR NO KEY UPDATE`,
      ),
      head: client.query<HeadRow>({
        name: 'read-head',
        text: headText,
        values: [shopId, call.sender, call.key, call.afterKey],
      }),
      loaded: load ? client.query<{ rows: string }>({ ...load, values: [...load.values] }) : null,
    }));
    const results = await Promise.allSettled([locked, head, loaded]);
    for (const result of results) if (result.status === 'rejected') throw result.reason;
    const row = (await head).rows[0];
    if (!row) return null;
    const shop = await shops.of(client, shopId, row.config_seq);
    const takenBack = call.slices.change === undefined ? null : await readTakenBack(client, shopId, call.slices.change);
    const around = takenBack ? await loadAround(client, shopId, takenBack) : null;
    const content = loaded ? decodeTables((await loaded).rows[0]?.rows ?? '{}') : {};
    const counter = row.counter ? { counter: [rowOf<'counter'>(storedTables.counter, row.counter)] } : {};
    return {
      head: headOf(row),
      stored: row.answer,
      versionsAfter: row.after ? new Map(row.after.map(([table, id, version]) => [`${table}/${id}`, version])) : null,
      rows: bagOf(shop, { ...content, ...counter }, around, takenBack?.content),
      calendar: shop.calendar,
      takenBack,
    };
  }

  async function loadAround(client: pg.ClientBase, shopId: string, takenBack: TakenBackRows): Promise<TablesOfRows> {
    const load = loadCall(shopId, slicesAround(takenBack));
    if (!load) return {};
    const { rows } = await client.query<{ rows: string }>({ ...load, values: [...load.values] });
    return decodeTables(rows[0]?.rows ?? '{}');
  }

  return {
    async transaction(call, work) {
      if (!uuid.test(call.shopId)) return null;
      const client = await pool.connect();
      let committed = false;
      try {
        const opened = await open(client, call);
        const result = opened
          ? await work(opened, async (edits, entry) => {
              await save(client, call.shopId, edits, entry);
              committed = true;
            })
          : null;
        if (!committed) await client.query('ROLLBACK');
        client.release();
        return result;
      } catch (failure) {
        await client.query('ROLLBACK').then(
          () => client.release(),
          () => client.release(true),
        );
        const known = writeFailure(failure);
        if (known === null) throw failure;
        return known;
      }
    },
  };
}
