import type { CommandInputs } from '@holdfast/domain';
import { createHash } from 'node:crypto';
import type { Answer, RunCommand, Sender, Sent } from '../engine/ports.js';
import type { Accounts } from './accounts.js';
import { passwordProblem, type PasswordProblem } from './password-rules.js';
import type { Passwords } from './passwords.js';
import { personOf } from './person-passwords.js';
import type { Sessions, Started } from './sessions.js';
import type { SetUpCode } from './set-up-code.js';

export type SetUpResult =
  | { readonly kind: 'code'; readonly code: 'wrong' | 'spent' | 'notAwaited' }
  | { readonly kind: 'password'; readonly problem: PasswordProblem }
  | { readonly kind: 'nameTaken' }
  /** With a session where the shop stands and the password is the owner's. */
  | { readonly kind: 'answered'; readonly answer: Answer; readonly started: Started | null };

/** Makes the empty log of a new shop, with a clock of its own where it is for trying; does nothing where it stands. */
export type OpenShop = (shopId: string, options: { readonly ownClock: boolean }) => Promise<void>;

export interface SetUpParts {
  readonly accounts: Accounts;
  readonly passwords: Passwords;
  readonly sessions: Sessions;
  readonly setUpCode: SetUpCode;
  readonly openShop: OpenShop;
  /** The engine for the first command of this shop, whose first new id is the shop's own. */
  readonly firstCommandOf: (shopId: string) => RunCommand;
}

export type SetUpShop = (sent: Sent<'setUpShop'>, device: string | null) => Promise<SetUpResult>;

/**
 * The first command of a shop, by the server itself on behalf of who has the code. The shop's id comes from the key and
 * the code, so that a command sent twice makes one shop, and only who knew both gets the answer again.
 */
export function makeSetUpShop(parts: SetUpParts): SetUpShop {
  const { accounts, passwords, setUpCode } = parts;
  return async (sent, device) => {
    const { code, shop, owner } = sent.input;
    const shopId = idFrom(`${sent.key} ${code}`);
    const before = await accounts.find(shop.name, owner.name);
    const again = before?.shopId === shopId;
    if (!again) {
      const checked = await setUpCode.check(code);
      if (checked !== 'right') return { kind: 'code', code: checked };
      const problem = passwordProblem(owner.password, [shop.name, owner.name, ...owner.name.split(/\s+/)]);
      if (problem !== null) return { kind: 'password', problem };
      if (await accounts.isShopNameTaken(shop.name)) return { kind: 'nameTaken' };
    }
    const password = await passwords.hash(owner.password);
    let answer: Answer | undefined;
    const kept = await accounts.addShop({ shopId, name: shop.name, demo: setUpCode.ownClock }, async () => {
      await parts.openShop(shopId, { ownClock: setUpCode.ownClock });
      answer = await parts.firstCommandOf(shopId)(serverIn(shopId, device), {
        ...sent,
        input: withoutSecrets(sent.input),
      });
      const personId = answer.kind === 'accepted' ? personOf(answer.body) : null;
      return personId === null ? null : { personId, name: owner.name, password };
    });
    if (!kept || answer === undefined) return { kind: 'nameTaken' };
    const opens = answer.kind === 'accepted' && (!again || (await passwords.verify(before.password, owner.password)));
    const personId = answer.kind === 'accepted' ? personOf(answer.body) : null;
    const started = opens && personId !== null ? await parts.sessions.start(shopId, personId) : null;
    return { kind: 'answered', answer, started };
  };
}

function serverIn(shopId: string, device: string | null): Sender {
  return { shopId, personId: shopId, name: '', roles: [], device, system: true };
}

function withoutSecrets(input: CommandInputs['setUpShop']): CommandInputs['setUpShop'] {
  return { ...input, code: '', owner: { ...input.owner, password: '' } };
}

/** A UUID of version 8 (RFC 9562, 5.8) from a hash. */
function idFrom(text: string): string {
  const hex = createHash('sha256').update(`holdfast shop ${text}`).digest('hex');
  const variant = ((Number.parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    variant + hex.slice(18, 20),
    hex.slice(20, 32),
  ].join('-');
}
