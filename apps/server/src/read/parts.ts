import { cursorParts, type OrdersQuery, pageSize, type PartLinesQuery } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { readPage } from './page.js';
import { hangingRows, isoText, wireFields } from './wire-sql.js';

const stillOpen = ['wanted', 'ordered', 'partArrived', 'arrived'];

const partLinesStatement = {
  name: 'part-lines',
  text: `SELECT r."recordedAt" || '~' || r."id" AS cursor, row_to_json(r)::text AS item FROM (
  SELECT ${wireFields('partLine', 't')}, v."plate", v."description" AS "vehicleDescription", j."number" AS "jobNumber",
    l."title" AS "lineTitle", s."name" AS "supplierName", o."reference" AS "orderReference",
    ${hangingRows('dueIn', 'k."part_line_id" = t."id"', 'k."ordinal", k."id"')} AS "dueIns",
    (SELECT coalesce(json_agg(json_build_object('holdId', h."id", 'jobId', h."job_id", 'fromAt', ${isoText('h."from_at"')}) ORDER BY h."from_at", h."id"), '[]'::json)
      FROM "hold_part" hp JOIN "hold" h ON h."shop_id" = hp."shop_id" AND h."id" = hp."hold_id"
      WHERE hp."shop_id" = $1 AND hp."part_line_id" = t."id" AND NOT hp."void" AND NOT h."void" AND h."to_at" IS NULL) AS "holds"
  FROM "part_line" t
  JOIN "vehicle" v ON v."shop_id" = t."shop_id" AND v."id" = t."vehicle_id"
  LEFT JOIN "job" j ON j."shop_id" = t."shop_id" AND j."id" = t."job_id"
  LEFT JOIN "work_line" l ON l."shop_id" = t."shop_id" AND l."id" = t."line_id"
  LEFT JOIN "supplier" s ON s."shop_id" = t."shop_id" AND s."id" = t."supplier_id"
  LEFT JOIN "parts_order" o ON o."shop_id" = t."shop_id" AND o."id" = t."order_id"
  WHERE t."shop_id" = $1 AND NOT t."void" AND ($2::text[] IS NULL OR t."state" = ANY($2))
    AND ($3::timestamptz IS NULL OR (t."recorded_at", t."id") > ($3, $4::uuid))
  ORDER BY t."recorded_at", t."id" LIMIT $5
) r`,
};

/** Part lines of all vehicles, first recorded first. */
export function readPartLines(pool: pg.Pool, shopId: string, query: PartLinesQuery): Promise<string> {
  const values = [shopId, statesOf(query.state), ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...partLinesStatement, values }, pageSize(query.limit)));
}

function statesOf(state: PartLinesQuery['state']): readonly string[] | null {
  switch (state) {
    case 'all':
      return null;
    case 'open':
      return stillOpen;
    case 'wanted':
    case 'ordered':
    case 'partArrived':
    case 'arrived':
    case 'fitted':
    case 'cancelled':
      return [state];
  }
}

const ordersStatement = {
  name: 'orders',
  text: `SELECT r."recordedAt" || '~' || r."id" AS cursor, row_to_json(r)::text AS item FROM (
  SELECT ${wireFields('partsOrder', 't')}, s."name" AS "supplierName",
    (SELECT coalesce(json_agg(json_build_object('id', p."id", 'vehicleId', p."vehicle_id", 'jobId', p."job_id", 'plate', v."plate",
        'jobNumber', j."number", 'description', p."description", 'quantity', p."quantity"::text, 'unit', p."unit",
        'here', p."here"::text, 'state', p."state", 'dueOn', p."due_on"::text) ORDER BY p."recorded_at", p."id"), '[]'::json)
      FROM "part_line" p JOIN "vehicle" v ON v."shop_id" = p."shop_id" AND v."id" = p."vehicle_id"
      LEFT JOIN "job" j ON j."shop_id" = p."shop_id" AND j."id" = p."job_id"
      WHERE p."shop_id" = $1 AND p."order_id" = t."id" AND NOT p."void") AS "partLines"
  FROM "parts_order" t JOIN "supplier" s ON s."shop_id" = t."shop_id" AND s."id" = t."supplier_id"
  WHERE t."shop_id" = $1 AND NOT t."void" AND ($2::timestamptz IS NULL OR (t."recorded_at", t."id") < ($2, $3::uuid))
  ORDER BY t."recorded_at" DESC, t."id" DESC LIMIT $4
) r`,
};

/** Parts orders with their lines, newest first. */
export function readOrders(pool: pg.Pool, shopId: string, query: OrdersQuery): Promise<string> {
  const values = [shopId, ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...ordersStatement, values }, pageSize(query.limit)));
}
