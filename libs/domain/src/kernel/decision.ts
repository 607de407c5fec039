/**
 * The shape of every decision: pure, from the rows it was given, the command's input and the circumstances, to changed
 * rows or a refusal. `decide` changes the forked bag it gets; a returned `Refused` throws the fork away.
 */
import type { Calendar } from '@holdfast/shop-calendar';
import type { Role } from '../tables/words.js';
import type { Facts, Refused } from './refusal.js';
import type { Edit, NewRow, Rows } from './rows.js';

export interface By {
  readonly personId: string | null;
  readonly name: string;
  readonly roles: readonly Role[];
}

export interface Circumstances {
  /** The database's clock read after the shop's lock, epoch ms; the time a row is recorded at. */
  readonly now: number;
  /**
   * When it happened, epoch ms. For facts and turns from an outbox the device's corrected time, no earlier than the end
   * of the previous interval of the same person or vehicle and no later than `now`; for claims `now`.
   */
  readonly effectiveAt: number;
  readonly by: By;
  readonly device: string | null;
  /** By how much the device's clock was off, ms, as measured on this request; 0 when it said nothing. */
  readonly skewMs: number;
  /** The next id, UUIDv7; given from outside so that a decision stays pure. */
  readonly newId: () => string;
  readonly calendar: Calendar;
  /** Only for take back: the change to undo, with each row before and after it. */
  readonly takenBack?: TakenBack;
  /** Only for accepting a file. */
  readonly staged?: StagedFile;
}

/**
 * A file that is to be accepted, under the shop's lock. The store has laid its good rows down in the same transaction, but
 * for `onBoard`: they are there with the change that accepts them, and gone with a refusal.
 */
export interface StagedFile {
  readonly importId: string;
  /** Good rows that what was recorded since they were looked at stands against. */
  readonly overtaken: number;
  /** Its follow-ups of vehicles that a board shows: the decision makes them, so that the change tells of them. */
  readonly onBoard: readonly Omit<NewRow<'followUp'>, 'recordedAt' | 'effectiveAt' | 'byId' | 'device'>[];
}

export interface TakenBack {
  readonly seq: number;
  readonly command: string;
  readonly personId: string | null;
  readonly recordedAt: number;
  readonly edits: readonly Edit[];
}

export interface Outcome {
  /** Facts for the sentence of the log: ids, numbers and words from closed lists; no names, no free text. */
  readonly facts: Facts;
  /** Ids of what was made, by table, for the answer. */
  readonly created?: Readonly<Record<string, string>>;
}

export type Decide<I> = (rows: Rows, input: I, at: Circumstances) => Outcome | Refused;

/** Columns of `recorded` for a row that this command writes. */
export function recordedBy(at: Circumstances) {
  return { recordedAt: at.now, effectiveAt: at.effectiveAt, byId: at.by.personId, device: at.device } as const;
}
