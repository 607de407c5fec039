import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { jobItem, jobItemFrom, vehicleNameOf } from './job-item.js';
import { jsonObject, rowJson, rowsJson } from './wire-sql.js';

const ofCustomer = `t."customer_id" = $2`;
const mostJobs = 50;

const statement = {
  name: 'read-customer',
  text: `SELECT ${jsonObject({
    customer: rowJson('customer', `t."id" = $2`),
    contacts: rowsJson('contact', { where: ofCustomer, order: 't."ended_at" IS NOT NULL, t."name", t."id"' }),
    standing: rowsJson('standingGoAhead', {
      where: ofCustomer,
      order: 't."ended_at" IS NOT NULL, t."effective_at" DESC, t."id"',
    }),
    vehicles: `(SELECT coalesce(json_agg(${vehicleNameOf('v')} ORDER BY v."plate_key", v."id"), '[]'::json) FROM "vehicle" v
      WHERE v."shop_id" = $1 AND v."customer_id" = $2 AND NOT v."void")`,
    jobs: `(SELECT coalesce(json_agg(i.item), '[]'::json) FROM (SELECT ${jobItem} AS item FROM ${jobItemFrom}
      WHERE j."shop_id" = $1 AND j."customer_id" = $2 AND NOT j."void" ORDER BY j."number" DESC LIMIT ${mostJobs}) i)`,
  })}::text AS view FROM "customer" c WHERE c."shop_id" = $1 AND c."id" = $2 AND NOT c."void"`,
};

/** A customer as JSON text; null where the shop has no such customer. */
export function readCustomer(pool: pg.Pool, shopId: string, customerId: string): Promise<string | null> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ view: string }>({ ...statement, values: [shopId, customerId] });
    return rows[0]?.view ?? null;
  });
}
