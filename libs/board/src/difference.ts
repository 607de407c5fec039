import { type AnyRow, type Edit, type Row, type Rows, type TableName, tables } from '@holdfast/domain';
import { type Audience, boardTables, type Edge, edgeOf, shownTo, shows, visible, type VisibleRows } from './visible.js';
import { encodeRow, type WireRow } from './wire.js';

/** What a change does to a board: rows that enter or changed, and ids that leave. */
export interface BoardDifference {
  readonly put: { readonly [T in TableName]?: readonly WireRow[] };
  readonly gone: { readonly [T in TableName]?: readonly string[] };
}

/**
 * The difference that a decision makes to the boards of all audiences: what is visible after it against what was
 * visible before it, at the same `now`. Mostly only the rows that it wrote can differ; where a visit comes onto the
 * board or leaves it, it takes rows along that nobody wrote, and all rows of the bag are compared.
 */
export function differences(
  before: Rows,
  after: Rows,
  edits: readonly Edit[],
  now: number,
): Readonly<Record<Audience, BoardDifference>> {
  const was = edgeOf(before, now);
  const is = edgeOf(after, now);
  const moved = !sameEdge(was, is) || edits.some((edit) => takesOthersAlong(before, after, was, edit));
  const [old, present] = moved ? [visible(before, now), visible(after, now)] : writtenOnly(before, after, was, edits);
  return { staff: between(old, present, after, 'staff'), wall: between(old, present, after, 'wall') };
}

const same = (a: ReadonlySet<string>, b: ReadonlySet<string>) => a.size === b.size && [...a].every((one) => b.has(one));

function sameEdge(a: Edge, b: Edge): boolean {
  return same(a.jobs, b.jobs) && same(a.vehicles, b.vehicles) && same(a.customers, b.customers);
}

/** A fix that leaves the board or comes back to it takes its second checks along. */
function takesOthersAlong(before: Rows, after: Rows, edge: Edge, { table, before: old, after: row }: Edit): boolean {
  if (table !== 'temporaryFix' || old === null) return false;
  const fix = (one: Row<TableName>) => one as Row<'temporaryFix'>;
  return shows(before, edge, table, fix(old)) !== shows(after, edge, table, fix(row));
}

function writtenOnly(before: Rows, after: Rows, edge: Edge, edits: readonly Edit[]): [VisibleRows, VisibleRows] {
  const old = new Map<TableName, Map<string, AnyRow>>();
  const now = new Map<TableName, Map<string, AnyRow>>();
  const put = (into: Map<TableName, Map<string, AnyRow>>, table: TableName, row: AnyRow) => {
    const rows = into.get(table);
    if (rows) rows.set(row.id, row);
    else into.set(table, new Map([[row.id, row]]));
  };
  for (const { table, before: was, after: is } of edits) {
    if (!shownTo(tables[table].board, 'staff')) continue;
    if (was && shows(before, edge, table, was)) put(old, table, was);
    if (shows(after, edge, table, is)) put(now, table, is);
  }
  return [old, now];
}

/**
 * Customers with what belongs to them are on the board for several vehicles, and a bag knows only some of these. So a
 * change never says that they leave, unless they are over themselves: `prune`, which sees the whole board, drops them.
 */
const ofCustomers: readonly TableName[] = ['customer', 'contact', 'standingGoAhead'];

function leaves(table: TableName, id: string, after: Rows): boolean {
  if (!ofCustomers.includes(table)) return true;
  const row = after.find(table, id) as (AnyRow & { readonly endedAt?: number | null }) | undefined;
  return row?.void === true || (table === 'standingGoAhead' && (row?.endedAt ?? null) !== null);
}

function between(was: VisibleRows, is: VisibleRows, after: Rows, audience: Audience): BoardDifference {
  const put: Record<string, WireRow[]> = {};
  const gone: Record<string, string[]> = {};
  for (const table of boardTables(audience)) {
    const old = was.get(table) ?? none;
    const now = is.get(table) ?? none;
    for (const [id, row] of now) {
      if (old.get(id) !== row) (put[table] ??= []).push(encodeRow(table, row, audience));
    }
    for (const id of old.keys()) {
      if (!now.has(id) && leaves(table, id, after)) (gone[table] ??= []).push(id);
    }
  }
  return { put, gone };
}

const none: ReadonlyMap<string, AnyRow> = new Map();
