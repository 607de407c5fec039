/** The rows that the figures need beside those of bay time: visits, presence, clocks by line, and what parts holds wait for. */
import type { Visit } from '@holdfast/bay-time';
import type pg from 'pg';
import { epochMs } from './wire-sql.js';

interface Window {
  readonly from: number;
  readonly to: number;
}

/** Instants are epoch ms; `to` null: still going on. */
export interface FigureRows {
  readonly visits: readonly (Visit & { readonly plate: string; readonly description: string })[];
  readonly presence: readonly { readonly personId: string; readonly from: number; readonly to: number | null }[];
  readonly clocks: readonly {
    readonly jobId: string;
    readonly personId: string;
    readonly lineId: string;
    readonly bench: boolean;
    readonly from: number;
    readonly to: number | null;
  }[];
  readonly finished: readonly { readonly lineId: string; readonly doneAt: number; readonly bookMs: number | null }[];
  readonly linesWithBook: readonly string[];
  readonly heldParts: readonly {
    readonly holdId: string;
    readonly partLineId: string;
    readonly supplierId: string | null;
    readonly from: number;
    readonly to: number | null;
    readonly description: string;
    readonly jobId: string | null;
    readonly plate: string;
  }[];
}

const overlaps = (s: string, from: string, to: string) =>
  `${s}.${from} < to_timestamp($3::double precision / 1000) AND (${s}.${to} IS NULL OR ${s}.${to} > to_timestamp($2::double precision / 1000))`;
const cameAt = 'coalesce(j."arrived_at", j."checked_in_at")';
const inWindow = (column: string) =>
  `${column} >= to_timestamp($2::double precision / 1000) AND ${column} < to_timestamp($3::double precision / 1000)`;
const list = (fields: string, from: string) =>
  `(SELECT coalesce(json_agg(r), '[]'::json) FROM (SELECT ${fields} FROM ${from}) r)`;

const clocked = `"clock" c WHERE c."shop_id" = $1 AND NOT c."void" AND (${overlaps('c', '"from_at"', '"to_at"')}
  OR c."line_id" IN (SELECT l."id" FROM "work_line" l WHERE l."shop_id" = $1 AND NOT l."void" AND l."progress" = 'done' AND ${inWindow('l."ended_at"')}))`;

/** A part holds from the hold's beginning until it was all here, good or accepted as it is. */
const hereAt = `(SELECT max(a."effective_at") FROM "arrival" a WHERE a."shop_id" = $1 AND a."part_line_id" = p."id" AND NOT a."void" AND a."verdict" IN ('good', 'accepted'))`;

const statement = {
  name: 'read-figures',
  text: `SELECT json_build_object(
'visits', ${list(
    `j."id" AS "jobId", j."vehicle_id" AS "vehicleId", cu."fleet", j."kind", v."plate", v."description", ${epochMs(cameAt)} AS "from", ${epochMs('j."ended_at"')} AS "to"`,
    `"job" j JOIN "vehicle" v ON v."shop_id" = j."shop_id" AND v."id" = j."vehicle_id"
     LEFT JOIN "customer" cu ON cu."shop_id" = j."shop_id" AND cu."id" = j."customer_id"
     WHERE j."shop_id" = $1 AND NOT j."void" AND ${cameAt} < to_timestamp($3::double precision / 1000)
       AND (j."ended_at" IS NULL OR j."ended_at" > to_timestamp($2::double precision / 1000))`,
  )},
'presence', ${list(
    `t."person_id" AS "personId", ${epochMs('t."from_at"')} AS "from", ${epochMs('t."to_at"')} AS "to"`,
    `"attendance" t WHERE t."shop_id" = $1 AND NOT t."void" AND t."kind" <> 'break' AND ${overlaps('t', '"from_at"', '"to_at"')}`,
  )},
'clocks', ${list(
    `c."job_id" AS "jobId", c."person_id" AS "personId", c."line_id" AS "lineId", c."bench", ${epochMs('c."from_at"')} AS "from", ${epochMs('c."to_at"')} AS "to"`,
    clocked,
  )},
'finished', ${list(
    `l."id" AS "lineId", ${epochMs('l."ended_at"')} AS "doneAt", l."book_minutes" * 60000 AS "bookMs"`,
    `"work_line" l WHERE l."shop_id" = $1 AND NOT l."void" AND l."progress" = 'done' AND ${inWindow('l."ended_at"')}`,
  )},
'linesWithBook', (SELECT coalesce(json_agg(l."id"), '[]'::json) FROM "work_line" l WHERE l."shop_id" = $1 AND l."book_minutes" IS NOT NULL
  AND l."id" IN (SELECT c."line_id" FROM ${clocked})),
'heldParts', ${list(
    `hp."hold_id" AS "holdId", p."id" AS "partLineId", p."supplier_id" AS "supplierId", p."description", p."job_id" AS "jobId", v."plate",
     ${epochMs('h."from_at"')} AS "from", ${epochMs(`coalesce(least(h."to_at", CASE WHEN p."state" IN ('arrived', 'fitted') THEN greatest(${hereAt}, h."from_at") END), h."to_at")`)} AS "to"`,
    `"hold" h JOIN "hold_part" hp ON hp."shop_id" = h."shop_id" AND hp."hold_id" = h."id" AND NOT hp."void"
     JOIN "part_line" p ON p."shop_id" = hp."shop_id" AND p."id" = hp."part_line_id"
     JOIN "vehicle" v ON v."shop_id" = p."shop_id" AND v."id" = p."vehicle_id"
     WHERE h."shop_id" = $1 AND NOT h."void" AND ${overlaps('h', '"from_at"', '"to_at"')}`,
  )})::text AS rows`,
};

/** Everything that touches [from, to), epoch ms. */
export async function figureRowsIn(client: pg.ClientBase, shopId: string, { from, to }: Window): Promise<FigureRows> {
  const { rows } = await client.query<{ rows: string }>({ ...statement, values: [shopId, from, to] });
  return JSON.parse(rows[0]?.rows ?? '{}') as FigureRows;
}
