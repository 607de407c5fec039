/**
 * One's own change of the last ten minutes is undone: what it wrote gets its old values, what it made is void. Only if
 * nothing was built on it since: every row is at the version it wrote, nothing made later rests on what goes, and an
 * interval that runs again clashes with nothing.
 */
import type { Circumstances, TakenBack } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Edit, Rows } from '../kernel/rows.js';
import type { CommandName } from '../inputs.js';
import { type Row, type TableName, tableNames, tables } from '../tables/tables.js';
import { laneOf, type LaneTable, laneTables } from '../timeline/lanes.js';
import { overlap, type Span } from '../timeline/timeline.js';
import { againstClosedMonth } from '../time/months.js';

const minutesToTakeBack = 10;

/** A hand-back has its own undo, people and the shop are changed back by hand. */
const withOwnWayBack: readonly CommandName[] = [
  ...(['takeBack', 'handBack', 'releaseUnfinished', 'undoHandBack'] as const),
  ...(['addPerson', 'changePerson', 'setUpShop', 'acceptImport'] as const),
  ...(['erasePersonalData'] as const),
  ...(['closeMonth', 'reopenMonth'] as const),
];

export const takeBack: CommandRule<'takeBack'> = {
  needs: ({ seq }) => ({ change: seq }),
  decide(rows, { seq }, at) {
    const change = at.takenBack;
    if (change?.seq !== seq) return refuse('row.notFound', { table: 'change', id: String(seq) });
    // A number that was given out stays given out: a job number may be missing, never twice there.
    const edits = change.edits.filter((edit) => edit.table !== 'counter');
    const refused = mayNotTakeBack(change, at) ?? builtOn(rows, change, edits) ?? inClosedMonth(rows, at, edits);
    if (refused) return refused;
    for (const edit of edits) restore(rows, edit);
    return clashing(rows, edits) ?? { facts: { seq, command: change.command } };
  },
};

function mayNotTakeBack(change: TakenBack, at: Circumstances): Refused | null {
  const { seq, command } = change;
  if (change.personId === null || change.personId !== at.by.personId) return refuse('change.notYours', { seq });
  if ((withOwnWayBack as readonly string[]).includes(command)) return refuse('change.hasOwnWayBack', { command });
  return at.now - change.recordedAt > minutesToTakeBack * 60_000
    ? refuse('change.tooOld', { seq, minutes: minutesToTakeBack })
    : null;
}

function builtOn(rows: Rows, change: TakenBack, edits: readonly Edit[]): Refused | null {
  for (const { table, after } of edits) {
    if (rows.find(table, after.id)?.version !== after.version) {
      return refuse('change.builtOn', { table, id: after.id }, { table, id: after.id });
    }
  }
  const left = leftSince(rows, change, edits);
  if (left) return refuse('change.builtOn', { table: 'job', id: left.id }, { table: 'job', id: left.id });
  const gone = new Set(edits.filter((edit) => edit.before === null).map(({ table, after }) => `${table}/${after.id}`));
  const touched = new Set(edits.map(({ table, after }) => `${table}/${after.id}`));
  for (const table of tableNames) {
    for (const row of rows.list(table)) {
      if (!touched.has(`${table}/${row.id}`) && restsOn(table, row, gone)) {
        return refuse('change.builtOn', { table, id: row.id }, { table, id: row.id });
      }
    }
  }
  return null;
}

/** A month that was closed since: its times stand, however they came about. */
function inClosedMonth(rows: Rows, at: Circumstances, edits: readonly Edit[]): Refused | null {
  const spans = edits
    .filter(({ table }) => table === 'hold' || isLaneTable(table))
    .flatMap(({ before, after }) => [before, after])
    .filter((row) => row !== null && !row.void)
    .map((row) => row as unknown as Span);
  return againstClosedMonth(rows, at, spans);
}

/** A visit that has ended since: its sheet tells of what the change wrote. */
function leftSince(rows: Rows, { recordedAt }: TakenBack, edits: readonly Edit[]): Row<'job'> | undefined {
  const jobIds = new Set(edits.flatMap(({ after }) => ('jobId' in after && after.jobId !== null ? [after.jobId] : [])));
  return rows.list('job', (job) => jobIds.has(job.id) && job.endedAt !== null && job.endedAt > recordedAt)[0];
}

/** Whether a column of the row names one of these rows, each as `table/id`. */
function restsOn(table: TableName, row: Row<TableName>, gone: ReadonlySet<string>): boolean {
  const values = row as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(tables[table].columns).some(([name, { ref }]) => {
    const value = values[name];
    return ref !== null && typeof value === 'string' && gone.has(`${ref}/${value}`);
  });
}

function restore(rows: Rows, { table, before, after }: Edit): void {
  if (before === null) {
    rows.change(table, after.id, { void: true });
    return;
  }
  const { id: _id, version: _version, ...old } = before;
  rows.change(table, after.id, old);
}

function isLaneTable(table: TableName): table is LaneTable {
  return (laneTables as readonly TableName[]).includes(table);
}

/** Intervals that run again must not have been overtaken: rule 1. */
function clashing(rows: Rows, edits: readonly Edit[]): Refused | null {
  for (const { table, after } of edits) {
    if (!isLaneTable(table)) continue;
    const again = rows.get(table, after.id);
    if (again.void) continue;
    const other = laneOf(rows, table, again.id).find((one) => one.id !== again.id && overlap(one, again));
    if (other) return refuse('change.clashes', { table }, { table, id: other.id });
  }
  return null;
}
