/**
 * Writes what a decision changed: updates first (a closed stay frees its spot), then inserts in the order of the
 * tables, then the log. All statements of a save go out together and are answered together.
 */
import { type Edit, type TableName, tableNames } from '@holdfast/domain';
import type pg from 'pg';
import type { Change } from '../engine/ports.js';
import { burst, type Statement } from './burst.js';
import { insertRow, rowValues, storedTables, updateRow } from './columns.js';

const statements = Object.fromEntries(
  tableNames.map((name) => [
    name,
    {
      insert: { name: `insert-${name}`, text: insertRow(storedTables[name]) },
      update: { name: `update-${name}`, text: updateRow(storedTables[name]) },
    },
  ]),
) as unknown as Record<TableName, Record<'insert' | 'update', { name: string; text: string }>>;

const seconds = (at: string) => `to_timestamp(${at}::double precision / 1000)`;

/** $1 shop, $2 the number that the log ends at now, $3 the one it ended at: fails (division by zero) unless it did. */
const headStatement = `WITH h AS (
  UPDATE "head" SET "seq" = $2, "config_seq" = $4, "last_at" = ${seconds('$5')} WHERE "shop_id" = $1 AND "seq" = $3 RETURNING 1
) SELECT FROM h HAVING 1 / (count(*) = 1)::int = 1`;
const changeStatement = `INSERT INTO "change"
  ("shop_id", "seq", "recorded_at", "effective_at", "person_id", "device", "command", "key", "subjects", "facts")
VALUES ($1, $2, ${seconds('$3')}, ${seconds('$4')}, $5, $6, $7, $8, $9, $10)`;
const rowsStatement = `INSERT INTO "change_rows" ("shop_id", "seq", "recorded_at", "rows", "staff", "wall")
VALUES ($1, $2, ${seconds('$3')}, $4, $5, $6)`;
const answerStatement = `INSERT INTO "answer" ("shop_id", "sender", "key", "fingerprint", "status", "body", "seq", "recorded_at")
VALUES ($1, $2, $3, $4, 200, $5, $6, ${seconds('$7')})`;

/** $1 shop, $2 number: earlier changes keep their line in the log and lose the images of their rows. Who was away meanwhile takes a snapshot. */
const forgetStatement = `DELETE FROM "change_rows" WHERE "shop_id" = $1 AND "seq" < $2`;
/** $1 shop: what is left of files that were taken over or put aside. */
const forgetFilesStatement = `DELETE FROM "import_row" r USING "import_batch" b
  WHERE r."shop_id" = $1 AND b."shop_id" = $1 AND b."id" = r."import_id" AND b."state" IN ('accepted', 'discarded')`;

function logged(shopId: string, { edits, entry, erases }: Change): Statement[] {
  const { seq, recordedAt, key } = entry;
  const images = edits.map((edit) => [edit.table, edit.after.id, erases ? null : edit.before, edit.after]);
  const { effectiveAt, personId, device, command, subjects, facts, sender, fingerprint, body } = entry;
  const told = [JSON.stringify(subjects), JSON.stringify(facts)];
  const forget: Statement[] = [
    { name: 'log-forget', silent: true, text: forgetStatement, values: [shopId, seq] },
    { name: 'log-forget-files', silent: true, text: forgetFilesStatement, values: [shopId] },
  ];
  return [
    ...(erases ? forget : []),
    {
      name: 'log-change',
      silent: true,
      text: changeStatement,
      values: [shopId, seq, recordedAt, effectiveAt, personId, device, command, key, ...told],
    },
    {
      name: 'log-rows',
      silent: true,
      text: rowsStatement,
      values: [shopId, seq, recordedAt, JSON.stringify(images), entry.staff, entry.wall],
    },
    {
      name: 'log-answer',
      silent: true,
      text: answerStatement,
      values: [shopId, sender, key, fingerprint, body, seq, recordedAt],
    },
  ];
}

/** The head goes to the number of the last change, from the one before the first. */
function headMoved(shopId: string, changes: readonly Change[]): Statement {
  const [first, last] = [changes[0]?.entry, changes.at(-1)?.entry];
  if (!first || !last) throw new RangeError('Nothing to write.');
  return {
    name: 'log-head',
    silent: true,
    text: headStatement,
    values: [shopId, last.seq, first.seq - 1, last.configSeq, last.recordedAt],
  };
}

const order = new Map(tableNames.map((name, at) => [name, at]));

function written(shopId: string, edits: readonly Edit[]): Statement[] {
  const updates: Statement[] = [];
  const inserts: Statement[] = [];
  const inOrder = edits
    .filter(({ before, after }) => after !== before)
    .sort((a, b) => (order.get(a.table) ?? 0) - (order.get(b.table) ?? 0));
  for (const { table, before, after } of inOrder) {
    const values = [shopId, ...rowValues(storedTables[table], after)];
    if (before !== null) updates.push({ ...statements[table].update, values, silent: true });
    else inserts.push({ ...statements[table].insert, values, silent: true });
  }
  return [...(touchTwice(inOrder) ? [deferred] : []), ...updates, ...inserts];
}

/** Of a stay taken back and the one before it open again, each row is written by itself: what counts is what both leave. */
const deferred: Statement = { name: 'defer', text: 'SET CONSTRAINTS ALL DEFERRED', values: [], silent: true };

function touchTwice(inOrder: readonly Edit[]): boolean {
  return inOrder.some(({ table, before }, at) => before !== null && inOrder[at + 1]?.table === table);
}

/**
 * Sends all statements and the commit in one round trip; throws the first failure, after which nothing of it stands: what
 * is behind a failed statement is not run, and a statement that did not write what it should have fails by itself. The
 * changes of several commands write different rows, so that their order is that of one change.
 */
export async function save(client: pg.ClientBase, shopId: string, changes: readonly Change[]): Promise<void> {
  const edits = changes.flatMap((change) => change.edits);
  const results = await burst(client, [
    ...written(shopId, edits),
    headMoved(shopId, changes),
    ...changes.flatMap((change) => logged(shopId, change)),
    { name: 'commit', text: 'COMMIT', values: [], silent: true },
  ]);
  if (results.at(-1)?.command !== 'COMMIT') throw new Error('the change was not committed');
}
