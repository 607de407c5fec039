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
}

/**
 * Locks the head of the shop $1 and reads it. Where the lock waited for a change, PostgreSQL reads the row and with it the
 * clock once more after the wait; where it waited for nothing that changed, a time from before the wait is as good.
 */
export const lockStatement = `SELECT h."seq", h."config_seq", h."epoch",
  greatest((extract(epoch from ${shopNow}) * 1000)::bigint, (extract(epoch from h."last_at") * 1000)::bigint + 1) AS now
FROM "head" h WHERE h."shop_id" = $1 FOR NO KEY UPDATE`;

export interface AnswerRow extends StoredAnswer {
  readonly at: number;
}

/** $1 shop, $2 senders, $3 keys: the answers that stand, each with the place of its key in the arrays, from 1. */
export const answersStatement = `SELECT k.at::int AS at, a."fingerprint", a."body", a."seq"
FROM unnest($2::uuid[], $3::uuid[]) WITH ORDINALITY AS k(sender, key, at)
JOIN "answer" a ON a."shop_id" = $1 AND a."sender" = k.sender AND a."key" = k.key`;

export interface VersionsRow {
  readonly at: number;
  readonly versions: readonly (readonly [table: string, id: string, version: number])[];
}

/** $1 shop, $2 senders, $3 keys of own earlier commands or null: the versions that each of them wrote. */
export const versionsStatement = `SELECT k.at::int AS at, (SELECT json_agg(json_build_array(e->>0, e->>1, (e->3->>'version')::int))
    FROM jsonb_array_elements(c."rows") e) AS versions
FROM unnest($2::uuid[], $3::uuid[]) WITH ORDINALITY AS k(sender, key, at)
JOIN "answer" a ON a."shop_id" = $1 AND a."sender" = k.sender AND a."key" = k.key
JOIN "change_rows" c ON c."shop_id" = a."shop_id" AND c."seq" = a."seq"`;

export function headOf(row: HeadRow): Head {
  return { seq: row.seq, configSeq: row.config_seq, epoch: row.epoch, now: row.now };
}
