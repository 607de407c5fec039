/**
 * Rows on the wire: only the columns that the audience may see, instants as ISO 8601 UTC. Decoded again in the client,
 * so that the selectors work on the same row types as the domain.
 */
import { type AnyRow, type Column, type Row, type TableName, tables } from '@holdfast/domain';
import { type Audience, shownTo } from './visible.js';

export type WireRow = Readonly<Record<string, unknown>> & { readonly id: string };

interface WireColumn {
  readonly name: string;
  readonly instant: boolean;
}

const columnsShown = new Map<string, readonly WireColumn[]>();

/** Columns of a table on an audience's board, in the order of the descriptor. `void` is never sent. */
export function wireColumns(table: TableName, audience: Audience): readonly WireColumn[] {
  const key = `${table}/${audience}`;
  let columns = columnsShown.get(key);
  if (!columns) {
    columns = Object.entries<Column<unknown>>(tables[table].columns)
      .filter(([name, column]) => name !== 'void' && shownTo(column.shown, audience))
      .map(([name, column]) => ({ name, instant: column.kind === 'instant' }));
    columnsShown.set(key, columns);
  }
  return columns;
}

export function encodeRow(table: TableName, row: AnyRow, audience: Audience): WireRow {
  const source = row as unknown as Record<string, unknown>;
  const wire: Record<string, unknown> = {};
  for (const { name, instant } of wireColumns(table, audience)) {
    const value = source[name];
    wire[name] = instant && typeof value === 'number' ? new Date(value).toISOString() : value;
  }
  return wire as WireRow;
}

/** A row as the board holds it: what the audience does not see is missing. */
export type BoardRow<T extends TableName> = Row<T>;

export function decodeRow<T extends TableName>(table: T, wire: WireRow, audience: Audience): BoardRow<T> {
  const row: Record<string, unknown> = { ...wire, void: false };
  for (const { name, instant } of wireColumns(table, audience)) {
    const value = wire[name];
    if (instant && typeof value === 'string') row[name] = Date.parse(value);
  }
  return row as unknown as BoardRow<T>;
}
