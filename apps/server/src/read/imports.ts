import { type ImportMapping, type ImportRowsQuery, pageSize } from '@holdfast/contract';
import type { ImportKind } from '@holdfast/domain';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import type { RowProblem } from '../import/ports.js';
import { rowJson, rowsJson } from './wire-sql.js';

/** A row of a file as it is kept; the words for what is wrong with it are put to it in http/. */
export interface StoredImportRow {
  readonly number: number;
  readonly state: 'staged' | 'good' | 'bad';
  readonly cells: readonly string[];
  readonly problems: readonly RowProblem[];
  readonly made: Readonly<Record<string, string | number | null>> | null;
}

/** What its rows are read with: the header for the names of columns. */
export interface StoredBatch {
  readonly kind: ImportKind;
  readonly header: readonly string[];
  readonly mapping: ImportMapping;
  readonly fileName: string;
}

export interface ImportRead {
  readonly batch: StoredBatch;
  readonly preview: readonly StoredImportRow[];
}

const previewed = 8;
const fields = `'number', r."number", 'state', r."state", 'cells', r."cells", 'problems', r."problems", 'made', r."made"`;

const oneStatement = {
  name: 'read-import',
  text: `SELECT ${rowJson('importBatch', 't."id" = $2')} AS batch, (SELECT coalesce(json_agg(p.item ORDER BY p.number), '[]'::json) FROM (
  SELECT r."number", json_build_object(${fields}) AS item FROM "import_row" r WHERE r."shop_id" = $1 AND r."import_id" = $2
  ORDER BY r."number" LIMIT ${String(previewed)}) p) AS preview`,
};
const listStatement = {
  name: 'read-imports',
  text: `SELECT json_build_object('items', ${rowsJson('importBatch', {
    where: `t."id" IN (SELECT b."id" FROM "import_batch" b WHERE b."shop_id" = $1 AND NOT b."void" ORDER BY b."uploaded_at" DESC LIMIT 20)`,
    order: 't."uploaded_at" DESC',
  })})::text AS view`,
};
const rowsStatement = {
  name: 'read-import-rows',
  text: `SELECT json_build_object(${fields}) AS item FROM "import_row" r
WHERE r."shop_id" = $1 AND r."import_id" = $2 AND r."state" = $3 AND r."number" > $4 ORDER BY r."number" LIMIT $5`,
};

/** The last files of existing data, newest first, as JSON text. */
export function readImports(pool: pg.Pool, shopId: string): Promise<string> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ view: string }>({ ...listStatement, values: [shopId] });
    return rows[0]?.view ?? '{"items":[]}';
  });
}

/** Null where the shop has no such file. */
export function readImport(pool: pg.Pool, shopId: string, importId: string): Promise<ImportRead | null> {
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ batch: StoredBatch | null; preview: StoredImportRow[] }>({
      ...oneStatement,
      values: [shopId, importId],
    });
    const [read] = rows;
    return read?.batch ? { batch: read.batch, preview: read.preview } : null;
  });
}

/** Rows of a file in its order. */
export function readImportRows(
  pool: pg.Pool,
  shopId: string,
  importId: string,
  query: ImportRowsQuery,
): Promise<{ items: readonly StoredImportRow[]; next: string | null }> {
  const size = pageSize(query.limit);
  const after = Math.min(Number(query.after ?? 0), 2_147_483_647);
  return withShop(pool, shopId, async (client) => {
    const { rows } = await client.query<{ item: StoredImportRow }>({
      ...rowsStatement,
      values: [shopId, importId, query.state, after, size + 1],
    });
    const items = rows.slice(0, size).map(({ item }) => item);
    return { items, next: rows.length > size ? String(items.at(-1)?.number ?? '') : null };
  });
}
