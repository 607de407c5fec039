/**
 * read/ hides the SQL of everything a shop looks at: one file for each view, from rows straight to the JSON text of the
 * wire, which no JavaScript parses on its way. It guarantees that a read sees one shop only (the filter stands in every
 * statement here, the wall of row-level security beneath it; each is tested with the other off), one moment only (each
 * view is one statement, or one REPEATABLE READ transaction), and that a list is never longer than its page.
 *
 * This file gives the pieces of SQL that are made from the descriptors of the domain.
 */
import type { ColumnKind, TableName } from '@holdfast/domain';
import { storedTables } from '../store/columns.js';

/** An instant exactly as `Date.toISOString` writes it: UTC, milliseconds, Z. */
export function isoText(sql: string): string {
  return `to_char(${sql} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
}

/** Epoch milliseconds. By way of a double, which holds them exactly and is quicker than numeric. */
export function epochMs(sql: string): string {
  return `(date_part('epoch', ${sql}) * 1000)::bigint`;
}

/** One value in its wire form. */
export function wireValue(kind: ColumnKind, sql: string): string {
  switch (kind) {
    case 'instant':
      return isoText(sql);
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

/** The columns of a row of `alias` in wire form, named as in the domain: those that `shown` names, else all but `void`. */
export function wireFields(table: TableName, alias: string, shown?: readonly string[]): string {
  return storedTables[table].columns
    .filter(({ name }) => name !== 'void' && (shown?.includes(name) ?? true))
    .map(({ name, sql, kind }) => `${wireValue(kind, `${alias}.${sql}`)} AS "${name}"`)
    .join(', ');
}

export interface WhichRows {
  /** Condition on `t`; the shop ($1) and `void` are seen to. */
  readonly where: string;
  /** Order by, on `t`. */
  readonly order: string;
  /** Further fields, each `expression AS "name"`, on `t`. */
  readonly also?: readonly string[];
}

/** The part of a statement after SELECT that all rows of a table share. Alias `t`, shop $1. */
export function fromTable(table: TableName, where: string): string {
  return `FROM ${storedTables[table].sql} t WHERE t."shop_id" = $1 AND NOT t."void" AND ${where}`;
}

/** Rows of a table as a JSON array in wire form; `[]` where there are none. */
export function rowsJson(table: TableName, { where, order, also = [] }: WhichRows): string {
  const fields = [wireFields(table, 't'), ...also].join(', ');
  return `(SELECT coalesce(json_agg(r), '[]'::json) FROM (SELECT ${fields} ${fromTable(table, where)} ORDER BY ${order}) r)`;
}

/** One row as a JSON object, or null. */
export function rowJson(table: TableName, where: string): string {
  return `(SELECT row_to_json(r) FROM (SELECT ${wireFields(table, 't')} ${fromTable(table, where)}) r)`;
}

/**
 * Rows of a table that hang on a row of the statement around, as a JSON array. `child` is a condition that may name that
 * row by its own alias `t`, and the hanging rows by `k`.
 */
export function hangingRows(table: TableName, child: string, order: string): string {
  const { sql } = storedTables[table];
  return `(SELECT coalesce(json_agg(r), '[]'::json) FROM (SELECT ${wireFields(table, 'k')} FROM ${sql} k WHERE k."shop_id" = $1 AND NOT k."void" AND ${child} ORDER BY ${order}) r)`;
}

/** An object of named JSON values; PostgreSQL takes at most fifty of them in one call. */
export function jsonObject(fields: Readonly<Record<string, string>>): string {
  return `json_build_object(${Object.entries(fields)
    .map(([name, sql]) => `'${name}', ${sql}`)
    .join(', ')})`;
}
