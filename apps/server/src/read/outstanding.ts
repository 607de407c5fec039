/**
 * What is still on or owed, over all vehicles, by the day of the first limit. That day is worked out here, not in SQL:
 * seasons and the days of a zone are the calendar's business. What is open is few compared with what ever was, so its
 * limits are read whole and only the rows of the page itself in full.
 */
import { cursorParts, type OutstandingQuery, pageSize } from '@holdfast/contract';
import type { Row } from '@holdfast/domain';
import { addDays, type Calendar, nextSeasonStart } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { customerNameOf, vehicleNameOf } from './job-item.js';
import type { ShopOf } from './shop-of.js';
import { epochMs, hangingRows, wireFields } from './wire-sql.js';

type Kind = 'temporaryFix' | 'followUp';
type Limit = readonly [
  kind: Kind,
  id: string,
  /** Epoch ms from which days are counted. */
  since: number,
  beforeDay: string | null,
  withinDays: number | null,
  seasonId: string | null,
];

interface FirstLimit {
  readonly day: string;
  readonly by: 'beforeDay' | 'withinDays' | 'season';
  readonly seasonId: string | null;
}

interface Found {
  readonly kind: Kind;
  readonly id: string;
  readonly first: FirstLimit | null;
  /** The day, or `none`, which sorts behind every day. */
  readonly key: string;
}

const limitsOf = (kind: Kind, table: string, since: string, open: string) => `SELECT json_build_array('${kind}', t."id",
  ${epochMs(`t."${since}"`)}, t."before_day"::text, t."within_days", t."season_id") AS a
FROM "${table}" t WHERE t."shop_id" = $1 AND NOT t."void" AND ${open} AND ($2::uuid IS NULL OR t."vehicle_id" = $2)`;

const limitsStatement = {
  name: 'outstanding-limits',
  text: `SELECT coalesce(json_agg(x.a), '[]'::json)::text AS limits FROM (
${limitsOf('temporaryFix', 'temporary_fix', 'since', `t."state" <> 'ended'`)}
UNION ALL
${limitsOf('followUp', 'follow_up', 'effective_at', `t."state" = 'open'`)}) x`,
};

const rowsOf = (kind: Kind, table: string, also: string) => `SELECT t."id", json_build_object('kind', '${kind}', 'row',
  (SELECT row_to_json(r) FROM (SELECT ${wireFields(kind, 't')}${also}) r), 'vehicle', ${vehicleNameOf('v')}, 'customer', ${customerNameOf('c')},
  'openJobId', (SELECT j."id" FROM "job" j WHERE j."shop_id" = $1 AND j."vehicle_id" = v."id" AND j."ended_at" IS NULL AND NOT j."void"),
  'undated', array_remove(ARRAY[CASE WHEN t."before_odometer" IS NULL THEN NULL ELSE 'beforeOdometer' END,
    CASE WHEN t."within_distance" IS NULL THEN NULL ELSE 'withinDistance' END], NULL)) AS item
FROM "${table}" t JOIN "vehicle" v ON v."shop_id" = t."shop_id" AND v."id" = t."vehicle_id"
LEFT JOIN "customer" c ON c."shop_id" = v."shop_id" AND c."id" = v."customer_id"
WHERE t."shop_id" = $1 AND t."id" = ANY($2::uuid[])`;

const secondChecks = `, ${hangingRows('secondCheck', 'k."temporary_fix_id" = t."id"', 'k."effective_at", k."id"')} AS "secondChecks"`;

const rowsStatement = {
  name: 'outstanding-rows',
  text: `${rowsOf('temporaryFix', 'temporary_fix', secondChecks)} UNION ALL ${rowsOf('followUp', 'follow_up', '')}`,
};

/**
 * The earliest day among the limits that have one. A season counts from its first day; for what was recorded inside the
 * season the next one's.
 */
export function firstLimit(
  [, , since, beforeDay, withinDays, seasonId]: Limit,
  calendar: Calendar,
  seasons: ReadonlyMap<string, Row<'season'>>,
): FirstLimit | null {
  const sinceDay = calendar.dateOf(since);
  const season = seasonId === null ? undefined : seasons.get(seasonId);
  const limits: FirstLimit[] = [];
  if (beforeDay !== null) limits.push({ day: beforeDay, by: 'beforeDay', seasonId: null });
  if (withinDays !== null) limits.push({ day: addDays(sinceDay, withinDays), by: 'withinDays', seasonId: null });
  if (season) {
    const { name, fromDay: from, toDay: to } = season;
    limits.push({ day: nextSeasonStart({ name, from, to }, sinceDay), by: 'season', seasonId: season.id });
  }
  return limits.sort((a, b) => (a.day < b.day ? -1 : 1))[0] ?? null;
}

/** The page as JSON text; null where there is no such shop. */
export function readOutstanding(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: OutstandingQuery,
): Promise<string | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop) return null;
      const { rows } = await client.query<{ limits: string }>({
        ...limitsStatement,
        values: [shopId, query.vehicle ?? null],
      });
      const limits = JSON.parse(rows[0]?.limits ?? '[]') as Limit[];
      const seasons = new Map(shop.rows.list('season').map((season) => [season.id, season]));
      const found = limits.map((limit): Found => {
        const first = firstLimit(limit, shop.calendar, seasons);
        return { kind: limit[0], id: limit[1], first, key: first?.day ?? 'none' };
      });
      const page = pageAfter(found, query);
      const items = await itemsOf(client, shopId, page.items);
      const today = shop.calendar.dateOf(shop.now);
      return `{"today":"${today}","items":[${items.join(',')}],"next":${JSON.stringify(page.next)}}`;
    },
    { oneView: true },
  );
}

function pageAfter(found: readonly Found[], query: OutstandingQuery): { items: readonly Found[]; next: string | null } {
  const [key, id] = cursorParts(query.after);
  const size = pageSize(query.limit);
  const behind = key === null || id === null ? found : found.filter((one) => compare(one, { key, id }) > 0);
  const sorted = [...behind].sort(compare);
  const items = sorted.slice(0, size);
  const last = items.at(-1);
  return { items, next: sorted.length > size && last ? `${last.key}~${last.id}` : null };
}

function compare(a: Pick<Found, 'key' | 'id'>, b: Pick<Found, 'key' | 'id'>): number {
  if (a.key !== b.key) return a.key < b.key ? -1 : 1;
  return a.id === b.id ? 0 : a.id < b.id ? -1 : 1;
}

async function itemsOf(client: pg.ClientBase, shopId: string, page: readonly Found[]): Promise<string[]> {
  if (page.length === 0) return [];
  const { rows } = await client.query<{ id: string; item: object }>({
    ...rowsStatement,
    values: [shopId, page.map(({ id }) => id)],
  });
  const byId = new Map(rows.map(({ id, item }) => [id, item]));
  return page.map(({ id, first }) => JSON.stringify({ ...byId.get(id), firstLimit: first }));
}
