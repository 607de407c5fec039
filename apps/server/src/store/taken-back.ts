/** The change that a take back undoes: its images, and the rows it wrote as they stand now with all that hangs on them. */
import type { Edit, Row, Slices, TableName } from '@holdfast/domain';
import type pg from 'pg';
import { readRow, rowOf, storedTables } from './columns.js';

type Image = readonly [table: TableName, id: string, before: Row<TableName> | null, after: Row<TableName>];

export interface TakenBackRows {
  readonly seq: number;
  readonly command: string;
  readonly personId: string | null;
  readonly recordedAt: number;
  readonly edits: readonly Edit[];
  /** Rows of the change as they are now, by table. */
  readonly content: { readonly [T in TableName]?: readonly Row<T>[] };
}

interface ChangeRow {
  readonly command: string;
  readonly person_id: string | null;
  readonly recorded_at: number;
  readonly rows: readonly Image[];
}

/** Null when the shop has no such change, or its images are no longer kept. */
export async function readTakenBack(client: pg.ClientBase, shopId: string, seq: number): Promise<TakenBackRows | null> {
  const { rows } = await client.query<ChangeRow>({
    name: 'read-change',
    text: `SELECT c."command", c."person_id", c."recorded_at", r."rows" FROM "change" c
JOIN "change_rows" r ON r."shop_id" = c."shop_id" AND r."seq" = c."seq" WHERE c."shop_id" = $1 AND c."seq" = $2`,
    values: [shopId, seq],
  });
  const change = rows[0];
  if (!change) return null;
  const byTable = new Map<TableName, string[]>();
  for (const [table, id] of change.rows) byTable.set(table, [...(byTable.get(table) ?? []), id]);
  const content: Partial<Record<TableName, unknown[]>> = {};
  for (const [name, ids] of byTable) {
    const table = storedTables[name];
    const now = await client.query<{ row: unknown[] }>(
      `SELECT ${readRow(table, 't')} AS row FROM ${table.sql} t WHERE t."shop_id" = $1 AND t."id" = ANY($2)`,
      [shopId, ids],
    );
    content[name] = now.rows.map(({ row }) => rowOf(table, row));
  }
  return {
    seq,
    command: change.command,
    personId: change.person_id,
    recordedAt: change.recorded_at,
    edits: change.rows.map(([table, , before, after]) => ({ table, before, after })),
    content: content as TakenBackRows['content'],
  };
}

/** What must be in the bag to undo a change: the whole visits it touched, and the lanes of its stays and clocks. */
export function slicesAround({ edits }: TakenBackRows): Slices {
  const ids = {
    jobs: new Set<string>(),
    vehicles: new Set<string>(),
    bays: new Set<string>(),
    people: new Set<string>(),
    customers: new Set<string>(),
  };
  const times = new Set<number>();
  for (const { table, after } of edits) {
    const row = after as {
      id: string;
      jobId?: string | null;
      vehicleId?: string | null;
      bayId?: string | null;
      personId?: string | null;
      fromAt?: number | null;
      toAt?: number | null;
    };
    for (const instant of [row.fromAt, row.toAt]) if (typeof instant === 'number') times.add(instant);
    if (table === 'job') ids.jobs.add(row.id);
    if (table === 'vehicle') ids.vehicles.add(row.id);
    if (table === 'customer') ids.customers.add(row.id);
    if (row.jobId) ids.jobs.add(row.jobId);
    if (row.vehicleId) ids.vehicles.add(row.vehicleId);
    if (row.bayId) ids.bays.add(row.bayId);
    if (row.personId) ids.people.add(row.personId);
  }
  return { ...Object.fromEntries(Object.entries(ids).map(([name, set]) => [name, [...set]])), times: [...times] };
}
