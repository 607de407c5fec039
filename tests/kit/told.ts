import type { CommandName } from '@holdfast/domain';
import type { EngineShop } from './engine-shop.js';

type Sender = Parameters<EngineShop['accept']>[2];

/** What the story of ./every-command hands on to each of its parts: the shop, how to send, and what to send from. */
export interface Told {
  readonly shop: EngineShop;
  readonly go: EngineShop['accept'];
  readonly made: (name: CommandName, table: string, input: unknown, by?: Sender) => Promise<string>;
  /** The version of a row now, by the table's name in the database. */
  readonly version: (table: string, id: string) => Promise<number>;
  /** Ids of the rows of a table, the last recorded first. */
  readonly idsOf: (table: string) => Promise<string[]>;
  readonly lift: string;
  readonly flat: string;
  readonly tech: string;
  readonly technician: Sender;
}
