/**
 * A second opinion on bay time: one SQL query with multiranges that gives the classes of the account, by bay, from the
 * table of the design alone. It shares nothing with libs/bay-time: opening time comes out of the stored hours by
 * PostgreSQL's own zones, and nothing is swept, everything is set algebra. Not for shops whose grace changes inside the
 * window, nor for lines with two answers in one millisecond.
 */
import type pg from 'pg';

/** Wall-clock hours of `table` (alias h) on the days around the window as instants, `key` beside them. */
const hoursOn = (table: string, column: 'week' | 'breaks', key: string, where: string) => `
  SELECT ${key} AS key, range_agg(tstzrange(
      (d.day + (r ->> 0)::time) AT TIME ZONE z.zone,
      (d.day + (r ->> 1)::time + CASE WHEN r ->> 1 <= r ->> 0 THEN interval '1 day' ELSE interval '0' END) AT TIME ZONE z.zone)) AS mr
  FROM z, days d
  CROSS JOIN LATERAL (${where}) k(key)
  CROSS JOIN LATERAL (SELECT h.* FROM "${table}" h WHERE h."shop_id" = $1 AND NOT h."void" AND h."valid_from" <= d.day
    ${table === 'person_hours' ? 'AND h."person_id" = k.key' : ''} ORDER BY h."valid_from" DESC LIMIT 1) h
  CROSS JOIN LATERAL jsonb_array_elements(h."${column}" -> to_char(d.day, 'dy')) r
  GROUP BY 1`;

const nobody = `SELECT NULL::uuid`;
const people = `SELECT DISTINCT "person_id" FROM "person_hours" WHERE "shop_id" = $1 AND NOT "void"`;
const none = `'{}'::tstzmultirange`;

