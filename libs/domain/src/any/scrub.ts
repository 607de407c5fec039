/** Takes exact texts out of all words and stored documents of a bag, the shop's own rows excepted. */
import type { Rows } from '../kernel/rows.js';
import type { Column } from '../kernel/column.js';
import { shopTables } from '../tables/shop.js';
import { type TableName, tableNames, tables } from '../tables/tables.js';

export interface Scrubber {
  readonly text: (text: string) => string;
  readonly rows: (rows: Rows) => void;
}

/** Shorter ones are in too many words that mean something else. */
const shortest = 2;
const forPattern = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');

/** What says who somebody is stands in columns of its own, and is another customer's where it is not this one's. */
const ofParties: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  customer: ['name', 'nameKey', 'fleet'],
  contact: ['name', 'phone', 'mail'],
  vehicle: ['plate', 'plateKey', 'vin'],
};

/** Columns of free words: no ids, no closed lists, no parties. */
const wordColumns = tableNames
  .filter((name) => !(name in shopTables))
  .map((name): readonly [TableName, readonly string[]] => {
    const columns = Object.entries<Column<unknown>>(tables[name].columns);
    const free = columns.filter(([, { kind, values }]) => (kind === 'text' && values === null) || kind === 'json');
    return [name, free.map(([column]) => column).filter((column) => ofParties[name]?.includes(column) !== true)];
  });

/** Whole words only, in any case: "Ann" goes from "Ann rang" and stays in "Annual". The longest text goes first. */
export function scrubberOf(texts: readonly (string | null)[], instead: string): Scrubber {
  const known = new Set(texts.flatMap((text) => (text === null ? [] : [text.trim()])));
  const wanted = [...known].filter(({ length }) => length >= shortest).sort((a, b) => b.length - a.length);
  const pattern =
    wanted.length === 0
      ? null
      : new RegExp(`(?<![\\p{L}\\p{N}])(?:${wanted.map(forPattern).join('|')})(?![\\p{L}\\p{N}])`, 'giu');
  const text = (said: string): string => (pattern === null ? said : said.replace(pattern, instead));
  const value = (said: unknown): unknown => {
    if (typeof said === 'string') return text(said);
    if (Array.isArray(said)) return said.map(value);
    if (typeof said !== 'object' || said === null) return said;
    return Object.fromEntries(Object.entries(said).map(([key, inside]) => [key, value(inside)]));
  };
  return {
    text,
    rows(rows) {
      for (const [name, columns] of wordColumns) {
        for (const row of rows.listAll(name)) {
          const values = row as unknown as Readonly<Record<string, unknown>>;
          const changed = columns
            .map((column) => [column, value(values[column])] as const)
            .filter(([column, now]) => JSON.stringify(now) !== JSON.stringify(values[column]));
          if (changed.length > 0) rows.change(name, row.id, Object.fromEntries(changed));
        }
      }
    },
  };
}
