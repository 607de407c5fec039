/**
 * What the engine needs from the outside and what it gives. The engine itself knows no Nest, no HTTP and no SQL.
 */
import type { CommandInputs, CommandName, Refusal, Role } from '@holdfast/domain';

/** Who sends a command: the person of a session, on a device. */
export interface Sender {
  readonly shopId: string;
  readonly personId: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly device: string | null;
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

