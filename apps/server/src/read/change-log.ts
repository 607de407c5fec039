import { type ChangeLogQuery, cursorParts, type LogReadsQuery, pageSize } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { readPage } from './page.js';
import type { ShopOf } from './shop-of.js';
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

const named = (subject: 'job' | 'vehicle' | 'bay', table: string, name: string) =>
  `(SELECT coalesce(json_agg(json_build_object('id', n."id", '${name}', n."${name}")), '[]'::json)
    FROM jsonb_array_elements_text(c."subjects" -> '${subject}') s JOIN "${table}" n ON n."shop_id" = $1 AND n."id" = s::uuid)`;

const statement = {
  name: 'change-log',
  text: `SELECT c."seq"::text AS cursor, json_build_object(${entryFields}, 'subjects', c."subjects", 'about', json_build_object(
    'jobs', ${named('job', 'job', 'number')}, 'vehicles', ${named('vehicle', 'vehicle', 'plate')}, 'bays', ${named('bay', 'bay', 'name')}))::text AS item
FROM (SELECT * FROM "change" c
  WHERE c."shop_id" = $1 AND ($2::bigint IS NULL OR c."seq" < $2) AND ($3::text IS NULL OR c."subjects" -> 'job' ? $3)
    AND ($4::text IS NULL OR c."subjects" -> 'vehicle' ? $4) AND ($5::text IS NULL OR c."subjects" -> 'bay' ? $5)
    AND ($6::uuid IS NULL OR c."person_id" = $6) AND ($7::text IS NULL OR c."command" = $7)
    AND ($8::double precision IS NULL OR c."recorded_at" >= to_timestamp($8::double precision / 1000))
    AND ($9::double precision IS NULL OR c."recorded_at" < to_timestamp($9::double precision / 1000))
  ORDER BY c."seq" DESC LIMIT $10) c ORDER BY c."seq" DESC`,
};

/** Accepted commands of the shop, newest first. */
export function readChangeLog(pool: pg.Pool, shopOf: ShopOf, shopId: string, query: ChangeLogQuery): Promise<string> {
  return withShop(pool, shopId, async (client) => {
    const { after, job, vehicle, bay, person, command, from, to } = query;
    const shop = from === undefined && to === undefined ? null : await shopOf(client, shopId);
    const begins = from === undefined ? null : (shop?.calendar.workingDayBounds(from).from ?? null);
    const ends = to === undefined ? null : (shop?.calendar.workingDayBounds(to).to ?? null);
    const wanted = [after, job, vehicle, bay, person, command].map((value) => value ?? null);
    return readPage(client, { ...statement, values: [shopId, ...wanted, begins, ends] }, pageSize(query.limit));
  });
}

const readsStatement = {
  name: 'log-reads',
  text: `SELECT ${isoText('a."read_at"')} || '~' || a."id" AS cursor, json_build_object('id', a."id", 'readAt', ${isoText('a."read_at"')},
  'personId', a."person_id", 'filter', a."filter", 'form', a."form", 'entries', a."entries")::text AS item
FROM "audit_read" a WHERE a."shop_id" = $1 AND ($2::timestamptz IS NULL OR (a."read_at", a."id") < ($2, $3::uuid))
ORDER BY a."read_at" DESC, a."id" DESC LIMIT $4`,
};

/** Who read the log, newest first. */
export function readLogReads(pool: pg.Pool, shopId: string, query: LogReadsQuery): Promise<string> {
  const values = [shopId, ...cursorParts(query.after)];
  return withShop(pool, shopId, (client) => readPage(client, { ...readsStatement, values }, pageSize(query.limit)));
}
