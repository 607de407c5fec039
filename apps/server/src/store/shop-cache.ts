/**
 * The shop's own rows (people, skills, bays, hours, seasons, suppliers, settings) are in every bag and change seldom.
 * They are kept in the process with the log number of their last change, which the locked head row carries: a stale
 * copy is noticed before any decision rests on it.
 */
import { hoursOfShop, type Row, Rows, type TableName } from '@holdfast/domain';
import { type Calendar, calendarOf } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { shopTables } from '../engine/shop-tables.js';
import { readRow, rowOf, storedTables } from './columns.js';

export type TablesOfRows = { readonly [T in TableName]?: readonly Row<T>[] };

export interface ShopRows {
  readonly configSeq: number;
  readonly content: TablesOfRows;
  /** The same as a bag, on which each command's bag is laid. */
  readonly rows: Rows;
  readonly calendar: Calendar;
}

const statement = `SELECT json_build_object(${shopTables
  .map((name) => {
    const table = storedTables[name];
    return `'${name}', (SELECT json_agg(${readRow(table, 't')}) FROM ${table.sql} t WHERE t."shop_id" = $1 AND NOT t."void")`;
  })
  .join(', ')})::text AS rows`;

export function decodeTables(text: string): TablesOfRows {
  const raw = JSON.parse(text) as Partial<Record<TableName, unknown[][] | null>>;
  const content: Partial<Record<TableName, unknown[]>> = {};
  for (const [name, rows] of Object.entries(raw) as [TableName, unknown[][] | null][]) {
    content[name] = (rows ?? []).map((values) => rowOf(storedTables[name], values));
  }
  return content as TablesOfRows;
}

export function makeShopCache() {
  const kept = new Map<string, ShopRows>();
  return {
    /** The shop's rows as of `configSeq`; read through `client` when the copy is older. */
    async of(client: pg.ClientBase, shopId: string, configSeq: number): Promise<ShopRows> {
      const known = kept.get(shopId);
      if (known?.configSeq === configSeq) return known;
      const { rows } = await client.query<{ rows: string }>({ name: 'load-shop', text: statement, values: [shopId] });
      const content = decodeTables(rows[0]?.rows ?? '{}');
      const own = Rows.of(content);
      const fresh = { configSeq, content, rows: own, calendar: calendarOf(hoursOfShop(own)) };
      kept.set(shopId, fresh);
      if (kept.size > 500) kept.delete(kept.keys().next().value ?? shopId);
      return fresh;
    },
  };
}

/** A bag on top of the shop's own rows, which it shares; of two copies of a row the later one counts. */
export function bagOf(shop: ShopRows, ...loaded: readonly (TablesOfRows | null | undefined)[]): Rows {
  return loaded.reduce<Rows>((bag, content) => (content ? bag.with(content) : bag), shop.rows);
}
