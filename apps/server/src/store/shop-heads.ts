/** Log heads of new shops, and the own clock of demo and test shops. */
import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import type { ShopMaker } from '../engine/set-up.js';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

async function inShop<T>(pool: pg.Pool, shopId: string, work: (client: pg.ClientBase) => Promise<T>): Promise<T> {
  if (!uuid.test(shopId)) throw new RangeError('a shop is named by its UUID');
  const client = await pool.connect();
  try {
    await client.query(`BEGIN; SELECT set_config('app.shop_id', '${shopId}', true)`);
    const result = await work(client);
    await client.query('COMMIT');
    client.release();
    return result;
  } catch (failure) {
    await client.query('ROLLBACK').then(
      () => client.release(),
      () => client.release(true),
    );
    throw failure;
  }
}

export interface OwnClock {
  /** Epoch ms that the shop shows from now on; null: what it shows goes on. */
  readonly at: number | null;
  /** Shop seconds for each real second; 0 stands still. */
  readonly rate: number;
}

export type ClockAnswer = 'set' | 'realTime' | 'backwards';

export interface ShopHeads extends ShopMaker {
  /** Sets the clock of a shop that has its own; never to before its last change. */
  setClock(shopId: string, clock: OwnClock): Promise<ClockAnswer>;
}

export function makeShopHeads(pool: pg.Pool): ShopHeads {
  return {
    makeHead: (shopId, ownClock) =>
      inShop(pool, shopId, async (client) => {
        const clock = ownClock ? 'clock_timestamp(), clock_timestamp(), 1' : 'NULL, NULL, NULL';
        await client.query(
          `INSERT INTO "head" ("shop_id", "seq", "config_seq", "epoch", "last_at", "clock_real", "clock_shown", "clock_rate")
VALUES ($1, 0, 0, $2, '1970-01-01T00:00:00Z', ${clock})`,
          [shopId, randomUUID()],
        );
      }),
    setClock: (shopId, { at, rate }) =>
      inShop(pool, shopId, async (client) => {
        const { rows } = await client.query<{ own: boolean; behind: boolean }>(
          `SELECT "clock_rate" IS NOT NULL AS own, $2::timestamptz < "last_at" AS behind FROM "head" WHERE "shop_id" = $1 FOR NO KEY UPDATE`,
          [shopId, at === null ? null : new Date(at).toISOString()],
        );
        if (!rows[0]?.own) return 'realTime';
        if (rows[0].behind) return 'backwards';
        await client.query(
          `UPDATE "head" SET "clock_shown" = coalesce($2::timestamptz, "clock_shown" + (clock_timestamp() - "clock_real") * "clock_rate"),
  "clock_real" = clock_timestamp(), "clock_rate" = $3 WHERE "shop_id" = $1`,
          [shopId, at === null ? null : new Date(at).toISOString(), rate],
        );
        return 'set';
      }),
  };
}
