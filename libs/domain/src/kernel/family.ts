/** A family is a set of commands: for each, what it needs in its bag and how it is decided. */
import type { CommandInputs, CommandName } from '../inputs.js';
import type { Decide } from './decision.js';
import type { Slices } from './slices.js';

export interface CommandRule<N extends CommandName> {
  readonly needs: (input: CommandInputs[N]) => Slices;
  readonly decide: Decide<CommandInputs[N]>;
}
export type Family<N extends CommandName> = { readonly [K in N]: CommandRule<K> };
