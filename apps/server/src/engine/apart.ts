/**
 * When may several commands share a transaction? When each of them decides on exactly the rows that it would find after
 * the commit of those before it: so no command shares one with another whose writes could have changed what it loads.
 *
 * The load slices walk from the ids that a command names along columns that hold ids (store/slices.ts). So a row that
 * another command wrote can only come among the loaded rows, leave them or differ there when it holds an id that this
 * command named or that one of its rows holds. `written` and `reached` gather those two; where they meet, the command
 * waits for the next transaction. Columns that point to the shop's own tables (who recorded it, which bay) are not
 * walked, but for those that slices start from: the bay of a spot use, the person of a clock or of presence.
 */
import {
  type Column,
  type Edit,
  type Row,
  type Rows,
  type Slices,
  type TableName,
  tableNames,
  tables,
} from '@holdfast/domain';
import type { OpenCall } from './ports.js';
import { shopTables, touchesShop } from './shop-tables.js';

const startsFrom: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  spotUse: ['bayId'],
  clock: ['personId'],
  attendance: ['personId'],
};
const ofShop = new Set<string>(shopTables);
const ofPartLine = new Set<TableName>(['dueIn', 'arrival', 'partsOrder']);

/** The columns of each table that a load walks along. */
const walked = Object.fromEntries(
  tableNames.map((name) => [
    name,
    Object.entries<Column<unknown>>(tables[name].columns)
      .filter(([, { kind, ref }]) => kind === 'id' && (ref === null || !ofShop.has(ref)))
      .map(([column]) => column),
  ]),
) as unknown as Record<TableName, readonly string[]>;

const loadedTables = tableNames.filter((name) => !ofShop.has(name) && name !== 'counter');

/** Hot work looks for open fuel anywhere in the shop, and open fuel for hot work. */
const fireRisk = 'fire risk';

const plateName = (plateKey: string) => `plate ${plateKey}`;

/** Everything that a command names before anything is read: ids, a plate, the counter, its key and the one it follows. */
export function namesOf({ sender, key, afterKey, slices }: OpenCall): ReadonlySet<string> {
  const names = new Set([`key ${sender} ${key}`]);
  if (afterKey !== null) names.add(`key ${sender} ${afterKey}`);
  if (slices.plateKey !== undefined) names.add(plateName(slices.plateKey));
  if (slices.counter) names.add('counter');
  if (slices.hotWork === true) names.add(fireRisk);
  for (const ids of Object.values(slices)) if (Array.isArray(ids)) for (const id of ids) names.add(String(id));
  return names;
}

/**
 * A take back reads an earlier change first, and what a file of existing data writes is in no bag; a card's report and a hand-back undone lead to bays and people that nobody
 * named, as does what is put right long after; and what hangs on a part line leads past it where the lines themselves are not loaded.
 */
export function standsAlone({ change, importId, reports, baysOfJobs, times, tables: only, ...more }: Slices): boolean {
  // What goes over all rows of a record finds them by more than the walk does.
  if (more.allOfVehicles !== undefined || more.allOfCustomers !== undefined) return true;
  const past = only !== undefined && !only.includes('partLine') && only.some((table) => ofPartLine.has(table));
  return (
    change !== undefined ||
    importId !== undefined ||
    reports !== undefined ||
    baysOfJobs === true ||
    times !== undefined ||
    past
  );
}

/** What the commands of a transaction wrote so far. */
export class Written {
  private readonly ids = new Set<string>();
  private shop = false;

  add(edits: readonly Edit[]): void {
    if (touchesShop(edits)) this.shop = true;
    for (const { table, before, after } of edits) {
      this.addRow(table, after);
      if (before) this.addRow(table, before);
    }
  }

  private addRow(table: TableName, row: Row<TableName>): void {
    const values = row as unknown as Readonly<Record<string, string | null>>;
    for (const column of [...walked[table], ...(startsFrom[table] ?? [])]) {
      const id = values[column];
      if (id) this.ids.add(id);
    }
    if (table === 'caution') this.ids.add(fireRisk);
    if (table === 'vehicle' && values['plateKey']) this.ids.add(plateName(values['plateKey']));
  }

  /** Whether the rows that a command loaded are still all that it would load now, as they were. */
  leaves(names: ReadonlySet<string>, rows: Rows): boolean {
    if (this.shop) return false;
    if (this.ids.size === 0) return true;
    for (const name of names) if (this.ids.has(name)) return false;
    return loadedTables.every((table) => rows.listAll(table).every((row) => this.misses(table, row)));
  }

  private misses(table: TableName, row: Row<TableName>): boolean {
    const values = row as unknown as Readonly<Record<string, string | null>>;
    return walked[table].every((column) => {
      const id = values[column];
      return !id || !this.ids.has(id);
    });
  }
}
