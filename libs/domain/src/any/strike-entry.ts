/**
 * A wrong entry is struck, by manager or owner with words: it counts nowhere any more and stays readable. What other rows
 * name stays until these are put right: a finding that a line came of, an attempt's road test. Where a vehicle was is not
 * struck, because it was somewhere.
 */
import type { StrikeEntry } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Slices } from '../kernel/slices.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Row, type TableName, tableNames, tables } from '../tables/tables.js';
import { keepCorrection } from '../time/corrections.js';
import { againstClosedMonth } from '../time/months.js';
import { recountLine } from '../time/recount-line.js';
import type { Span } from '../timeline/timeline.js';

type Table = StrikeEntry['table'];
type Entry = Row<Table>;

const slices: { readonly [T in Table]: (id: string) => Slices } = {
  clock: (id) => ({ clocks: [id] }),
  place: (id) => ({ places: [id] }),
  hold: (id) => ({ holds: [id] }),
  attendance: (id) => ({ attendances: [id], times: [] }),
  finding: (id) => ({ findings: [id] }),
  attempt: (id) => ({ attempts: [id] }),
  odometerReading: (id) => ({ readings: [id] }),
  contactEntry: (id) => ({ contactEntries: [id] }),
  photo: (id) => ({ photos: [id] }),
  caution: (id) => ({ cautions: [id] }),
};

/** Of these the account of time is made: they stand while their month is closed. */
const ofTheAccount: readonly Table[] = ['clock', 'hold', 'attendance'];

export const strikeEntry: CommandRule<'strikeEntry'> = {
  needs: ({ table, id }) => slices[table](id),
  decide(rows, input, at) {
    const { table, id, version, words } = input;
    const before: Entry | undefined = live(rows, table, id);
    if (!before) return notThere(table, id);
    if (version !== undefined && version !== before.version) {
      return refuse('row.stale', { table, id, version, current: before.version });
    }
    const refused = againstStriking(rows, at, table, before);
    if (refused) return refused;
    rows.change(table, id, { void: true });
    if (table === 'clock') recountLine(rows, (before as Row<'clock'>).lineId);
    if (table === 'hold') strikeNames(rows, id);
    keepCorrection(rows, at, { kind: 'struck', table, before, after: null, words });
    const { jobId, vehicleId, personId } = before as { jobId?: string | null; vehicleId?: string; personId?: string };
    return { facts: { table, id, jobId: jobId ?? null, vehicleId: vehicleId ?? null, personId: personId ?? null } };
  },
};

function againstStriking(rows: Rows, at: Circumstances, table: Table, entry: Entry): Refused | null {
  if (table === 'place') return refuse('entry.placeStays', {}, { table, id: entry.id });
  const closed = ofTheAccount.includes(table) ? againstClosedMonth(rows, at, [entry as unknown as Span]) : null;
  if (closed) return closed;
  const naming = namedBy(rows, table, entry.id);
  return naming && refuse('entry.named', { table, by: naming.table }, naming);
}

/** The first row that counts and names the entry, but for what goes with it: what a hold holds. */
function namedBy(rows: Rows, table: Table, id: string): { readonly table: TableName; readonly id: string } | null {
  for (const other of tableNames) {
    if (other === 'holdLine' || other === 'holdPart') continue;
    const columns = Object.entries(tables[other].columns).filter(([, { ref }]) => ref === table);
    if (columns.length === 0) continue;
    const found = rows.list(other).find((row) => {
      const values = row as unknown as Readonly<Record<string, unknown>>;
      return columns.some(([name]) => values[name] === id);
    });
    if (found) return { table: other, id: found.id };
  }
  return null;
}

function strikeNames(rows: Rows, holdId: string): void {
  for (const table of ['holdLine', 'holdPart'] as const) {
    for (const { id } of rows.list(table, (one) => one.holdId === holdId)) rows.change(table, id, { void: true });
  }
}
