import type { Locale } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
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

/** The words of a shop, for what is done for it behind an answer. */
export function localeOfShop(pool: pg.Pool, shopId: string): Promise<Locale> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ locale: Locale }>('select locale from shop where shop_id = $1', [shopId]);
    return rows[0]?.locale ?? 'en-GB';
  });
}

/** Names of everybody who works or worked there, by id. */
export function peopleOf(pool: pg.Pool, shopId: string): Promise<ReadonlyMap<string, string>> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ id: string; name: string }>(
      'select id, name from person where shop_id = $1 and not void',
      [shopId],
    );
    return new Map(rows.map(({ id, name }) => [id, name]));
  });
}
