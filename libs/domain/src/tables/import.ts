import { id, instant, int, json, oneOf, orNull, table, text } from '../kernel/column.js';
import { importKinds, importStates } from './words.js';

/**
 * A file of what a shop kept elsewhere, put beside the shop's rows until somebody accepts it. Its rows (import_row) are no
 * rows of the shop: neither on a board nor in the log, and cleared away when they were taken over or put aside.
 */
export const importTables = {
  importBatch: table('none', {
    kind: oneOf(importKinds),
    fileName: text(),
    encoding: text(),
    separator: text(),
    /** Words of the file's first row, in its order. */
    header: json<readonly string[]>(),
    /** Which column of the file each field comes from, counted from 0; a field that is left out comes from none. */
    mapping: json<Readonly<Record<string, number>>>(),
    state: oneOf(importStates),
    /** Rows of the file without its first; those looked at so far under the mapping; how they came out. */
    rowCount: int(),
    checkedCount: int(),
    goodCount: int(),
    badCount: int(),
    /** The run of checking that may write; one begun later takes its place. */
    checkId: orNull(id()),
    uploadedAt: instant(),
    uploadedById: id(),
    acceptedAt: orNull(instant()),
    acceptedById: orNull(id()),
  }),
} as const;
