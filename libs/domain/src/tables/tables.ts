/**
 * All tables of a shop by family. The row types are read off these descriptors; the store, the wire and the board use
 * the same ones. A test compares them with the database's own catalogue.
 */
import type { RowOf } from '../kernel/column.js';
import { holdTables } from './hold.js';
import { importTables } from './import.js';
import { jobTables } from './job.js';
import { outstandingTables } from './outstanding.js';
import { partsTables } from './parts.js';
import { placeTables } from './place.js';
import { shopTables } from './shop.js';
import { timeTables } from './time.js';
import { workTables } from './work.js';

export const tables = {
  ...shopTables,
  ...jobTables,
  ...workTables,
  ...placeTables,
  ...holdTables,
  ...partsTables,
  ...outstandingTables,
  ...timeTables,
  ...importTables,
} as const;

export type TableName = keyof typeof tables;
export const tableNames = Object.keys(tables) as TableName[];

/** The row of a table, as the domain sees it: instants in epoch milliseconds, decimals as strings. */
export type Row<T extends TableName> = RowOf<(typeof tables)[T]>;
export type AnyRow = { readonly id: string; readonly version: number; readonly void: boolean };
