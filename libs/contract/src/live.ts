/**
 * The live protocol. A client takes a snapshot (`GET /api/board`), then says on the socket (path `/live`) what it has:
 * `resume`. It is answered by the changes after that, each once and in order of their numbers, or by `snapshot-needed`
 * or `reload-needed`. The same path serves start, reconnect and running. Sockets carry no commands.
 */
import { z } from 'zod';

export const livePath = '/live';
/** Every so many milliseconds a quiet shop says that it is still there. */
export const beatEveryMs = 5_000;

/** In: what the client has. `epoch` names the log that `after` counts in; after a restore it is another one. */
export const resume = z.strictObject({
  epoch: z.uuid(),
  after: z.int().min(0),
  contract: z.int().min(0),
});
export type Resume = z.infer<typeof resume>;

/** Rows of one table as they stand after a change, in their wire form: instants in ISO 8601, amounts as strings. */
export type WireRow = Readonly<Record<string, unknown>> & { readonly id: string };
export type RowsByTable = Readonly<Record<string, readonly WireRow[]>>;

/** Out, `change`: one accepted command. Applies to a board at `seq - 1` and gives the board at `seq`. */
export interface ChangeMessage {
  readonly seq: number;
  /** When it was recorded, ISO 8601. */
  readonly at: string;
  readonly command: string;
  /** Id of the person who sent it; null for the server itself, and always on the wall. */
  readonly by: string | null;
  /** Ids of what it was about, as hints for reads that are not on the board. */
  readonly touched: readonly string[];
  /** Rows that came onto the board or changed on it. */
  readonly put: RowsByTable;
  /** Ids of rows that left the board. */
  readonly gone: Readonly<Record<string, readonly string[]>>;
}

/** Out, `beat`: the head of the log and the shop's own time (ISO 8601; a demo's clock may run apart from the real one). */
export interface BeatMessage {
  readonly seq: number;
  readonly now: string;
}

export const liveEvents = {
  resume: 'resume',
  change: 'change',
  beat: 'beat',
  /** The changes asked for are no longer kept, or belong to another log: take a new snapshot. */
  snapshotNeeded: 'snapshot-needed',
  /** The contract has moved on: load the client anew. */
  reloadNeeded: 'reload-needed',
} as const;

/** `GET /api/board`: everything the live screens draw from, at one number of the log. */
export interface BoardAnswer {
  readonly epoch: string;
  readonly seq: number;
  readonly now: string;
  readonly contract: number;
  readonly rows: RowsByTable;
}

/** `GET /api/changes?after=N`: the same changes without a socket. `more` says that there are further ones already. */
export interface ChangesAnswer {
  readonly epoch: string;
  readonly seq: number;
  readonly now: string;
  readonly changes: readonly ChangeMessage[];
  readonly more: boolean;
}
