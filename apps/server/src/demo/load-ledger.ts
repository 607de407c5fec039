/** Puts a whole ledger into an empty shop of the database, in one transaction behind the wall between shops. */
import { type TableName, tableNames } from '@holdfast/domain';
import type { Database } from '../database/pools.js';
import { insertRows, storedTables, writtenRow } from '../store/columns.js';
import { inShop } from '../store/shop-transaction.js';
import type { Ledger, LedgerChange } from './ledger.js';

/** Rows sent with one statement: large enough to cost few round trips, small enough to stay in memory. */
const atOnce = 2_000;

const changeStatement = `INSERT INTO "change" ("shop_id", "seq", "recorded_at", "effective_at", "person_id", "command", "subjects", "facts")
SELECT $1, r.seq, to_timestamp(r.at / 1000.0), to_timestamp(r.effective / 1000.0), r.person, r.command, r.subjects, r.facts
FROM json_to_recordset($2::json) AS r(seq bigint, at double precision, effective double precision, person uuid, command text, subjects jsonb, facts jsonb)`;

const rowsStatement = `INSERT INTO "change_rows" ("shop_id", "seq", "recorded_at", "rows", "staff", "wall")
SELECT $1, r.seq, to_timestamp(r.at / 1000.0), r.rows, r.staff, r.wall
FROM json_to_recordset($2::json) AS r(seq bigint, at double precision, rows jsonb, staff text, wall text)`;

const headStatement = `INSERT INTO "head" ("shop_id", "seq", "config_seq", "epoch", "last_at", "clock_real", "clock_shown", "clock_rate")
VALUES ($1, $2, $3, gen_random_uuid(), to_timestamp($4::double precision / 1000), clock_timestamp(), to_timestamp($5::double precision / 1000), 1)`;

function* batches<T>(list: readonly T[]): Generator<readonly T[]> {
  for (let from = 0; from < list.length; from += atOnce) yield list.slice(from, from + atOnce);
}

function loggedChange({ seq, recordedAt, effectiveAt, personId, command, subjects, facts }: LedgerChange) {
  return { seq, at: recordedAt, effective: effectiveAt, person: personId, command, subjects, facts };
}

function loggedRows(change: LedgerChange) {
  const images = change.edits.map(({ table, before, after }) => [table, after.id, before, after]);
  return { seq: change.seq, at: change.recordedAt, rows: images, ...change.texts };
}

/**
 * All rows, the numbered log, and the shop's own clock, which shows `now` (epoch ms) and runs on from there. Where the
 * shop has a log already, nothing is done.
 */
export function loadLedger(pool: Database['app'], shopId: string, ledger: Ledger, now: number): Promise<void> {
  const last = ledger.changes.at(-1);
  if (!last) throw new RangeError('An empty ledger makes no shop.');
  const all = ledger.all();
  return inShop(pool, shopId, async (client) => {
    const { rows } = await client.query(`select 1 from head where shop_id = $1`, [shopId]);
    if (rows.length > 0) return;
    // The limits of the role are made for single commands.
    await client.query(`set local statement_timeout = '60s'; set local idle_in_transaction_session_timeout = '60s'`);
    const insert = (text: string, list: readonly object[]) => client.query(text, [shopId, JSON.stringify(list)]);
    for (const name of tableNames as readonly TableName[]) {
      const stored = storedTables[name];
      for (const part of batches<object>(all[name] ?? []))
        await insert(
          insertRows(stored),
          part.map((row) => writtenRow(stored, row)),
        );
    }
    for (const part of batches(ledger.changes)) await insert(changeStatement, part.map(loggedChange));
    for (const part of batches(ledger.changes.filter(({ texts }) => texts !== null)))
      await insert(rowsStatement, part.map(loggedRows));
    await client.query(headStatement, [shopId, last.seq, last.configSeq, last.recordedAt, now]);
  });
}

/** The people of the loaded shop, as they sign in. */
export function peopleInside(
  pool: Database['app'],
  shopId: string,
): Promise<{ readonly personId: string; readonly name: string }[]> {
  return inShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ id: string; name: string }>(
      `select id, name from person where shop_id = $1 and not void`,
      [shopId],
    );
    return rows.map(({ id, name }) => ({ personId: id, name }));
  });
}
