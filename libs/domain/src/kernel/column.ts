/**
 * What a column of a table may be. One descriptor of each table (see ../tables) gives its row type here, its SQL in the
 * store, its form on the wire and what of it a board may show, so that none of the four can drift from the others.
 *
 * Units: `instant` is epoch milliseconds in the domain and ISO 8601 UTC on the wire and in answers; `day` is a calendar
 * day of the shop's zone, `YYYY-MM-DD`; `decimal` is a decimal string (money in the shop's currency, quantities in the
 * unit beside them), never a binary float.
 */
export type ColumnKind = 'id' | 'text' | 'int' | 'instant' | 'day' | 'decimal' | 'bool' | 'texts' | 'json';

/** staff: on every staff board; all: on the wall too; none: only in reads of its own. */
export type Shown = 'all' | 'staff' | 'none';

export interface Column<V> {
  readonly kind: ColumnKind;
  readonly nullable: boolean;
  readonly shown: Shown;
  /** Table whose row of the same shop this id names. */
  readonly ref: string | null;
  /** Closed list of words, where the column has one. */
  readonly values: readonly string[] | null;
  /** Phantom: the domain type of a value. */
  readonly value?: V;
}

function column<V>(kind: ColumnKind, more: Partial<Column<V>> = {}): Column<V> {
  return { kind, nullable: false, shown: 'all', ref: null, values: null, ...more };
}

export const id = (): Column<string> => column('id');
export const ref = (table: string): Column<string> => column('id', { ref: table });
export const text = (): Column<string> => column('text');
export const int = (): Column<number> => column('int');
export const instant = (): Column<number> => column('instant');
export const day = (): Column<string> => column('day');
export const decimal = (): Column<string> => column('decimal');
export const bool = (): Column<boolean> => column('bool');
export const texts = (): Column<readonly string[]> => column('texts');
export const json = <V>(): Column<V> => column<V>('json');
export const oneOf = <const W extends string>(values: readonly W[]): Column<W> => column<W>('text', { values });

export function orNull<V>(c: Column<V>): Column<V | null> {
  return { ...c, nullable: true };
}
/** Names, telephone numbers, prices and free words: on staff screens, never on a wall. */
export function offWall<V>(c: Column<V>): Column<V> {
  return { ...c, shown: 'staff' };
}
/** Detail that no board draws. */
export function offBoard<V>(c: Column<V>): Column<V> {
  return { ...c, shown: 'none' };
}

export type Columns = Readonly<Record<string, Column<unknown>>>;

/** Every row has these: `version` counts its changes from 1; a `void` row was taken back or struck and counts nowhere. */
export const base = { id: id(), version: int(), void: bool() } as const;

/** Who recorded it, on what, when it was recorded and when it happened (see `effectiveAt` in ../kernel/decision). */
export const recorded = {
  recordedAt: offBoard(instant()),
  effectiveAt: instant(),
  byId: offBoard(orNull(ref('person'))),
  device: offBoard(orNull(text())),
} as const;

export interface Table<C extends Columns = Columns> {
  readonly columns: C;
  /** Whether rows of this table are drawn on a board at all. */
  readonly board: Shown;
}

export function table<const C extends Columns>(board: Shown, columns: C): Table<typeof base & C> {
  return { board, columns: { ...base, ...columns } };
}

type ValueOf<C> = C extends Column<infer V> ? V : never;
export type RowOf<T> = T extends Table<infer C> ? { readonly [K in keyof C]: ValueOf<C[K]> } : never;
