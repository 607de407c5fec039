/**
 * The tables of the domain as PostgreSQL has them: names, and how a row is read as a JSON array and written back.
 * Arrays, because a row's values then travel without its column names, and because a function takes 100 arguments.
 */
import { type Column, type ColumnKind, type Row, type TableName, tableNames, tables } from '@holdfast/domain';

interface StoredColumn {
  readonly name: string;
  readonly sql: string;
  readonly kind: ColumnKind;
}

export interface StoredTable {
  readonly name: TableName;
  readonly sql: string;
  readonly columns: readonly StoredColumn[];
}

export function snake(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

export const storedTables: Readonly<Record<TableName, StoredTable>> = Object.fromEntries(
  tableNames.map((name) => [
    name,
    {
      name,
      sql: `"${snake(name)}"`,
      columns: Object.entries<Column<unknown>>(tables[name].columns).map(([column, { kind }]) => ({
        name: column,
        sql: `"${snake(column)}"`,
        kind,
      })),
    },
  ]),
) as unknown as Record<TableName, StoredTable>;

/** SQL of one value as the domain wants it in JSON: instants in epoch ms, days and decimals as text. */
export function readValue(kind: ColumnKind, sql: string): string {
  switch (kind) {
    case 'instant':
      return `(extract(epoch from ${sql}) * 1000)::bigint`;
    case 'day':
    case 'decimal':
      return `${sql}::text`;
    case 'id':
    case 'text':
    case 'int':
    case 'bool':
    case 'texts':
    case 'json':
      return sql;
  }
}

/** SQL that gives a row of `alias` as a JSON array in the order of the descriptor. */
export function readRow(table: StoredTable, alias: string): string {
  return `json_build_array(${table.columns.map((c) => readValue(c.kind, `${alias}.${c.sql}`)).join(', ')})`;
}

/** The row that `readRow` gave as an array. */
export function rowOf<T extends TableName>(table: StoredTable, values: readonly unknown[]): Row<T> {
  const row: Record<string, unknown> = {};
  table.columns.forEach((column, at) => {
    row[column.name] = values[at] ?? null;
  });
  return row as unknown as Row<T>;
}

/** Type of a column in a recordset read from JSON, and the expression that turns it into the column's own type. */
const recordType: Readonly<Record<ColumnKind, string>> = {
  id: 'uuid',
  text: 'text',
  int: 'integer',
  instant: 'double precision',
  day: 'date',
  decimal: 'numeric',
  bool: 'boolean',
  texts: 'text[]',
  json: 'jsonb',
};

function writtenValue({ kind, sql }: StoredColumn): string {
  return kind === 'instant' ? `to_timestamp(r.${sql} / 1000.0)` : `r.${sql}`;
}

const recordOf = (table: StoredTable) =>
  `json_to_recordset($2::json) AS r(${table.columns.map((c) => `${c.sql} ${recordType[c.kind]}`).join(', ')})`;

/** Inserts rows given as JSON objects by SQL column names ($2) into the shop $1. */
export function insertRows(table: StoredTable): string {
  return `INSERT INTO ${table.sql} ("shop_id", ${table.columns.map((c) => c.sql).join(', ')})
SELECT $1, ${table.columns.map(writtenValue).join(', ')} FROM ${recordOf(table)}`;
}

/**
 * Updates whole rows of the shop $1 from JSON ($2). Each version must be the next one: fails (division by zero) unless all
 * $3 rows were written, so that the commit that is already on its way cannot keep half of it. $4 are the rows' ids: they
 * lead to the rows by key, which a recordset of unknown length would not.
 */
export function updateRows(table: StoredTable): string {
  const set = table.columns.filter((c) => c.name !== 'id').map((c) => `${c.sql} = ${writtenValue(c)}`);
  return `WITH u AS (UPDATE ${table.sql} t SET ${set.join(', ')} FROM ${recordOf(table)}
WHERE t."shop_id" = $1 AND t."id" = ANY($4::uuid[]) AND t."id" = r."id" AND t."version" = r."version" - 1 RETURNING 1)
SELECT 1 / (count(*) = $3)::int FROM u`;
}

/** A row keyed by its SQL column names, as `insertRows` and `updateRows` read it. */
export function writtenRow(table: StoredTable, row: object): Record<string, unknown> {
  const source = row as Record<string, unknown>;
  return Object.fromEntries(table.columns.map((c) => [c.sql.slice(1, -1), source[c.name]]));
}
