import { type ChangeLogQuery, pageSize } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { readPage } from './page.js';
import { isoText } from './wire-sql.js';

/** Fields of `logEntry` of the contract for a row `c` of change. */
const entryFields = `'seq', c."seq", 'at', ${isoText('c."recorded_at"')}, 'effectiveAt', ${isoText('c."effective_at"')},
  'command', c."command", 'personId', c."person_id", 'device', c."device", 'facts', c."facts"`;

/** The changes of the job whose id is $2, newest first; nothing of it can be older than the visit itself. */
export const logOfJob = `(SELECT coalesce(json_agg(e.entry), '[]'::json) FROM (
  SELECT json_build_object(${entryFields}) AS entry FROM "change" c
  WHERE c."shop_id" = $1 AND c."recorded_at" >= (SELECT "recorded_at" FROM "job" WHERE "shop_id" = $1 AND "id" = $2)
    AND c."subjects" -> 'job' ? $2::text
  ORDER BY c."seq" DESC LIMIT 200) e)`;

const statement = {
  name: 'change-log',
  text: `SELECT c."seq"::text AS cursor, json_build_object(${entryFields}, 'subjects', c."subjects")::text AS item FROM "change" c
WHERE c."shop_id" = $1 AND ($2::bigint IS NULL OR c."seq" < $2) AND ($3::text IS NULL OR c."subjects" -> 'job' ? $3)
ORDER BY c."seq" DESC LIMIT $4`,
};

/** Accepted commands of the shop, newest first. */
export function readChangeLog(pool: pg.Pool, shopId: string, query: ChangeLogQuery): Promise<string> {
  const values = [shopId, query.after ?? null, query.job ?? null];
  return withShop(pool, shopId, (client) => readPage(client, { ...statement, values }, pageSize(query.limit)));
}
