import { foldKey } from '@holdfast/domain';
import type { Accounts } from './accounts.js';
import type { Passwords } from './passwords.js';
import type { Sessions, Started } from './sessions.js';
import { accountSubject, addressSubject, mostFailures, type SignInTries } from './sign-in-tries.js';

export interface SignInAttempt {
  readonly shop: string;
  readonly name: string;
  readonly password: string;
  /** Where the request came from. */
  readonly address: string;
}

export type SignInResult =
  | ({ readonly kind: 'signedIn' } & Started)
  /** Unknown shop, unknown name, wrong password, closed sign-in or left the shop: one answer for all, after one time. */
  | { readonly kind: 'notMatching' }
  | { readonly kind: 'wait'; readonly seconds: number };

export type SignIn = (attempt: SignInAttempt) => Promise<SignInResult>;

export interface SignInParts {
  readonly accounts: Accounts;
  readonly passwords: Passwords;
  readonly sessions: Sessions;
  readonly tries: SignInTries;
}

/** Signs a person in. Tries are counted by name and by address before any hashing; see `SignInTries`. */
export function makeSignIn({ accounts, passwords, sessions, tries }: SignInParts): SignIn {
  return async ({ shop, name, password, address }) => {
    const fromAddress = addressSubject(address);
    const forAccount = accountSubject(foldKey(shop), foldKey(name));
    const byAddress = await tries.begin(fromAddress);
    if ('waitSeconds' in byAddress) return { kind: 'wait', seconds: byAddress.waitSeconds };
    const byAccount = await tries.begin(forAccount);
    if ('waitSeconds' in byAccount) return { kind: 'wait', seconds: byAccount.waitSeconds };

    const account = await accounts.find(shop, name);
    const matches = await passwords.verify(account?.password ?? null, password);
    if (account !== null && byAccount.failures >= mostFailures && !matches) await accounts.disable(account.accountId);
    if (account === null || !matches || account.disabled) return { kind: 'notMatching' };

    const started = await sessions.start(account.shopId, account.personId);
    if (started === null) return { kind: 'notMatching' };
    await Promise.all([tries.forgive(fromAddress), tries.forgive(forAccount)]);
    return { kind: 'signedIn', ...started };
  };
}
