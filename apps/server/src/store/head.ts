/** The head of a shop's log: its number, its epoch and the shop's own clock. */

/**
 * SQL of the shop's time for a row `h` of `head`: the database's clock, or the own clock of a demo or test shop (shown
 * time = shown + (real − real then) × rate). Read it in a statement after the one that took the lock.
 */
export const shopNow = `coalesce(h."clock_shown" + (clock_timestamp() - h."clock_real") * h."clock_rate", clock_timestamp())`;

export interface Head {
  readonly seq: number;
  readonly configSeq: number;
  readonly epoch: string;
  /** Epoch ms, monotonic per shop: never before one after the last change. */
  readonly now: number;
}

export interface StoredAnswer {
  readonly fingerprint: string;
  readonly body: string;
  readonly seq: number;
}

export interface HeadRow {
  readonly seq: number;
  readonly config_seq: number;
  readonly epoch: string;
  readonly now: number;
  readonly answer: StoredAnswer | null;
  readonly after: readonly (readonly [table: string, id: string, version: number])[] | null;
  readonly counter: readonly unknown[] | null;
}

/** $1 shop, $2 sender, $3 key, $4 key of an own earlier command or null. */
export const headStatement = (counter: string) => `SELECT h."seq", h."config_seq", h."epoch",
  greatest((extract(epoch from ${shopNow}) * 1000)::bigint, (extract(epoch from h."last_at") * 1000)::bigint + 1) AS now,
  (SELECT json_build_object('fingerprint', a."fingerprint", 'body', a."body", 'seq', a."seq") FROM "answer" a
    WHERE a."shop_id" = $1 AND a."sender" = $2 AND a."key" = $3) AS answer,
  (SELECT json_agg(json_build_array(e->>0, e->>1, (e->3->>'version')::int)) FROM "answer" a
    JOIN "change_rows" c ON c."shop_id" = a."shop_id" AND c."seq" = a."seq", jsonb_array_elements(c."rows") e
    WHERE a."shop_id" = $1 AND a."sender" = $2 AND a."key" = $4) AS after,
  (SELECT ${counter} FROM "counter" t WHERE t."shop_id" = $1 AND t."name" = 'job' AND NOT t."void") AS counter
FROM "head" h WHERE h."shop_id" = $1`;

export function headOf(row: HeadRow): Head {
  return { seq: row.seq, configSeq: row.config_seq, epoch: row.epoch, now: row.now };
}
