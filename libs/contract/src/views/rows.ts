/**
 * views/ hides what each read answers and takes. A row on the wire is made from its table's descriptor in the domain, so
 * that a column cannot stand in one and be missing in the other: instants are ISO 8601 UTC with milliseconds, days
 * `YYYY-MM-DD` in the zone of the shop, amounts decimal strings. A row that was taken back or struck is never answered.
 */
import { type Column, type Row, type TableName, tables } from '@holdfast/domain';
import { z } from 'zod';

type OnWire<V> = V extends number ? string : V;

/** The row of a table as reads answer it: every column but `void`. Instants are those columns that end in `At`, and `since`. */
export type RowView<T extends TableName> = {
  readonly [K in Exclude<keyof Row<T>, 'void'>]: K extends `${string}At` | 'since' ? OnWire<Row<T>[K]> : Row<T>[K];
};

type RowShape<T extends TableName> = { [K in keyof RowView<T>]: z.ZodType<RowView<T>[K]> };

export const isoInstant = z.iso.datetime({ precision: 3 });
const decimal = z.string().regex(/^-?\d+(\.\d+)?$/);

function valueSchema({ kind, values, nullable }: Column<unknown>): z.ZodType {
  const schema = plainSchema(kind, values);
  return nullable ? schema.nullable() : schema;
}

function plainSchema(kind: Column<unknown>['kind'], values: readonly string[] | null): z.ZodType {
  switch (kind) {
    case 'id':
      return z.uuid();
    case 'text':
      return values === null ? z.string() : z.enum(values);
    case 'int':
      return z.int();
    case 'instant':
      return isoInstant;
    case 'day':
      return z.iso.date();
    case 'decimal':
      return decimal;
    case 'bool':
      return z.boolean();
    case 'texts':
      return z.array(z.string());
    case 'json':
      return z.unknown();
  }
}

/** The columns of a table, for a view that puts more beside them. */
export function rowShape<T extends TableName>(table: T): RowShape<T> {
  const columns = Object.entries<Column<unknown>>(tables[table].columns).filter(([name]) => name !== 'void');
  return Object.fromEntries(columns.map(([name, column]) => [name, valueSchema(column)])) as unknown as RowShape<T>;
}

export function rowSchema<T extends TableName>(table: T) {
  return z.strictObject(rowShape(table));
}
