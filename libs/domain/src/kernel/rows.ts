/**
 * The state that a decision reads and changes: a bag of rows keyed by table and id, not aggregates. A bag holds what the
 * command's load slices brought; what is not in it does not exist for the decision. `fork` gives a copy to change, the
 * original stays as it was, so a refused decision leaves nothing.
 */
import type { Row, TableName } from '../tables/tables.js';

type Bags = { [T in TableName]?: Map<string, Row<T>> };

/** A new row as a decision writes it: its version and void mark are the bag's business. */
export type NewRow<T extends TableName> = Omit<Row<T>, 'version' | 'void'>;

export interface Edit {
  readonly table: TableName;
  readonly before: Row<TableName> | null;
  readonly after: Row<TableName>;
}

export class Rows {
  private readonly bags: Bags = {};
  /** Tables whose map is this bag's own; the others are shared with the bag it came from until they are written. */
  private readonly own = new Set<TableName>();
  private readonly edits = new Map<string, { table: TableName; before: Row<TableName> | null; id: string }>();

  static of(content: { readonly [T in TableName]?: readonly Row<T>[] }): Rows {
    return new Rows().with(content);
  }

  /** A bag with these rows beside the ones it has; of two copies of a row the later one counts. */
  with(content: { readonly [T in TableName]?: readonly Row<T>[] }): Rows {
    const more = this.fork();
    for (const name of Object.keys(content) as TableName[]) {
      const rows = content[name] ?? [];
      if (rows.length === 0) continue;
      const bag = more.written(name) as Map<string, unknown>;
      for (const row of rows) bag.set(row.id, row);
    }
    return more;
  }

  private bag<T extends TableName>(table: T): ReadonlyMap<string, Row<T>> {
    return (this.bags as { [K in T]?: Map<string, Row<K>> })[table] ?? none;
  }

  private written<T extends TableName>(table: T): Map<string, Row<T>> {
    const bags = this.bags as { [K in T]?: Map<string, Row<K>> };
    if (!this.own.has(table)) {
      bags[table] = new Map(bags[table]);
      this.own.add(table);
    }
    return bags[table] ?? new Map<string, Row<T>>();
  }

  /** A copy that starts with no edits of its own; it costs nothing for the tables that are not written. */
  fork(): Rows {
    const copy = new Rows();
    Object.assign(copy.bags, this.bags);
    this.own.clear();
    return copy;
  }

  /** The row, also when it is void; undefined when the bag does not hold it. */
  find<T extends TableName>(table: T, id: string | null | undefined): Row<T> | undefined {
    return id === null || id === undefined ? undefined : this.bag(table).get(id);
  }

  /** The row, which a rule before made sure of. A missing one is a bug, not a refusal. */
  get<T extends TableName>(table: T, id: string): Row<T> {
    const row = this.bag(table).get(id);
    if (!row) throw new Error(`no ${table} ${id} in the bag`);
    return row;
  }

  /** All rows of a table that are not void. */
  list<T extends TableName>(table: T, where?: (row: Row<T>) => boolean): Row<T>[] {
    const found: Row<T>[] = [];
    for (const row of this.bag(table).values()) {
      if (!row.void && (!where || where(row))) found.push(row);
    }
    return found;
  }

  /** Void ones too. */
  listAll<T extends TableName>(table: T): Row<T>[] {
    return [...this.bag(table).values()];
  }

  add<T extends TableName>(table: T, row: NewRow<T>): Row<T> {
    const whole = { ...row, version: 1, void: false } as Row<T>;
    if (this.bag(table).has(whole.id)) throw new Error(`${table} ${whole.id} is there already`);
    this.note(table, whole.id, null);
    this.written(table).set(whole.id, whole);
    return whole;
  }

  change<T extends TableName>(table: T, id: string, change: Partial<Omit<Row<T>, 'id' | 'version'>>): Row<T> {
    const before = this.get(table, id);
    const noted = this.note(table, id, before);
    const original = noted.before as Row<T> | null;
    const version = original === null ? 1 : (original as { version: number }).version + 1;
    const after = { ...before, ...change, version } as Row<T>;
    this.written(table).set(id, after);
    return after;
  }

  private note(table: TableName, id: string, before: Row<TableName> | null) {
    const key = `${table}/${id}`;
    let noted = this.edits.get(key);
    if (!noted) this.edits.set(key, (noted = { table, before, id }));
    return noted;
  }

  /** What was added and changed since the fork, in the order it was first touched; each row once. */
  changes(): Edit[] {
    return [...this.edits.values()].map(({ table, before, id }) => ({ table, before, after: this.get(table, id) }));
  }

  content(): { readonly [T in TableName]?: readonly Row<T>[] } {
    return Object.fromEntries(
      (Object.keys(this.bags) as TableName[]).map((name) => [name, [...this.bag(name).values()]]),
    );
  }
}

const none: ReadonlyMap<string, never> = new Map<string, never>();
