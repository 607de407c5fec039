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

const casts: Readonly<Partial<Record<ColumnKind, (at: string) => string>>> = {
  instant: (at) => `to_timestamp(${at}::double precision / 1000)`,
};

/** A row's value, which stands behind the shop ($1) in the order of the descriptor, from $2. */
const parameter = (column: StoredColumn, at: number) => {
  const place = `$${String(at + 2)}`;
  return casts[column.kind]?.(place) ?? place;
};

/** Inserts the row whose `rowValues` stand behind the shop $1. */
export function insertRow(table: StoredTable): string {
  return `INSERT INTO ${table.sql} ("shop_id", ${table.columns.map((c) => c.sql).join(', ')})
VALUES ($1, ${table.columns.map(parameter).join(', ')})`;
}

/**
 * Updates the whole row whose `rowValues` stand behind the shop $1. Its version must be the next one: fails (division by
 * zero) unless the row was written, so that the commit that is already on its way cannot keep half of a change.
 */
export function updateRow(table: StoredTable): string {
  const at = (name: string) => table.columns.findIndex((column) => column.name === name) + 2;
  const set = table.columns.flatMap((c, place) => (c.name === 'id' ? [] : [`${c.sql} = ${parameter(c, place)}`]));
  return `WITH u AS (UPDATE ${table.sql} SET ${set.join(', ')}
WHERE "shop_id" = $1 AND "id" = $${String(at('id'))} AND "version" = $${String(at('version'))} - 1 RETURNING 1)
SELECT FROM u HAVING 1 / (count(*) = 1)::int = 1`;
}

/** The values of a row as `insertRow` and `updateRow` take them. */
export function rowValues(table: StoredTable, row: object): unknown[] {
  const source = row as Record<string, unknown>;
  return table.columns.map(({ name, kind }) => {
    const value = source[name] ?? null;
    return kind === 'json' && value !== null ? JSON.stringify(value) : value;
  });
}

/** A row keyed by its SQL column names, as `insertRows` reads it. */
export function writtenRow(table: StoredTable, row: object): Record<string, unknown> {
  const source = row as Record<string, unknown>;
  return Object.fromEntries(table.columns.map((c) => [c.sql.slice(1, -1), source[c.name]]));
}
