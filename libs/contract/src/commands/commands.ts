/** The command table: every command by its name on the wire. */
import type { CommandInputs, CommandName } from '@holdfast/domain';
import { anyCommands } from './any.js';
import { visitEndsAndBeginnings } from './booking.js';
import { causeCommands } from './causes.js';
import { customerCommands } from './customer.js';
import { holdCommands } from './hold.js';
import { importCommands } from './import.js';
import { jobCommands } from './job.js';
import { liftCommands } from './lifts.js';
import { outstandingCommands } from './outstanding.js';
import { partsCommands } from './parts.js';
import { placeCommands } from './place.js';
import { settingCommands } from './settings.js';
import { shopCommands } from './shop.js';
import { type CommandSpec, instantFields, type Wire } from './spec.js';
import { subletCommands } from './sublet.js';
import { timeCommands } from './time.js';
import { wheelCommands } from './wheels.js';
import { workCommands } from './work.js';

export const commands: { readonly [N in CommandName]: CommandSpec<N> } = {
  ...customerCommands,
  ...jobCommands,
  ...visitEndsAndBeginnings,
  ...workCommands,
  ...causeCommands,
  ...wheelCommands,
  ...placeCommands,
  ...subletCommands,
  ...holdCommands,
  ...partsCommands,
  ...outstandingCommands,
  ...anyCommands,
  ...shopCommands,
  ...settingCommands,
  ...liftCommands,
  ...timeCommands,
  ...importCommands,
};
export const commandNames = Object.keys(commands) as CommandName[];

export function isCommandName(name: string): name is CommandName {
  return Object.hasOwn(commands, name);
}

/** Turns the instants of a checked wire input into epoch milliseconds. */
export function inputFromWire<N extends CommandName>(wire: Wire<CommandInputs[N]>): CommandInputs[N] {
  const input: Record<string, unknown> = { ...wire };
  for (const field of instantFields) {
    const value = input[field];
    if (typeof value === 'string') input[field] = Date.parse(value);
  }
  return input as unknown as CommandInputs[N];
}
