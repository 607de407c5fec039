import { cursorParts, type CustomersQuery, pageSize } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { jobItem, jobItemFrom, vehicleNameOf } from './job-item.js';
import { readPage } from './page.js';
import { jsonObject, rowJson, rowsJson } from './wire-sql.js';

const ofCustomer = `t."customer_id" = kept."id"`;
const mostJobs = 50;

const statement = {
  name: 'read-customer',
  text: `SELECT ${jsonObject({
    customer: rowJson('customer', `t."id" = kept."id"`),
    contacts: rowsJson('contact', { where: ofCustomer, order: 't."ended_at" IS NOT NULL, t."name", t."id"' }),
    standing: rowsJson('standingGoAhead', {
      where: ofCustomer,
      order: 't."ended_at" IS NOT NULL, t."effective_at" DESC, t."id"',
    }),
    vehicles: `(SELECT coalesce(json_agg(${vehicleNameOf('v')} ORDER BY v."plate_key", v."id"), '[]'::json) FROM "vehicle" v
      WHERE v."shop_id" = $1 AND v."customer_id" = kept."id" AND v."merged_into_id" IS NULL AND NOT v."void")`,
    jobs: `(SELECT coalesce(json_agg(i.item), '[]'::json) FROM (SELECT ${jobItem} AS item FROM ${jobItemFrom}
      WHERE j."shop_id" = $1 AND j."customer_id" = kept."id" AND NOT j."void" ORDER BY j."number" DESC LIMIT ${mostJobs}) i)`,
  })}::text AS view FROM "customer" kept WHERE kept."shop_id" = $1 AND NOT kept."void"
  AND kept."id" = coalesce((SELECT m."merged_into_id" FROM "customer" m WHERE m."shop_id" = $1 AND m."id" = $2), $2)`,
};

const listStatement = {
  name: 'customers',
  text: `SELECT c."name_key" || '~' || c."id" AS cursor, json_build_object('id', c."id", 'name', c."name", 'fleet', c."fleet",
  'contacts', (SELECT coalesce(json_agg(json_build_object('name', k."name", 'phone', k."phone", 'mail', k."mail") ORDER BY k."id"), '[]'::json)
    FROM "contact" k WHERE k."shop_id" = $1 AND k."customer_id" = c."id" AND k."ended_at" IS NULL AND NOT k."void"),
  'vehicles', (SELECT count(*) FROM "vehicle" v WHERE v."shop_id" = $1 AND v."customer_id" = c."id" AND NOT v."void" AND v."merged_into_id" IS NULL))::text AS item
FROM "customer" c WHERE c."shop_id" = $1 AND NOT c."void" AND c."merged_into_id" IS NULL
  AND ($2::text IS NULL OR (c."name_key", c."id") > ($2, $3::uuid)) ORDER BY c."name_key", c."id" LIMIT $4`,
};

/** Customers in the order of their folded names. */
export function readCustomers(pool: pg.Pool, shopId: string, query: CustomersQuery): Promise<string> {
  const values = [shopId, ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...listStatement, values }, pageSize(query.limit)));
}

/** A customer as JSON text, of a merged record the one it was merged into; null where the shop has none. */
export function readCustomer(pool: pg.Pool, shopId: string, customerId: string): Promise<string | null> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ view: string }>({ ...statement, values: [shopId, customerId] });
    return rows[0]?.view ?? null;
  });
}
