import { type JobsQuery, pageSize } from '@holdfast/contract';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { jobItem, jobItemFrom } from './job-item.js';
import { readPage } from './page.js';

const jobsStatement = (
  state: string,
) => `SELECT j."number"::text AS cursor, ${jobItem}::text AS item FROM ${jobItemFrom}
WHERE j."shop_id" = $1 AND NOT j."void" AND ${state} AND ($2::int IS NULL OR j."number" < $2)
ORDER BY j."number" DESC LIMIT $3`;

const statements = {
  open: { name: 'jobs-open', text: jobsStatement('j."ended_at" IS NULL AND j."arrived_at" IS NOT NULL') },
  expected: { name: 'jobs-expected', text: jobsStatement('j."ended_at" IS NULL AND j."arrived_at" IS NULL') },
  ended: { name: 'jobs-ended', text: jobsStatement('j."ended_at" IS NOT NULL') },
} as const;

/** Visits, newest number first. */
export function readJobs(pool: pg.Pool, shopId: string, query: JobsQuery): Promise<string> {
  const after = query.after === undefined ? null : Math.min(Number(query.after), 2_147_483_647);
  return withShop(pool, shopId, (client) =>
    readPage(client, { ...statements[query.state], values: [shopId, after] }, pageSize(query.limit)),
  );
}
