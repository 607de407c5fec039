/**
 * Rule 12: a turn rests on the version of the row it acts on, or on one's own earlier command that last changed it
 * (an outbox sends a chain whose versions it cannot know yet). Other rows of the job do not matter.
 */
import { commands } from '@holdfast/contract';
import { Refused, refuse, type TableName } from '@holdfast/domain';
import type { OpenedCommand, Sent } from './ports.js';

export function checkVersion(opened: OpenedCommand, sent: Sent): Refused | null {
  const { row } = commands[sent.name];
  if (!row) return null;
  const input = sent.input as unknown as Readonly<Record<string, unknown>>;
  const id = String(input[row.field]);
  const found = findRow(opened, row.table, id);
  if (!found) return refuse('row.notFound', { table: row.table, id });
  const stale = (version: number) => refuse('row.stale', { table: row.table, id, version, current: found.version });
  if (typeof input['version'] === 'number') return input['version'] === found.version ? null : stale(input['version']);
  if (typeof input['afterKey'] !== 'string') return refuse('row.versionMissing', { table: row.table });
  const written = opened.versionsAfter?.get(`${row.table}/${id}`) ?? 0;
  return written === found.version ? null : stale(written);
}

function findRow(opened: OpenedCommand, table: TableName, id: string): { readonly version: number } | undefined {
  const row = opened.rows.find(table, id);
  return row && !row.void ? row : undefined;
}
