/**
 * One line of the command table: what a command is on the wire, of which class, on which row's version it rests, whether
 * it works without the server, and from which screens it is reached. Who may send it stands in ../roles.
 *
 * fact: a report of what happened, always kept. turn: moves the state of one row and needs that row's version (or the
 * key of one's own earlier command). claim: on what is shared; needs the server.
 */
import type { CommandInputs, CommandName, TableName } from '@holdfast/domain';
import type { z } from 'zod';

export type CommandClass = 'fact' | 'turn' | 'claim';
export type ScreenName =
  | 'floor'
  | 'desk'
  | 'waiting'
  | 'my-bay'
  | 'job'
  | 'vehicle'
  | 'parts-desk'
  | 'outstanding'
  | 'hand-back'
  | 'bay-time'
  | 'shop'
  | 'existing-data'
  | 'set-up';

/** Fields that are instants: ISO on the wire, epoch milliseconds in the domain. */
export type InstantField = (typeof instantFields)[number];
export const instantFields = [
  'at',
  'promisedAt',
  'endsAt',
  'expectedAt',
  'slotAt',
  'dueBackAt',
  'nextTryAt',
  'fromAt',
  'toAt',
] as const;

/** The wire form of an input of the domain. */
export type Wire<I> = {
  [K in keyof I]: K extends InstantField ? Exclude<I[K], number> | (number extends I[K] ? string : string) : I[K];
};

export interface CommandSpec<N extends CommandName> {
  readonly schema: z.ZodType<Wire<CommandInputs[N]>>;
  readonly class: CommandClass;
  /** The table and the field of the input that names its row; null where no version is needed. */
  readonly row: { readonly table: TableName; readonly field: string } | null;
  readonly offline: boolean;
  readonly screens: readonly ScreenName[];
  /** One sentence for OpenAPI. */
  readonly summary: string;
}
