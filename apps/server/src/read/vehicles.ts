import { cursorParts, pageSize, type VehiclesQuery } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { zoneWhen } from '../store/zone-sql.js';
import { customerNameOf, jobItem, jobItemFrom } from './job-item.js';
import { readPage } from './page.js';
import { hangingRows, isoText, jsonObject, rowJson, rowsJson } from './wire-sql.js';

const listStatement = {
  name: 'vehicles',
  text: `SELECT v."plate_key" || '~' || v."id" AS cursor, json_build_object(
  'id', v."id", 'plate', v."plate", 'description', v."description", 'vin', v."vin",
  'kind', v."kind", 'drive', v."drive", 'curbKg', v."curb_kg", 'grossKg', v."gross_kg", 'customer', ${customerNameOf('c')},
  'phone', (SELECT k."phone" FROM "contact" k WHERE k."shop_id" = $1 AND k."customer_id" = v."customer_id" AND k."phone" IS NOT NULL AND k."ended_at" IS NULL AND NOT k."void" ORDER BY k."id" LIMIT 1),
  'openJobId', (SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" = v."id" AND j."ended_at" IS NULL AND j."arrived_at" IS NOT NULL AND NOT j."void"),
  'fixesOn', (SELECT count(*) FROM "temporary_fix" f WHERE f."shop_id" = $1 AND f."vehicle_id" = v."id" AND f."state" <> 'ended' AND NOT f."void"),
  'followUpsOpen', (SELECT count(*) FROM "follow_up" f WHERE f."shop_id" = $1 AND f."vehicle_id" = v."id" AND f."state" = 'open' AND NOT f."void")
)::text AS item
FROM "vehicle" v LEFT JOIN "customer" c ON c."shop_id" = v."shop_id" AND c."id" = v."customer_id"
WHERE v."shop_id" = $1 AND NOT v."void" AND v."merged_into_id" IS NULL AND ($2::text IS NULL OR (v."plate_key", v."id") > ($2, $3::uuid))
ORDER BY v."plate_key", v."id" LIMIT $4`,
};

/** Vehicles in the order of their folded plates. */
export function readVehicles(pool: pg.Pool, shopId: string, query: VehiclesQuery): Promise<string> {
  const values = [shopId, ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...listStatement, values }, pageSize(query.limit)));
}

const ofVehicle = `t."vehicle_id" = kept."id"`;
const newestFirst = `t."effective_at" DESC, t."id"`;

/** The months that the shop's setting of the day said, counted in the zone of the shop from the day it ended; null: none. */
const guaranteeUntil = (row: string, months: string) => {
  const day = `(${row}."ended_at" AT TIME ZONE ${zoneWhen(`${row}."ended_at"`)})::date`;
  return `(SELECT (${day} + make_interval(months => g."${months}"))::date::text FROM "shop_setting" g
    WHERE g."shop_id" = $1 AND NOT g."void" AND g."valid_from" <= ${day} ORDER BY g."valid_from" DESC LIMIT 1)`;
};

const oneStatement = {
  name: 'read-vehicle',
  text: `SELECT ${jsonObject({
    vehicle: rowJson('vehicle', `t."id" = kept."id"`),
    customer: rowJson('customer', `t."id" = kept."customer_id"`),
    contacts: rowsJson('contact', { where: `t."customer_id" = kept."customer_id"`, order: 't."name", t."id"' }),
    cautions: rowsJson('caution', { where: ofVehicle, order: `t."ended_at" IS NOT NULL, ${newestFirst}` }),
    odometerReadings: rowsJson('odometerReading', { where: ofVehicle, order: newestFirst }),
    jobs: `(SELECT coalesce(json_agg(i.item), '[]'::json) FROM (SELECT ${jobItem} AS item FROM ${jobItemFrom}
      WHERE j."shop_id" = $1 AND j."vehicle_id" = kept."id" AND NOT j."void" ORDER BY j."number" DESC) i)`,
    workDone: `(SELECT coalesce(json_agg(json_build_object('lineId', l."id", 'jobId', l."job_id", 'jobNumber', j."number", 'title', l."title",
        'endedAt', ${isoText('l."ended_at"')}, 'guaranteeUntil', ${guaranteeUntil('l', 'work_guarantee_months')}) ORDER BY l."ended_at" DESC, l."id"), '[]'::json)
      FROM "work_line" l JOIN "job" j ON j."shop_id" = l."shop_id" AND j."id" = l."job_id"
      WHERE l."shop_id" = $1 AND l."vehicle_id" = kept."id" AND l."progress" = 'done' AND NOT l."void")`,
    partsFitted: `(SELECT coalesce(json_agg(json_build_object('partLineId', p."id", 'jobId', p."job_id", 'number', p."number", 'description', p."description",
        'endedAt', ${isoText('p."ended_at"')}, 'guaranteeUntil', ${guaranteeUntil('p', 'part_guarantee_months')}) ORDER BY p."ended_at" DESC, p."id"), '[]'::json)
      FROM "part_line" p WHERE p."shop_id" = $1 AND p."vehicle_id" = kept."id" AND p."state" = 'fitted' AND NOT p."void")`,
    corrections: rowsJson('vehicleCorrection', { where: ofVehicle, order: newestFirst }),
    contactEntries: rowsJson('contactEntry', { where: ofVehicle, order: newestFirst }),
    standing: rowsJson('standingGoAhead', {
      where: `t."ended_at" IS NULL AND t."customer_id" = kept."customer_id" AND (t."vehicle_id" IS NULL OR ${ofVehicle})
        AND (t."job_id" IS NULL OR t."job_id" IN (SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" = kept."id"))`,
      order: newestFirst,
    }),
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
  })}::text AS view FROM "vehicle" kept WHERE kept."shop_id" = $1 AND NOT kept."void"
  AND kept."id" = coalesce((SELECT m."merged_into_id" FROM "vehicle" m WHERE m."shop_id" = $1 AND m."id" = $2), $2)`,
};

/** A vehicle with its history as JSON text, of a merged record the one it was merged into; null where the shop has none. */
export function readVehicle(pool: pg.Pool, shopId: string, vehicleId: string): Promise<string | null> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ view: string }>({ ...oneStatement, values: [shopId, vehicleId] });
    return rows[0]?.view ?? null;
  });
}
