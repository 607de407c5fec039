/**
 * A shop in memory that is worked by the same rules as a real one: role, decision, what follows from it, the numbered
 * change with its board difference. The engine does this for one command on a database; here thousands are carried out
 * one after the other, on the time that the caller says, and nothing is stored.
 */
import { differences, jobIsOnBoard, keptAfterEndMs } from '@holdfast/board';
import { commands, may, mayDo } from '@holdfast/contract';
import {
  type By,
  type Circumstances,
  type CommandInputs,
  type CommandName,
  type Edit,
  type Outcome,
  hoursOfShop,
  Refused,
  type Role,
  type Row,
  Rows,
  rules,
  settle,
  type TableName,
  tableNames,
  type TakenBack,
} from '@holdfast/domain';
import { type Calendar, calendarOf } from '@holdfast/shop-calendar';
import { changeMessages, subjectsOf } from '../engine/change-message.js';
import { effectiveTime } from '../engine/effective-time.js';
import { shopTables, touchesShop } from '../engine/shop-tables.js';
import type { Chance } from './chance.js';

export interface Sender {
  readonly personId: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** One accepted command, as the log keeps it. */
export interface LedgerChange {
  readonly seq: number;
  readonly configSeq: number;
  readonly recordedAt: number;
  readonly effectiveAt: number;
  readonly personId: string | null;
  readonly command: CommandName;
  readonly subjects: unknown;
  readonly facts: unknown;
  readonly edits: readonly Edit[];
  /** The wire texts; null for what is older than the changes are kept with their rows. */
  readonly texts: { readonly staff: string; readonly wall: string } | null;
}

export type AllRows = { readonly [T in TableName]?: readonly Row<T>[] };

export interface LedgerParts {
  readonly chance: Chance;
  readonly shopId: string;
  /** Changes from this instant on (epoch ms) get their board differences. */
  readonly textsFrom: number;
}

/** The invention went wrong: the shop would have refused this. */
export class DemoRefused extends Error {
  override readonly name = 'DemoRefused';
  constructor(command: CommandName, now: number, refused: Refused) {
    super(
      `${command} at ${new Date(now).toISOString()}: ${refused.refusals.map((one) => `${one.code} ${JSON.stringify(one.facts)}`).join('; ')}`,
    );
  }
}

const uuids = /[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}/g;
/** Tables that no vehicle carries away with it when it has left; presence is a person's. */
const staying: readonly TableName[] = [...shopTables, 'counter', 'attendance'];

export class Ledger {
  readonly changes: LedgerChange[] = [];
  /** What a command can see: the shop and every vehicle that is on the board, so that a decision costs little. */
  private rows = new Rows();
  private readonly elsewhere = new Map<string, Partial<Record<TableName, Row<TableName>[]>>>();
  /** The vehicle that a row belongs to, by the row's id. */
  private readonly vehicleOf = new Map<string, string>();
  /** Customers with several vehicles: they stay at hand, with their contacts. */
  private readonly fleets = new Set<string>();
  private shopCalendar: Calendar = calendarOf({ zone: 'UTC', hours: [], exceptions: [] });
  private lastAt = 0;
  private configSeq = 0;

  constructor(private readonly parts: LedgerParts) {}

  get calendar(): Calendar {
    return this.shopCalendar;
  }

  /** The rows that are at hand: the shop's own and those of the vehicles on the board. */
  get atHand(): Rows {
    return this.rows;
  }

  /** Carries out a command at `now` (epoch ms), or a millisecond after the last one. What is refused is thrown. */
  send<N extends CommandName>(
    by: Sender | null,
    name: N,
    input: CommandInputs[N],
    now: number,
  ): Readonly<Record<string, string>> {
    if (by && !may(by.roles, mayDo[name])) throw new Error(`${by.name} may not ${name}`);
    const at = this.circumstances(by, name, input, Math.max(now, this.lastAt + 1));
    this.fetch(input);
    const before = this.rows;
    const after = before.fork();
    const decide = rules[name].decide as (rows: Rows, input: CommandInputs[N], at: Circumstances) => Outcome | Refused;
    const outcome = decide(after, input, at);
    if (outcome instanceof Refused) throw new DemoRefused(name, at.now, outcome);
    settle(after, at, { whole: rules[name].needs(input).tables === undefined });
    this.keep(name, at, outcome, before, after);
    return outcome.created ?? {};
  }

  private circumstances<N extends CommandName>(
    by: Sender | null,
    name: N,
    input: CommandInputs[N],
    now: number,
  ): Circumstances {
    const time = effectiveTime({ name, input, key: '', fingerprint: '', sentAt: null }, commands[name].class, now);
    if (time instanceof Refused) throw new DemoRefused(name, now, time);
    const sender: By = by ?? { personId: null, name: '', roles: [] };
    const { chance, shopId } = this.parts;
    const isFirst = this.changes.length === 0;
    let asked = 0;
    const takenBack = name === 'takeBack' ? this.changeToTakeBack((input as CommandInputs['takeBack']).seq) : undefined;
    return {
      now,
      ...time,
      by: sender,
      device: null,
      // The first id that a new shop asks for is its own.
      newId: () => (isFirst && asked++ === 0 ? shopId : chance.id(now)),
      calendar: this.shopCalendar,
      ...(takenBack ? { takenBack } : {}),
    };
  }

