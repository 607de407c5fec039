/**
 * One search over what people know a vehicle by: plate, customer, key, job number, yard spot. Everything is compared by
 * its folded key from the beginning, so that however it is typed it is found. Visits that are here are few and are
 * folded here, by their customer's name too; vehicles and customers carry their keys in columns.
 */
import { type FindQuery, type FindView, mostFound } from '@holdfast/contract';
import { foldKey } from '@holdfast/domain';
import type pg from 'pg';
import { withShop } from '../database/pools.js';

type Item = FindView['items'][number];
type JobItem = Extract<Item, { kind: 'job' }>;

interface HereRow {
  readonly id: string;
  readonly number: number;
  readonly key_tag: string | null;
  readonly plate: string;
  readonly plate_key: string;
  readonly description: string;
  readonly yard_spot: string | null;
  readonly customer: string | null;
}

const hereStatement = {
  name: 'find-here',
  text: `SELECT j."id", j."number", j."key_tag", v."plate", v."plate_key", v."description",
  (SELECT p."yard_spot" FROM "place" p WHERE p."shop_id" = $1 AND p."job_id" = j."id" AND p."to_at" IS NULL AND NOT p."void" LIMIT 1) AS yard_spot, c."name_key" AS customer
FROM "job" j JOIN "vehicle" v ON v."shop_id" = j."shop_id" AND v."id" = j."vehicle_id"
LEFT JOIN "customer" c ON c."shop_id" = j."shop_id" AND c."id" = j."customer_id"
WHERE j."shop_id" = $1 AND j."ended_at" IS NULL AND NOT j."void" ORDER BY j."number"`,
};

const endedStatement = {
  name: 'find-ended',
  text: `SELECT j."id", j."number", v."plate", v."description" FROM "job" j
JOIN "vehicle" v ON v."shop_id" = j."shop_id" AND v."id" = j."vehicle_id"
WHERE j."shop_id" = $1 AND j."number" = $2 AND j."ended_at" IS NOT NULL AND NOT j."void"`,
};

const vehiclesStatement = {
  name: 'find-vehicles',
  // A record that was merged into another is found under its old plate, and is the other.
  text: `SELECT k."id", k."plate", k."description" FROM (
  SELECT coalesce(v."merged_into_id", v."id") AS id, min(v."plate_key") AS by_key FROM "vehicle" v
  WHERE v."shop_id" = $1 AND NOT v."void" AND starts_with(v."plate_key", $2) GROUP BY 1 ORDER BY 2, 1 LIMIT ${mostFound}) f
JOIN "vehicle" k ON k."shop_id" = $1 AND k."id" = f.id ORDER BY f.by_key, k."id"`,
};

const customersStatement = {
  name: 'find-customers',
  text: `SELECT k."id", k."name", k."fleet" FROM (
  SELECT coalesce(c."merged_into_id", c."id") AS id, min(c."name_key") AS by_key FROM "customer" c
  WHERE c."shop_id" = $1 AND NOT c."void" AND starts_with(c."name_key", $2) GROUP BY 1 ORDER BY 2, 1 LIMIT ${mostFound}) f
JOIN "customer" k ON k."shop_id" = $1 AND k."id" = f.id ORDER BY f.by_key, k."id"`,
};

/** By what a visit is found, if at all. */
function foundBy(row: HereRow, key: string): JobItem['by'] | null {
  const begins = (text: string | null) => text !== null && foldKey(text).startsWith(key);
  if (row.plate_key.startsWith(key)) return 'plate';
  if (String(row.number).startsWith(key)) return 'number';
  if (begins(row.key_tag)) return 'keyTag';
  if (begins(row.yard_spot)) return 'yardSpot';
  return row.customer?.startsWith(key) === true ? 'customer' : null;
}

async function jobs(client: pg.ClientBase, shopId: string, key: string): Promise<JobItem[]> {
  const here = await client.query<HereRow>({ ...hereStatement, values: [shopId] });
  const found = here.rows.flatMap((row): JobItem[] => {
    const by = foundBy(row, key);
    const { id, number, plate, description } = row;
    return by === null ? [] : [{ kind: 'job', id, number, plate, description, by, open: true }];
  });
  if (!/^\d{1,9}$/.test(key)) return found;
  const ended = await client.query<Pick<JobItem, 'id' | 'number' | 'plate' | 'description'>>({
    ...endedStatement,
    values: [shopId, Number(key)],
  });
  return [...found, ...ended.rows.map((row): JobItem => ({ kind: 'job', ...row, by: 'number', open: false }))];
}

export function find(pool: pg.Pool, shopId: string, { q }: FindQuery): Promise<FindView> {
  const key = foldKey(q);
  if (key === '') return Promise.resolve({ items: [] });
  return withShop(pool, shopId, async (client) => {
    const vehicles = await client.query<{ id: string; plate: string; description: string }>({
      ...vehiclesStatement,
      values: [shopId, key],
    });
    const customers = await client.query<{ id: string; name: string; fleet: string | null }>({
      ...customersStatement,
      values: [shopId, key],
    });
    const items: Item[] = [
      ...(await jobs(client, shopId, key)),
      ...vehicles.rows.map((row) => ({ kind: 'vehicle' as const, ...row })),
      ...customers.rows.map((row) => ({ kind: 'customer' as const, ...row })),
    ];
    return { items: items.slice(0, mostFound) };
  });
}
