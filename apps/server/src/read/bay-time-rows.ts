/** The rows of a window of bay time, in as few bytes as they go: arrays, grouped by job, instants in epoch ms. */
import type pg from 'pg';
import { epochMs } from './wire-sql.js';

type Answer = 'withCustomer' | 'given' | 'deferred' | 'declined';

/** Everything that happened to one job whose vehicle had a spot inside the window. */
export interface JobInWindow {
  readonly id: string;
  /** `[bayId, spot, kept, from, to]`; `to` null: still going on. */
  readonly stays: readonly (readonly [bayId: string, spot: number, kept: boolean, from: number, to: number | null])[];
  readonly clocks: readonly (readonly [personId: string, bench: boolean, from: number, to: number | null])[];
  readonly holds: readonly (readonly [
    id: string,
    reason: string,
    from: number,
    to: number | null,
    lineIds: readonly string[] | null,
  ])[];
  readonly lines: readonly (readonly [
    id: string,
    addedAt: number,
    endedAt: number | null,
    after: string | null,
    answer: Answer,
    history: readonly (readonly [at: number, answer: Answer])[] | null,
  ])[];
  /** From check-in to hand-back of an internal job that is kept here; null for every other. */
  readonly stored: readonly [from: number, to: number | null] | null;
}

const grouped = (name: string, table: string, item: string, more = '') => `${name} AS (
  SELECT k."job_id", json_agg(${item}) AS list FROM "${table}" k
  ${more} WHERE k."shop_id" = $1 AND NOT k."void" AND k."job_id" IN (SELECT "job_id" FROM stay) GROUP BY k."job_id")`;

const ends = (alias: string) => `${epochMs(`${alias}."from_at"`)}, ${epochMs(`${alias}."to_at"`)}`;

const statement = {
  name: 'bay-time-rows',
  text: `WITH stay AS MATERIALIZED (
  SELECT s."job_id", json_agg(json_build_array(s."bay_id", s."spot", s."kind" = 'kept', ${ends('s')})) AS list
  FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void" AND s."from_at" < to_timestamp($3::double precision / 1000)
    AND (s."to_at" IS NULL OR s."to_at" > to_timestamp($2::double precision / 1000)) GROUP BY s."job_id"
), held_line AS (
  SELECT h."hold_id", json_agg(h."line_id") AS ids FROM "hold_line" h
  WHERE h."shop_id" = $1 AND NOT h."void" AND h."job_id" IN (SELECT "job_id" FROM stay) GROUP BY h."hold_id"
), said AS (
  SELECT g."line_id", json_agg(json_build_array(${epochMs('g."effective_at"')}, g."answer") ORDER BY g."effective_at", g."recorded_at") AS list
  FROM "go_ahead" g WHERE g."shop_id" = $1 AND NOT g."void" AND g."job_id" IN (SELECT "job_id" FROM stay) GROUP BY g."line_id"
), ${grouped('clocks', 'clock', `json_build_array(k."person_id", k."bench", ${ends('k')})`)},
${grouped('holds', 'hold', `json_build_array(k."id", k."reason", ${ends('k')}, hl.ids)`, 'LEFT JOIN held_line hl ON hl."hold_id" = k."id"')},
${grouped(
  'lines',
  'work_line',
  `json_build_array(k."id", ${epochMs('k."effective_at"')}, ${epochMs('k."ended_at"')}, k."after_line_id", k."go_ahead", said.list)`,
  'LEFT JOIN said ON said."line_id" = k."id"',
)}
SELECT coalesce(json_agg(json_build_object('id', s."job_id", 'stays', s.list, 'clocks', coalesce(c.list, '[]'::json),
  'holds', coalesce(h.list, '[]'::json), 'lines', coalesce(l.list, '[]'::json),
  'stored', CASE WHEN j."stored_here" AND j."kind" = 'internal'
    THEN json_build_array(${epochMs('j."checked_in_at"')}, ${epochMs('j."ended_at"')}) END)), '[]'::json)::text AS jobs
FROM stay s JOIN "job" j ON j."shop_id" = $1 AND j."id" = s."job_id"
LEFT JOIN clocks c ON c."job_id" = s."job_id" LEFT JOIN holds h ON h."job_id" = s."job_id" LEFT JOIN lines l ON l."job_id" = s."job_id"`,
};

/** Jobs that had a spot at some instant of [from, to), epoch ms, with all their clocks, holds, lines and answers. */
export async function jobsInWindow(
  client: pg.ClientBase,
  shopId: string,
  window: { readonly from: number; readonly to: number },
): Promise<readonly JobInWindow[]> {
  const { rows } = await client.query<{ jobs: string }>({ ...statement, values: [shopId, window.from, window.to] });
  return JSON.parse(rows[0]?.jobs ?? '[]') as readonly JobInWindow[];
}