/** $1 shop, $2 and $3 the window, $4 now (all epoch ms). */
const text = `
WITH z AS MATERIALIZED (
  SELECT s."zone", to_timestamp($2::double precision / 1000) AS f, to_timestamp($4::double precision / 1000) AS now,
    least(to_timestamp($3::double precision / 1000), to_timestamp($4::double precision / 1000)) AS t,
    (SELECT make_interval(mins => g."grace_minutes") FROM "shop_setting" g WHERE g."shop_id" = $1 AND NOT g."void" ORDER BY g."valid_from" DESC LIMIT 1) AS grace
  FROM "shop" s WHERE s."shop_id" = $1
), use AS MATERIALIZED (
  SELECT u."bay_id", u."spot", u."job_id", unnest(range_agg(tstzrange(u."from_at", least(u."to_at", z.now)))) AS stay
  FROM z, "spot_use" u
  WHERE u."shop_id" = $1 AND NOT u."void" AND u."from_at" < z.t AND (u."to_at" IS NULL OR u."to_at" > z.f)
  GROUP BY 1, 2, 3
), here AS MATERIALIZED (
  SELECT DISTINCT "job_id" FROM use
), days AS MATERIALIZED (
  SELECT generate_series(
    least((SELECT min(lower(stay)) FROM use), z.f)::date - 2, z.t::date + 1, interval '1 day')::date AS day FROM z
), opening AS MATERIALIZED (${hoursOn('opening_hours', 'week', 'k.key', nobody)}
), pause AS MATERIALIZED (
  SELECT b.mr * o.mr AS mr FROM (${hoursOn('opening_hours', 'breaks', 'k.key', nobody)}) b, opening o
), own_pause AS MATERIALIZED (
  SELECT b.key AS person, b.mr * o.mr AS mr
  FROM (${hoursOn('person_hours', 'breaks', 'k.key', people)}) b JOIN (${hoursOn('person_hours', 'week', 'k.key', people)}) o ON o.key = b.key
), spec AS (
  SELECT s.*, tstzrange(s."valid_from"::timestamp AT TIME ZONE z.zone,
    least(lead(s."valid_from") OVER (PARTITION BY s."bay_id" ORDER BY s."valid_from"), b."ended_on")::timestamp AT TIME ZONE z.zone) AS valid
  FROM z, "bay_spec" s JOIN "bay" b ON b."shop_id" = $1 AND b."id" = s."bay_id" AND NOT b."void"
  WHERE s."shop_id" = $1 AND NOT s."void"
), spot AS MATERIALIZED (
  SELECT s."bay_id", n.spot, o.mr * range_agg(s.valid) AS open,
    o.mr * range_agg(s.valid) * tstzmultirange(tstzrange(z.f, z.t)) AS asked,
    coalesce(out.mr, ${none}) AS out_of_use
  FROM z, opening o, spec s
  CROSS JOIN LATERAL generate_series(1, s."spots") n(spot)
  LEFT JOIN LATERAL (SELECT range_agg(x.valid) AS mr FROM spec x WHERE x."bay_id" = s."bay_id" AND x."out_of_use") out ON true
  GROUP BY 1, 2, o.mr, z.f, z.t, out.mr
), clocked AS MATERIALIZED (
  SELECT c."job_id", c."person_id", tstzrange(c."from_at", least(c."to_at", z.now)) AS r
  FROM z, "clock" c JOIN here USING ("job_id")
  WHERE c."shop_id" = $1 AND NOT c."void" AND NOT c."bench" AND c."from_at" < z.now
  UNION ALL
  SELECT s."job_id", NULL, tstzrange(s."from_at", least(s."to_at", z.now))
  FROM z, "sublet" s JOIN here USING ("job_id")
  WHERE s."shop_id" = $1 AND NOT s."void" AND s."form" = 'outsiderIn' AND s."from_at" < z.now
), work AS MATERIALIZED (
  SELECT "job_id", range_agg(r) AS mr FROM clocked GROUP BY 1
), said AS (
  SELECT g."line_id", range_agg(g.r) FILTER (WHERE g."answer" = 'given') AS given,
    range_agg(g.r) FILTER (WHERE g."answer" <> 'withCustomer') AS answered
  FROM (SELECT a."line_id", a."answer", tstzrange(a."effective_at", lead(a."effective_at") OVER (PARTITION BY a."line_id" ORDER BY a."effective_at")) AS r
    FROM "go_ahead" a JOIN here USING ("job_id") WHERE a."shop_id" = $1 AND NOT a."void") g
  GROUP BY 1
), line AS MATERIALIZED (
  SELECT l."id", l."job_id", l."choice_id", l."after_line_id", l."ended_at",
    tstzmultirange(tstzrange(l."effective_at", greatest(l."ended_at", l."effective_at"))) AS open,
    tstzmultirange(tstzrange(l."effective_at", NULL)) AS added,
    CASE WHEN s."line_id" IS NOT NULL THEN coalesce(s.given, ${none})
      WHEN l."go_ahead" = 'given' THEN tstzmultirange(tstzrange(NULL, NULL)) ELSE ${none} END AS given,
    CASE WHEN s."line_id" IS NOT NULL THEN coalesce(s.answered, ${none})
      WHEN l."go_ahead" = 'withCustomer' THEN ${none} ELSE tstzmultirange(tstzrange(NULL, NULL)) END AS answered
  FROM "work_line" l JOIN here USING ("job_id") LEFT JOIN said s ON s."line_id" = l."id"
  WHERE l."shop_id" = $1 AND NOT l."void"
), chosen AS (
  SELECT "job_id", "choice_id", range_agg(added * given) AS mr FROM line WHERE "choice_id" IS NOT NULL GROUP BY 1, 2
), hold AS MATERIALIZED (
  SELECT h."id", h."job_id", h."reason", h."from_at", tstzmultirange(tstzrange(h."from_at", least(h."to_at", z.now))) AS span,
    NOT EXISTS (SELECT FROM "hold_line" n WHERE n."shop_id" = $1 AND NOT n."void" AND n."hold_id" = h."id") AS whole
  FROM z, "hold" h JOIN here USING ("job_id")
  WHERE h."shop_id" = $1 AND NOT h."void" AND h."from_at" < least(h."to_at", z.now)
), named AS MATERIALIZED (
  SELECT n."hold_id", n."line_id" FROM "hold_line" n JOIN here USING ("job_id") WHERE n."shop_id" = $1 AND NOT n."void"
), line_held AS (
  SELECT n."line_id", range_agg(h.span) AS mr FROM named n JOIN hold h ON h."id" = n."hold_id" GROUP BY 1
), free_line AS MATERIALIZED (
  SELECT l.*, l.open * l.given - coalesce(x.mr, ${none})
      - CASE WHEN b."id" IS NULL THEN ${none} ELSE tstzmultirange(tstzrange(NULL, b."ended_at")) END AS workable,
    l.open - l.answered - coalesce(c.mr, ${none}) AS asked
  FROM line l LEFT JOIN line_held x ON x."line_id" = l."id"
  LEFT JOIN line b ON b."id" = l."after_line_id" AND b."job_id" = l."job_id"
  LEFT JOIN chosen c ON c."job_id" = l."job_id" AND c."choice_id" = l."choice_id"
), of_holds AS (
  SELECT "job_id", range_agg(span) FILTER (WHERE whole) AS whole,
    range_agg(span) FILTER (WHERE whole AND "reason" = 'collection') AS collection FROM hold GROUP BY 1
), job AS MATERIALIZED (
  SELECT j."id" AS "job_id", coalesce(w.mr, ${none}) AS work, coalesce(f.workable, ${none}) - coalesce(o.whole, ${none}) AS workable,
    coalesce(f.asked, ${none}) AS asked,
    coalesce(o.collection, ${none}) + CASE WHEN j."stored_here" AND j."kind" = 'internal'
      THEN tstzmultirange(tstzrange(coalesce(j."arrived_at", j."checked_in_at"), j."ended_at")) ELSE ${none} END AS stored
  FROM "job" j JOIN here ON here."job_id" = j."id" LEFT JOIN work w ON w."job_id" = j."id" LEFT JOIN of_holds o ON o."job_id" = j."id"
  LEFT JOIN (SELECT "job_id", range_agg(workable) AS workable, range_agg(asked) AS asked FROM free_line GROUP BY 1) f ON f."job_id" = j."id"
  WHERE j."shop_id" = $1
), bound AS (
  SELECT h."id", h."job_id", h."reason", h."from_at",
    CASE WHEN h.whole THEN h.span ELSE h.span * coalesce((SELECT range_agg(l.open * l.given) FROM named n JOIN line l ON l."id" = n."line_id" WHERE n."hold_id" = h."id"), ${none}) END AS binds
  FROM hold h
), held AS MATERIALIZED (
  SELECT b."job_id", b."reason", b.binds - coalesce(range_agg(b.binds) OVER (PARTITION BY b."job_id" ORDER BY b."from_at", b."id"
    ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), ${none}) AS mr FROM bound b
  UNION ALL
  SELECT j."job_id", 'goAhead', j.asked - coalesce((SELECT range_agg(b.binds) FROM bound b WHERE b."job_id" = j."job_id"), ${none}) FROM job j
), held_of_job AS MATERIALIZED (
  SELECT h."job_id", h."reason", range_agg(h.mr - j.workable - j.work - j.stored) AS mr FROM held h JOIN job j USING ("job_id") GROUP BY 1, 2
), all_held AS (
  SELECT "job_id", range_agg(mr) AS mr FROM held_of_job GROUP BY 1
), at AS MATERIALIZED (
  SELECT u.*, (s.asked - s.out_of_use) * tstzmultirange(u.stay) AS usable, s.open * tstzmultirange(u.stay) AS open, j.work, j.stored, j.workable,
    coalesce(a.mr, ${none}) AS all_held
  FROM use u JOIN spot s USING ("bay_id", "spot") JOIN job j USING ("job_id") LEFT JOIN all_held a USING ("job_id")
), gap AS MATERIALIZED (
  SELECT row_number() OVER () AS n, a."bay_id", a."job_id", g.gap, a.open * tstzmultirange(g.gap) AS open,
    a.usable * tstzmultirange(g.gap) - a.stored - a.all_held AS free
  FROM at a CROSS JOIN LATERAL unnest(tstzmultirange(a.stay) - a.work) g(gap)
), graced AS (
  SELECT p.n, range_agg(tstzrange(lower(p.r), least(upper(p.r), lower(p.r) + z.grace - p.before))) AS mr
  FROM z, (SELECT g.n, o.r, coalesce(sum(upper(o.r) - lower(o.r)) OVER (PARTITION BY g.n ORDER BY lower(o.r)
      ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), interval '0') AS before
    FROM gap g CROSS JOIN LATERAL unnest(g.open) o(r)) p
  WHERE p.before < z.grace GROUP BY 1
), last_clocked AS (
  SELECT g.n, range_agg(p.mr * tstzmultirange(g.gap)) AS mr FROM (
    SELECT g.n, g.gap, c."person_id", upper(c.r) = max(upper(c.r)) OVER (PARTITION BY g.n) AS is_last
    FROM gap g JOIN clocked c ON c."job_id" = g."job_id" AND upper(c.r) <= lower(g.gap)) g
  JOIN own_pause p ON p.person = g."person_id" WHERE g.is_last GROUP BY 1
), idle AS (
  SELECT g."bay_id", g.free, g.free * (coalesce(c.mr, ${none}) + coalesce(l.mr, ${none}) + coalesce(p.mr, ${none}) * tstzmultirange(g.gap)) AS break
  FROM gap g LEFT JOIN graced c USING (n) LEFT JOIN last_clocked l USING (n) LEFT JOIN pause p ON true
), found AS (
  SELECT "bay_id", 'outOfUse' AS class, NULL AS reason, asked * out_of_use AS mr FROM spot
  UNION ALL SELECT "bay_id", 'empty', NULL, asked - out_of_use - coalesce((SELECT range_agg(u.stay) FROM use u WHERE (u."bay_id", u."spot") = (spot."bay_id", spot."spot")), ${none}) FROM spot
  UNION ALL SELECT "bay_id", 'worked', NULL, usable * work FROM at
  UNION ALL SELECT "bay_id", 'stored', NULL, usable * (stored - work) FROM at
  UNION ALL SELECT "bay_id", 'held', h."reason", at.usable * h.mr FROM at JOIN held_of_job h USING ("job_id")
  UNION ALL SELECT "bay_id", 'break', NULL, break FROM idle
  UNION ALL SELECT "bay_id", 'noReason', NULL, free - break FROM idle
)
SELECT "bay_id" AS bay, class, reason, (sum(extract(epoch FROM upper(r) - lower(r))) * 1000)::double precision AS ms
FROM found CROSS JOIN LATERAL unnest(mr) r GROUP BY 1, 2, 3`;

export interface BayClasses {
  readonly classMs: Readonly<Record<string, number>>;
  readonly heldMs: Readonly<Record<string, number>>;
}

/** By bay id; what is nought is not named. `client` is in a transaction of the shop. */
export async function bayTimeInSql(
  client: pg.ClientBase,
  shopId: string,
  window: { readonly from: number; readonly to: number },
  now: number,
): Promise<ReadonlyMap<string, BayClasses>> {
  const { rows } = await client.query<{ bay: string; class: string; reason: string | null; ms: number }>({
    name: 'bay-time-in-sql',
    text,
    values: [shopId, window.from, window.to, now],
  });
  const bays = new Map<string, { classMs: Record<string, number>; heldMs: Record<string, number> }>();
  for (const { bay, class: name, reason, ms } of rows) {
    let of = bays.get(bay);
    if (!of) bays.set(bay, (of = { classMs: {}, heldMs: {} }));
    of.classMs[name] = (of.classMs[name] ?? 0) + ms;
    if (reason !== null) of.heldMs[reason] = (of.heldMs[reason] ?? 0) + ms;
  }
  return bays;
}
