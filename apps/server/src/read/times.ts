/** The entries behind bay time: clocks, presence, stays and holds of some days or of one visit, with what was put right. */
import type { TimesQuery } from '@holdfast/contract';
import type { By } from '@holdfast/domain';
import type { Interval } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import type { ShopOf } from './shop-of.js';
import { jsonObject, rowsJson } from './wire-sql.js';

const isLead = (by: By): boolean => by.roles.some((role) => role === 'owner' || role === 'manager');

/** $2 from and $3 to (epoch ms, or null), $4 the visit, $5 whose. */
const inWindow = `($2::double precision IS NULL OR (t."from_at" < to_timestamp($3::double precision / 1000)
  AND (t."to_at" IS NULL OR t."to_at" > to_timestamp($2::double precision / 1000))))`;
const ofJob = `($4::uuid IS NULL OR t."job_id" = $4)`;
const ofPerson = `($5::uuid IS NULL OR t."person_id" = $5)`;
const order = 't."from_at", t."id"';

/** What a row of `correction` is about, when it lies in the window: the row that stands now, or the one that was struck. */
const corrected = `EXISTS (SELECT FROM shown s WHERE s."id"::text IN (t."row_id", t."new_row_id")) OR (t."kind" = 'struck'
  AND ${ofJob} AND ($5::uuid IS NULL OR t."person_id" = $5) AND ($2::double precision IS NULL
    OR (t."before" ->> 'fromAt' IS NOT NULL AND (t."before" ->> 'fromAt')::double precision BETWEEN $2 AND $3)))`;

const shownOf = (table: string, where: string) =>
  `SELECT t."id", ${table === 'attendance' ? 'NULL::uuid' : 't."job_id"'} AS job_id, ${
    table === 'clock' ? 't."line_id"' : 'NULL::uuid'
  } AS line_id FROM "${table}" t WHERE t."shop_id" = $1 AND NOT t."void" AND ${inWindow} AND ${where}`;

const statement = {
  name: 'read-times',
  text: `WITH shown AS MATERIALIZED (
  ${shownOf('clock', `${ofJob} AND ${ofPerson}`)}
  UNION ALL ${shownOf('place', `${ofJob} AND ($4::uuid IS NOT NULL OR $5::uuid IS NULL)`)}
  UNION ALL ${shownOf('hold', `${ofJob} AND ($4::uuid IS NOT NULL OR $5::uuid IS NULL)`)}
  UNION ALL ${shownOf('attendance', `$4::uuid IS NULL AND ${ofPerson}`)}
)
SELECT ${jsonObject({
    closedMonths: `(SELECT coalesce(json_agg(m."month" ORDER BY m."month"), '[]'::json) FROM "closed_month" m
      WHERE m."shop_id" = $1 AND NOT m."void" AND m."reopened_at" IS NULL)`,
    clocks: rowsJson('clock', { where: 't."id" IN (SELECT "id" FROM shown)', order }),
    attendance: rowsJson('attendance', { where: 't."id" IN (SELECT "id" FROM shown)', order }),
    stays: rowsJson('place', { where: 't."id" IN (SELECT "id" FROM shown)', order }),
    holds: rowsJson('hold', { where: 't."id" IN (SELECT "id" FROM shown)', order }),
    corrections: rowsJson('correction', { where: `(${corrected})`, order: 't."recorded_at", t."id"' }),
    jobs: `(SELECT coalesce(json_agg(json_build_object('id', j."id", 'number', j."number", 'plate', v."plate", 'description', v."description",
      'ended', j."ended_at" IS NOT NULL) ORDER BY j."number"), '[]'::json)
      FROM "job" j JOIN "vehicle" v ON v."shop_id" = j."shop_id" AND v."id" = j."vehicle_id"
      WHERE j."shop_id" = $1 AND (j."id" = $4 OR j."id" IN (SELECT "job_id" FROM shown)))`,
    lines: `(SELECT coalesce(json_agg(json_build_object('id', l."id", 'jobId', l."job_id", 'title', l."title") ORDER BY l."position", l."id"), '[]'::json)
      FROM "work_line" l WHERE l."shop_id" = $1 AND NOT l."void" AND l."job_id" IN (SELECT "job_id" FROM shown UNION SELECT $4))`,
  })} AS view`,
};

/** Null: no such shop. Owner and manager see everybody's clocks and presence, others their own. */
export function readTimes(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: TimesQuery,
  by: By,
): Promise<string | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop) return null;
      const { from, to, job = null } = query;
      const window: Interval | null =
        from === undefined || to === undefined
          ? null
          : { from: shop.calendar.workingDayBounds(from).from, to: shop.calendar.workingDayBounds(to).to };
      const person = isLead(by) ? (query.person ?? null) : by.personId;
      const values = [shopId, window?.from ?? null, window?.to ?? null, job, person];
      const { rows } = await client.query<{ view: object }>({ ...statement, values });
      const bounds = { from: isoOrNull(window?.from), to: isoOrNull(window?.to) };
      return JSON.stringify({ ...bounds, ...rows[0]?.view });
    },
    { oneView: true },
  );
}

const isoOrNull = (at: number | undefined) => (at === undefined ? null : new Date(at).toISOString());
