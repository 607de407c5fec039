import type { AnyRow, Rows, TableName } from '@holdfast/domain';
import { type Audience, boardTables, visible } from './visible.js';
import { encodeRow, type WireRow } from './wire.js';

/** What a change does to a board: rows that enter or changed, and ids that leave. */
export interface BoardDifference {
  readonly put: { readonly [T in TableName]?: readonly WireRow[] };
  readonly gone: { readonly [T in TableName]?: readonly string[] };
}

/**
 * The difference that a decision makes to the boards of all audiences: what is visible after it against what was
 * visible before it, at the same `now`. Rows that the decision did not touch are the same objects and cost nothing.
 */
export function differences(before: Rows, after: Rows, now: number): Readonly<Record<Audience, BoardDifference>> {
  const was = visible(before, now);
  const is = visible(after, now);
  return { staff: between(was, is, 'staff'), wall: between(was, is, 'wall') };
}

type Board = ReturnType<typeof visible>;

function between(was: Board, is: Board, audience: Audience): BoardDifference {
  const put: Record<string, WireRow[]> = {};
  const gone: Record<string, string[]> = {};
  for (const table of boardTables(audience)) {
    const old = was.get(table) ?? none;
    const now = is.get(table) ?? none;
    for (const [id, row] of now) {
      if (old.get(id) !== row) (put[table] ??= []).push(encodeRow(table, row, audience));
    }
    for (const id of old.keys()) {
      if (!now.has(id)) (gone[table] ??= []).push(id);
    }
  }
  return { put, gone } as BoardDifference;
}

const none: ReadonlyMap<string, AnyRow> = new Map();
