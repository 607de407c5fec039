import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { TableName } from '../tables/tables.js';
import { live } from './place-and-work.js';

/** The refusal of an id that names no row that counts. */
export function notThere(table: TableName, id: string): Refused {
  return refuse('row.notFound', { table, id });
}

/** The first of the named rows that does not count, as a refusal; null when all are there. Ids left out are no names. */
export function absent(
  rows: Rows,
  named: { readonly [T in TableName]?: string | null | undefined | readonly string[] },
): Refused | null {
  for (const [table, ids] of Object.entries(named) as [TableName, string | null | undefined | readonly string[]][]) {
    for (const id of typeof ids === 'string' ? [ids] : (ids ?? [])) {
      if (!live(rows, table, id)) return notThere(table, id);
    }
  }
  return null;
}
