/**
 * Writes what a decision changed: updates first (a closed stay frees its spot), then inserts in the order of the
 * tables, then the log. All statements of a save go out together and are answered together.
 */
import { type Edit, type TableName, tableNames } from '@holdfast/domain';
import type pg from 'pg';
import type { LogEntry } from '../engine/ports.js';
import { inOneWrite } from './one-write.js';
import { insertRows, storedTables, updateRows, writtenRow } from './columns.js';

const statements = Object.fromEntries(
  tableNames.map((name) => [
    name,
    {
      insert: { name: `insert-${name}`, text: insertRows(storedTables[name]) },
      update: { name: `update-${name}`, text: updateRows(storedTables[name]) },
    },
  ]),
) as unknown as Record<TableName, Record<'insert' | 'update', { name: string; text: string }>>;

const logStatement = `WITH h AS (
  UPDATE "head" SET "seq" = $2, "config_seq" = $3, "last_at" = to_timestamp($4::double precision / 1000)
  WHERE "shop_id" = $1 AND "seq" = $2 - 1 RETURNING "shop_id"
), c AS (
  INSERT INTO "change" ("shop_id", "seq", "recorded_at", "effective_at", "person_id", "device", "command", "key", "subjects", "facts")
  SELECT "shop_id", $2, to_timestamp($4::double precision / 1000), to_timestamp($5::double precision / 1000), $6, $7, $8, $9, $10, $11 FROM h
  RETURNING "shop_id"
), r AS (
  INSERT INTO "change_rows" ("shop_id", "seq", "recorded_at", "rows", "staff", "wall")
  SELECT "shop_id", $2, to_timestamp($4::double precision / 1000), $12, $13, $14 FROM c
), a AS (
  INSERT INTO "answer" ("shop_id", "sender", "key", "fingerprint", "status", "body", "seq", "recorded_at")
  SELECT "shop_id", $15, $9, $16, 200, $17, $2, to_timestamp($4::double precision / 1000) FROM c RETURNING 1
)
SELECT 1 / (count(*) = 1)::int FROM a`;

interface Written {
  readonly statement: { readonly name: string; readonly text: string };
  readonly rows: readonly Record<string, unknown>[];
  readonly isUpdate: boolean;
}

function written(edits: readonly Edit[]): Written[] {
  const updates: Written[] = [];
  const inserts: Written[] = [];
  for (const table of tableNames) {
    const ofTable = edits.filter((edit) => edit.table === table && edit.after !== edit.before);
    const rowsOf = (list: readonly Edit[]) => list.map((edit) => writtenRow(storedTables[table], edit.after));
    const changed = ofTable.filter((edit) => edit.before !== null);
    const added = ofTable.filter((edit) => edit.before === null);
    if (changed.length > 0)
      updates.push({ statement: statements[table].update, rows: rowsOf(changed), isUpdate: true });
    if (added.length > 0) inserts.push({ statement: statements[table].insert, rows: rowsOf(added), isUpdate: false });
  }
  return [...updates, ...inserts];
}

function logValues(shopId: string, entry: LogEntry, images: unknown): unknown[] {
  return [
    shopId,
    entry.seq,
    entry.configSeq,
    entry.recordedAt,
    entry.effectiveAt,
    entry.personId,
    entry.device,
    entry.command,
    entry.key,
    JSON.stringify(entry.subjects),
    JSON.stringify(entry.facts),
    JSON.stringify(images),
    entry.staff,
    entry.wall,
    entry.sender,
    entry.fingerprint,
    entry.body,
  ];
}

/**
 * Sends all statements and the commit in one round trip; throws the first failure, after which nothing of it stands: a
 * commit behind a failed statement rolls back, and a statement that did not write what it should have fails by itself.
 */
export async function save(
  client: pg.ClientBase,
  shopId: string,
  edits: readonly Edit[],
  entry: LogEntry,
): Promise<void> {
  const images = edits.map((edit) => [edit.table, edit.after.id, edit.before, edit.after]);
  const parts = written(edits);
  const sent = inOneWrite(client, (): Promise<{ command: string }>[] => [
    ...parts.map(({ statement, rows, isUpdate }) =>
      client.query({
        ...statement,
        values: [shopId, JSON.stringify(rows), ...(isUpdate ? [rows.length, rows.map((row) => row['id'])] : [])],
      }),
    ),
    client.query({ name: 'log-change', text: logStatement, values: logValues(shopId, entry, images) }),
    client.query('COMMIT'),
  ]);
  const results = await Promise.allSettled(sent);
  for (const result of results) if (result.status === 'rejected') throw result.reason;
  const last = results.at(-1);
  if (last?.status !== 'fulfilled' || last.value.command !== 'COMMIT') throw new Error('the change was not committed');
}
