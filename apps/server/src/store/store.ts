/**
 * This folder hides SQL from the engine. A transaction locks the shop's log head, then (in later statements, so that they
 * see what the lock waited for) reads the time, the keys and the slices, and writes everything or nothing. Guarantees
 * rules 11 and 12: numbers without a gap in the order they become visible, one answer for a key.
 */
import type pg from 'pg';
import type { WriteStore } from '../engine/ports.js';
import { openCommands } from './open-command.js';
import { writeFailure } from './pg-errors.js';
import { save } from './save.js';
import { makeShopCache } from './shop-cache.js';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

export function makeStore(pool: pg.Pool): WriteStore {
  const shops = makeShopCache();
  return {
    async transaction(shopId, calls, work) {
      if (!uuid.test(shopId)) return null;
      const client = await pool.connect();
      const done = { committed: false };
      try {
        const opened = await openCommands(client, shops, shopId, calls);
        const result = opened
          ? await work(opened, async (changes) => {
              await save(client, shopId, changes);
              done.committed = true;
            })
          : null;
        if (!done.committed) await client.query('ROLLBACK');
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
