import type { CommandInputs } from '@holdfast/domain';
import type { Database } from '../database/pools.js';
import { inShop } from '../store/shop-transaction.js';
import type { Accounts } from './accounts.js';
import { passwordProblem, type PasswordProblem } from './password-rules.js';
import type { Passwords, StoredPassword } from './passwords.js';
import type { Session, Sessions } from './sessions.js';

/**
 * Passwords that come with `addPerson` and `changePerson`. A password never reaches the engine, the log or the
 * fingerprint of the key: it is checked and hashed before the command, and kept after the command was accepted. A
 * command that is sent again keeps it again, so a crash between the two loses nothing.
 */
export type PersonCommand = 'addPerson' | 'changePerson';

export function isPersonCommand(name: string): name is PersonCommand {
  return name === 'addPerson' || name === 'changePerson';
}

export interface PasswordOfCommand {
  /** The input without the password, for the engine. */
  readonly input: CommandInputs[PersonCommand];
  /** To be called with the body of the accepted answer. */
  readonly keep: (answerBody: string) => Promise<void>;
}

export type PersonCheck =
  ({ readonly ok: true } & PasswordOfCommand) | { readonly ok: false; readonly problem: PasswordProblem };

export interface PersonPasswordsParts {
  readonly database: Pick<Database, 'app'>;
  readonly accounts: Accounts;
  readonly passwords: Passwords;
  readonly sessions: Sessions;
}

export type CheckPerson = (
  session: Session,
  input: CommandInputs['addPerson'] | CommandInputs['changePerson'],
) => Promise<PersonCheck>;

export function makeCheckPerson(parts: PersonPasswordsParts): CheckPerson {
  return async (session, whole) => {
    const { password, ...input } = whole;
    const shopId = session.shop.id;
    const personId = input.personId ?? null;
    const name = input.name ?? (personId === null ? null : await nameOf(parts.database, shopId, personId));
    if (password !== undefined) {
      const context = [session.shop.name, ...(name === null ? [] : [name, ...name.split(/\s+/)])];
      const problem = passwordProblem(password, context);
      if (problem !== null) return { ok: false, problem };
    }
    const stored = password === undefined ? null : await parts.passwords.hash(password);
    return { ok: true, input, keep: (body) => keep(parts, session, { input, stored, name, body }) };
  };
}

interface Kept {
  readonly input: Omit<CommandInputs['addPerson'] | CommandInputs['changePerson'], 'password'>;
  readonly stored: StoredPassword | null;
  readonly name: string | null;
  readonly body: string;
}

/** The domain keeps names apart among those who work here, so a name is free in the directory once it was accepted. */
async function keep(parts: PersonPasswordsParts, session: Session, { input, stored, name, body }: Kept): Promise<void> {
  const { accounts, sessions } = parts;
  const shopId = session.shop.id;
  const personId = input.personId ?? personOf(body);
  if (personId === null || name === null) return;
  if (stored !== null) await accounts.setPassword({ shopId, personId, name }, stored);
  if ('active' in input && input.active === false) {
    await accounts.retire(shopId, personId);
    await sessions.endAllOf(shopId, personId, null);
    return;
  }
  await accounts.rename(shopId, personId, name);
  if (stored !== null) await sessions.endAllOf(shopId, personId, session.id);
  else await sessions.changed(shopId, personId);
}

/** The person that an accepted `addPerson` or `setUpShop` made, from the answer's body. */
export function personOf(answerBody: string): string | null {
  const { created } = JSON.parse(answerBody) as { created?: { person?: string } };
  return created?.person ?? null;
}

function nameOf(database: Pick<Database, 'app'>, shopId: string, personId: string): Promise<string | null> {
  return inShop(database.app, shopId, async (client) => {
    const { rows } = await client.query<{ name: string }>('select name from person where shop_id = $1 and id = $2', [
      shopId,
      personId,
    ]);
    return rows[0]?.name ?? null;
  });
}
