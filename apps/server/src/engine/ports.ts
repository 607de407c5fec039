/**
 * What the engine needs from the outside and what it gives. The engine itself knows no Nest, no HTTP and no SQL.
 */
import type {
  CommandInputs,
  CommandName,
  Edit,
  Refusal,
  Role,
  Rows,
  Slices,
  StagedFile,
  TakenBack,
} from '@holdfast/domain';
import type { Calendar } from '@holdfast/shop-calendar';

/** Who sends a command: the person of a session, on a device. */
export interface Sender {
  readonly shopId: string;
  readonly personId: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly device: string | null;
  /** The server itself on behalf of nobody yet: a new shop's first command. Never from a request's own words. */
  readonly system?: boolean;
}

/** A command that passed its schema. */
export interface Sent<N extends CommandName = CommandName> {
  readonly name: N;
  readonly input: CommandInputs[N];
  /** The client's key of this command (UUID): sent twice with one key it is carried out once. */
  readonly key: string;
  /** SHA-256 hex over name and canonical body; the same key with another one is refused. */
  readonly fingerprint: string;
  /** The device's clock when it sent, epoch ms; null when it did not say. Its offset corrects `at` of facts. */
  readonly sentAt: number | null;
}

export type Answer =
  | {
      readonly kind: 'accepted';
      readonly seq: number;
      /** The answer's JSON text, byte for byte the same each time the key is sent. */
      readonly body: string;
      readonly replayed: boolean;
    }
  | { readonly kind: 'refused'; readonly refusals: readonly Refusal[]; readonly current: CurrentRow | null }
  /** The key was used before with another body or by another command. */
  | { readonly kind: 'keyUsedOtherwise' };

/** The row as it stands, for a turn that was built on an old version; in its wire form. */
export interface CurrentRow {
  readonly table: string;
  readonly row: Readonly<Record<string, unknown>>;
}

export type RunCommand = <N extends CommandName>(sender: Sender, sent: Sent<N>) => Promise<Answer>;

export type Audience = 'staff' | 'wall';

/** One accepted command as the live channel carries it: JSON text of `ChangeMessage` in the contract. */
export interface LoggedChange {
  readonly seq: number;
  readonly text: string;
}

export interface HeadOfLog {
  readonly epoch: string;
  readonly seq: number;
  /** The shop's own time, epoch ms: the database's clock, or the demo's. */
  readonly now: number;
}

/** The shop's log as feeds, long polls and catch-ups read it. */
export interface LogReader {
  head(shopId: string): Promise<HeadOfLog | null>;
  /**
   * Changes with number > after, in order, at most `limit`. Null when some of them are no longer kept (the reader needs
   * a snapshot) or `after` lies beyond the head.
   */
  changesAfter(shopId: string, after: number, audience: Audience, limit: number): Promise<LoggedChange[] | null>;
}

/** Called after each commit; must not throw. */
export type Wake = (shopId: string, seq: number) => void;

/** What a locked shop shows to a command. */
export interface OpenedCommand {
  readonly head: { readonly seq: number; readonly configSeq: number; readonly now: number };
  readonly stored: { readonly fingerprint: string; readonly body: string; readonly seq: number } | null;
  /** Versions that the own earlier command named by `afterKey` wrote, by `table/id`. */
  readonly versionsAfter: ReadonlyMap<string, number> | null;
  readonly rows: Rows;
  readonly calendar: Calendar;
  readonly takenBack: TakenBack | null;
  /** The file that is to be accepted. */
  readonly staged: StagedFile | null;
}

/** One line of the log with the answer to its key. */
export interface LogEntry {
  readonly seq: number;
  readonly configSeq: number;
  readonly recordedAt: number;
  readonly effectiveAt: number;
  readonly personId: string | null;
  readonly device: string | null;
  readonly command: string;
  readonly key: string;
  readonly sender: string;
  readonly fingerprint: string;
  readonly subjects: unknown;
  readonly facts: unknown;
  /** Wire text of the change for each audience, and the answer's body. */
  readonly staff: string;
  readonly wall: string;
  readonly body: string;
}

/** What one accepted command changes. */
export interface Change {
  readonly edits: readonly Edit[];
  readonly entry: LogEntry;
  /** Personal data were erased: the log keeps no image of a row from before, neither of this change nor of earlier ones. */
  readonly erases: boolean;
}

export interface OpenCall {
  readonly sender: string;
  readonly key: string;
  readonly afterKey: string | null;
  readonly slices: Slices;
}

/** The transaction failed in a way that the next attempt may not: a deadlock, a race that a constraint stopped. */
export class TryAgain {
  constructor(readonly cause: unknown) {}
}

export interface WriteStore {
  /**
   * Runs `work` in one transaction of the shop for all `calls`, which shows each of them the locked shop as it stands
   * before any of them, and commits only by `commit`: all changes, whose rows must be different ones and whose numbers
   * follow each other, or none. `TryAgain`: try the whole of it once more; `busy`: not now; a refusal: the database's
   * last guard spoke; null: no such shop.
   */
  transaction<T extends object>(
    shopId: string,
    calls: readonly OpenCall[],
    work: (opened: readonly OpenedCommand[], commit: (changes: readonly Change[]) => Promise<void>) => Promise<T>,
  ): Promise<T | Refusal | TryAgain | 'busy' | null>;
}
