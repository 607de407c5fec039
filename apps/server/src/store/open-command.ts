/**
 * Opens a transaction for one or several commands: the lock on the shop's head first, and behind it in the same write what
 * has to see what the lock waited for: the keys and the slices.
 */
import type { Slices } from '@holdfast/domain';
import type pg from 'pg';
import type { OpenCall, OpenedCommand } from '../engine/ports.js';
import { readRow, rowOf, storedTables } from './columns.js';
import {
  type AnswerRow,
  answersStatement,
  headOf,
  type HeadRow,
  lockStatement,
  type VersionsRow,
  versionsStatement,
} from './head.js';
import { burst, type Statement } from './burst.js';
import { readEverythingOf } from './everything-of.js';
import { bagOf, decodeTables, type makeShopCache, type TablesOfRows } from './shop-cache.js';
import { loadCall } from './slices.js';
import { type LaidDown, layDown, stagedUnderLock } from './staged.js';
import { readTakenBack, slicesAround } from './taken-back.js';

/**
 * All that a transaction of commands does goes by key: the general plan of each statement is as good as one for its values
 * and is made once, and a plan made while the shop was empty must not read whole tables ever after.
 */
const openStatement = `SELECT set_config('app.shop_id', $1, true), set_config('plan_cache_mode', 'force_generic_plan', true),
  set_config('enable_seqscan', 'off', true)`;

const counterStatement = `SELECT ${readRow(storedTables.counter, 't')} AS row FROM "counter" t
WHERE t."shop_id" = $1 AND t."name" = 'job' AND NOT t."void"`;

/** Null when there is no such shop. The id of the shop must have been checked to be a UUID. */
export async function openCommands(
  client: pg.ClientBase,
  shops: ReturnType<typeof makeShopCache>,
  shopId: string,
  calls: readonly OpenCall[],
): Promise<OpenedCommand[] | null> {
  const laid = await laidBefore(client, shopId, calls);
  const read = await readBehindLock(client, shopId, calls, laid !== null);
  if (!read) return null;
  const shop = await shops.of(client, shopId, read.head.config_seq);
  const staged = laid === null ? null : await stagedUnderLock(client, shopId, laid);
  const opened: OpenedCommand[] = [];
  for (const [at, { slices }] of calls.entries()) {
    const after = read.versions.get(at + 1);
    const takenBack = slices.change === undefined ? null : await readTakenBack(client, shopId, slices.change);
    opened.push({
      head: headOf(read.head),
      stored: read.answers.get(at + 1) ?? null,
      versionsAfter: after ? new Map(after.map(([table, id, version]) => [`${table}/${id}`, version])) : null,
      rows: bagOf(
        shop,
        contentOf(read.loads[at] ?? []),
        slices.counter ? read.counter : null,
        takenBack && (await contentAround(client, shopId, slicesAround(takenBack))),
        takenBack?.content,
        staged && (await contentAround(client, shopId, { vehicles: staged.vehicles })),
        staged?.content,
        await readEverythingOf(client, shopId, slices),
      ),
      calendar: shop.calendar,
      takenBack,
      staged: staged?.file ?? null,
    });
  }
  return opened;
}

/** A file of existing data never shares a transaction. What takes long of it is done before anybody has to wait for it. */
async function laidBefore(
  client: pg.ClientBase,
  shopId: string,
  [call]: readonly OpenCall[],
): Promise<LaidDown | null> {
  const importId = call?.slices.importId;
  return call === undefined || importId === undefined ? null : layDown(client, shopId, importId, call.sender);
}

async function contentAround(client: pg.ClientBase, shopId: string, slices: Slices): Promise<TablesOfRows | null> {
  const around = loadCall(shopId, slices);
  return around && contentOf((await burst(client, [around]))[0]?.rows as LoadedRow[]);
}

/** All in one round trip: the lock stands before what has to see what it waited for. */
async function readBehindLock(client: pg.ClientBase, shopId: string, calls: readonly OpenCall[], begun: boolean) {
  const senders = calls.map((call) => call.sender);
  const afterKeys = calls.map((call) => call.afterKey);
  const statements: Statement[] = [
    ...(begun ? [] : [{ name: 'begin', text: 'BEGIN', values: [], silent: true } as const]),
    { name: 'open', text: openStatement, values: [shopId] },
  ];
  const add = <R extends pg.QueryResultRow>(statement: Statement | null): ((results: pg.QueryResult[]) => R[]) => {
    if (statement === null) return () => [];
    const at = statements.push(statement) - 1;
    return (results) => (results[at]?.rows ?? []) as R[];
  };
  const inKeys = (keys: readonly (string | null)[]) => [shopId, senders, keys];
  const headIn = add<HeadRow>({ name: 'lock', text: lockStatement, values: [shopId] });
  const keys = calls.map((call) => call.key);
  const answersIn = add<AnswerRow>({ name: 'answers', text: answersStatement, values: inKeys(keys) });
  const versionsIn = add<VersionsRow>(
    afterKeys.some((key) => key !== null)
      ? { name: 'versions', text: versionsStatement, values: inKeys(afterKeys) }
      : null,
  );
  const counterIn = add<{ row: unknown[] }>(
    calls.some(({ slices }) => slices.counter) ? { name: 'counter', text: counterStatement, values: [shopId] } : null,
  );
  const loadsIn = calls.map(({ slices }) => add<LoadedRow>(loadCall(shopId, slices)));
  const results = await burst(client, statements);
  const [head] = headIn(results);
  if (!head) return null;
  const [counter] = counterIn(results);
  return {
    head,
    answers: new Map(answersIn(results).map(({ at, ...answer }) => [at, answer])),
    versions: new Map(versionsIn(results).map((one) => [one.at, one.versions])),
    counter: counter ? { counter: [rowOf<'counter'>(storedTables.counter, counter.row)] } : null,
    loads: loadsIn.map((load) => load(results)),
  };
}

interface LoadedRow {
  readonly rows: string;
}

const contentOf = ([row]: readonly LoadedRow[]): TablesOfRows | null => (row ? decodeTables(row.rows) : null);