  private changeToTakeBack(seq: number): TakenBack | undefined {
    return this.changes[seq - 1];
  }

  private keep(command: CommandName, at: Circumstances, outcome: Outcome, before: Rows, after: Rows): void {
    const edits = after.changes();
    const seq = this.changes.length + 1;
    const subjects = subjectsOf(edits);
    const sent = { name: command, input: {}, key: '', fingerprint: '', sentAt: null } as Parameters<
      typeof changeMessages
    >[0]['sent'];
    const texts =
      at.now < this.parts.textsFrom
        ? null
        : changeMessages({ seq, sent, at, subjects, differences: differences(before, after, edits, at.now) });
    this.rows = after;
    this.lastAt = at.now;
    if (touchesShop(edits)) {
      this.configSeq = seq;
      this.readCalendar();
    }
    this.noteVehicles(edits);
    const { now: recordedAt, effectiveAt } = at;
    const { personId } = at.by;
    this.changes.push({
      seq,
      configSeq: this.configSeq,
      recordedAt,
      effectiveAt,
      personId,
      command,
      subjects,
      facts: outcome.facts,
      edits,
      texts,
    });
  }

  private readCalendar(): void {
    this.shopCalendar = calendarOf(hoursOfShop(this.rows));
  }

  /** Rows that name no vehicle themselves belong to that of their job, or to the first of their command. */
  private noteVehicles(edits: readonly Edit[]): void {
    let first: string | undefined;
    const later: string[] = [];
    for (const { table, before, after } of edits) {
      if (staying.includes(table) || this.isOfFleet(table, after)) continue;
      const row = after as { id: string; vehicleId?: string | null; jobId?: string | null };
      const vehicle = table === 'vehicle' ? row.id : (row.vehicleId ?? this.vehicleOf.get(row.jobId ?? ''));
      if (vehicle !== undefined) {
        first ??= vehicle;
        this.vehicleOf.set(row.id, vehicle);
      } else if (before === null) later.push(row.id);
    }
    for (const id of later) if (first !== undefined) this.vehicleOf.set(id, first);
  }

  private isOfFleet(table: TableName, row: Row<TableName>): boolean {
    if (table === 'customer' && (row as Row<'customer'>).fleet !== null) this.fleets.add(row.id);
    return this.fleets.has(table === 'contact' ? (row as Row<'contact'>).customerId : row.id);
  }

  /** Brings back the vehicles whose rows the input names. */
  private fetch(input: object): void {
    const named = JSON.stringify(input).match(uuids) ?? [];
    const vehicles = new Set(named.map((id) => this.vehicleOf.get(id) ?? id));
    const back = [...vehicles].filter((id) => this.elsewhere.has(id));
    if (back.length === 0) return;
    const content = this.rows.content() as Partial<Record<TableName, Row<TableName>[]>>;
    for (const id of back) {
      for (const [table, rows] of Object.entries(this.elsewhere.get(id) ?? {}) as [TableName, Row<TableName>[]][]) {
        content[table] = [...(content[table] ?? []), ...rows];
      }
      this.elsewhere.delete(id);
    }
    this.rows = Rows.of(content as AllRows);
  }

  /**
   * Takes the vehicles that have left the board out of sight, until a command names them again. Of days whose changes
   * get no board differences nobody asks what the board still showed: those vehicles go as soon as their visit ended.
   */
  tidy(now: number): void {
    const isDrawn = now >= this.parts.textsFrom - keptAfterEndMs;
    const stays = (job: Row<'job'>) => (isDrawn ? jobIsOnBoard(job, now) : job.endedAt === null);
    const here = new Set(this.rows.list('job', stays).map((job) => job.vehicleId));
    const content = this.rows.content();
    const kept: Partial<Record<TableName, Row<TableName>[]>> = {};
    for (const table of tableNames) {
      const rows: readonly Row<TableName>[] = content[table] ?? [];
      if (staying.includes(table)) kept[table] = [...rows];
      else for (const row of rows) this.put(table, row, here, kept);
    }
    this.rows = Rows.of(kept as AllRows);
  }

  private put(
    table: TableName,
    row: Row<TableName>,
    here: ReadonlySet<string>,
    kept: Partial<Record<TableName, Row<TableName>[]>>,
  ): void {
    const vehicle = this.vehicleOf.get(row.id);
    if (vehicle === undefined || here.has(vehicle)) {
      (kept[table] ??= []).push(row);
      return;
    }
    let away = this.elsewhere.get(vehicle);
    if (!away) this.elsewhere.set(vehicle, (away = {}));
    (away[table] ??= []).push(row);
  }

  /** Every row of the shop as it now is. */
  all(): AllRows {
    const all: Partial<Record<TableName, Row<TableName>[]>> = {};
    for (const content of [
      this.rows.content() as Partial<Record<TableName, Row<TableName>[]>>,
      ...this.elsewhere.values(),
    ]) {
      for (const [table, rows] of Object.entries(content) as [TableName, Row<TableName>[]][]) {
        const list = (all[table] ??= []);
        for (const row of rows) list.push(row);
      }
    }
    return all as AllRows;
  }
}
