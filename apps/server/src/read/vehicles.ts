import { cursorParts, pageSize, type VehiclesQuery } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { customerNameOf, jobItem, jobItemFrom } from './job-item.js';
import { readPage } from './page.js';
import { hangingRows, jsonObject, rowJson, rowsJson } from './wire-sql.js';

const listStatement = {
  name: 'vehicles',
  text: `SELECT v."plate_key" || '~' || v."id" AS cursor, json_build_object(
  'id', v."id", 'plate', v."plate", 'description', v."description", 'vin', v."vin", 'customer', ${customerNameOf('c')},
  'openJobId', (SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" = v."id" AND j."ended_at" IS NULL AND NOT j."void"),
  'fixesOn', (SELECT count(*) FROM "temporary_fix" f WHERE f."shop_id" = $1 AND f."vehicle_id" = v."id" AND f."state" <> 'ended' AND NOT f."void"),
  'followUpsOpen', (SELECT count(*) FROM "follow_up" f WHERE f."shop_id" = $1 AND f."vehicle_id" = v."id" AND f."state" = 'open' AND NOT f."void")
)::text AS item
FROM "vehicle" v LEFT JOIN "customer" c ON c."shop_id" = v."shop_id" AND c."id" = v."customer_id"
WHERE v."shop_id" = $1 AND NOT v."void" AND ($2::text IS NULL OR (v."plate_key", v."id") > ($2, $3::uuid))
ORDER BY v."plate_key", v."id" LIMIT $4`,
};

/** Vehicles in the order of their folded plates. */
export function readVehicles(pool: pg.Pool, shopId: string, query: VehiclesQuery): Promise<string> {
  const values = [shopId, ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...listStatement, values }, pageSize(query.limit)));
}

const ofVehicle = `t."vehicle_id" = $2`;
const newestFirst = `t."effective_at" DESC, t."id"`;

const oneStatement = {
  name: 'read-vehicle',
  text: `SELECT ${jsonObject({
    vehicle: rowJson('vehicle', `t."id" = $2`),
    customer: rowJson('customer', `t."id" = v."customer_id"`),
    contacts: rowsJson('contact', { where: `t."customer_id" = v."customer_id"`, order: 't."name", t."id"' }),
    cautions: rowsJson('caution', { where: ofVehicle, order: `t."ended_at" IS NOT NULL, ${newestFirst}` }),
    odometerReadings: rowsJson('odometerReading', { where: ofVehicle, order: newestFirst }),
    jobs: `(SELECT coalesce(json_agg(i.item), '[]'::json) FROM (SELECT ${jobItem} AS item FROM ${jobItemFrom}
      WHERE j."shop_id" = $1 AND j."vehicle_id" = $2 AND NOT j."void" ORDER BY j."number" DESC) i)`,
    findings: rowsJson('finding', { where: ofVehicle, order: `t."place_key", ${newestFirst}` }),
    photos: rowsJson('photo', { where: ofVehicle, order: newestFirst }),
    temporaryFixes: rowsJson('temporaryFix', {
      where: ofVehicle,
      order: `t."state" = 'ended', ${newestFirst}`,
      also: [
        `${hangingRows('secondCheck', 'k."temporary_fix_id" = t."id"', 'k."effective_at", k."id"')} AS "secondChecks"`,
      ],
    }),
    followUps: rowsJson('followUp', { where: ofVehicle, order: `t."state" <> 'open', ${newestFirst}` }),
    partLines: rowsJson('partLine', {
      where: `${ofVehicle} AND t."state" NOT IN ('fitted', 'cancelled')`,
      order: newestFirst,
    }),
    sheets: rowsJson('sheet', { where: ofVehicle, order: newestFirst }),
  })}::text AS view FROM "vehicle" v WHERE v."shop_id" = $1 AND v."id" = $2 AND NOT v."void"`,
};

/** A vehicle with its history as JSON text; null where the shop has no such vehicle. */
export function readVehicle(pool: pg.Pool, shopId: string, vehicleId: string): Promise<string | null> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ view: string }>({ ...oneStatement, values: [shopId, vehicleId] });
    return rows[0]?.view ?? null;
  });
}
