import type pg from 'pg';
import { shopNow } from '../store/head.js';
import { makeShopCache, type ShopRows } from '../store/shop-cache.js';

/** The shop's own rows with its calendar, and its time. */
export interface ShopAtHand extends ShopRows {
  /** Epoch ms by the shop's clock. */
  readonly now: number;
}

/** Reads the head of the shop and, where they changed since the last time, its own rows; null: no such shop. */
export type ShopOf = (client: pg.ClientBase, shopId: string) => Promise<ShopAtHand | null>;

export function makeShopOf(): ShopOf {
  const cache = makeShopCache();
  return async (client, shopId) => {
    const { rows } = await client.query<{ config_seq: number; now: number }>({
      name: 'read-shop-head',
      text: `SELECT h."config_seq", (extract(epoch from ${shopNow}) * 1000)::bigint AS now FROM "head" h WHERE h."shop_id" = $1`,
      values: [shopId],
    });
    const head = rows[0];
    if (!head) return null;
    return { ...(await cache.of(client, shopId, head.config_seq)), now: head.now };
  };
}
