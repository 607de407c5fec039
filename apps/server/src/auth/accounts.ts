import { foldKey } from '@holdfast/domain';
import { v7 as uuidV7 } from 'uuid';
import type { Database } from '../database/pools.js';
import { directoryClient } from '../database/prisma.js';
import { codeOf } from '../failure.js';
import type { StoredPassword } from './passwords.js';

/** Who may sign in where. A person has an account once a password was set; an account may belong to several shops. */
export interface Account {
  readonly shopId: string;
  readonly personId: string;
  readonly accountId: string;
  readonly password: StoredPassword;
  readonly disabled: boolean;
}

export interface NewShop {
  readonly shopId: string;
  readonly name: string;
  /** A shop for trying: its clock is its own, and it does not count as a real one. */
  readonly demo: boolean;
}

export interface Accounts {
  /** By the names of shop and person as they are typed: case, accents, blanks and signs do not matter. */
  find(shop: string, person: string): Promise<Account | null>;
  isShopNameTaken(name: string): Promise<boolean>;
  /** Whether there is a shop that is not for trying. */
  hasRealShop(): Promise<boolean>;
  /** Sets or replaces a password, opens a closed sign-in again, and keeps the name to sign in with. */
  setPassword(person: PersonToSignIn, password: StoredPassword): Promise<void>;
  /** The name to sign in with follows the name of the person; nothing happens where no password was ever set. */
  rename(shopId: string, personId: string, name: string): Promise<void>;
  /** Somebody who left no longer signs in, and the name is free for others. `rename` brings them back. */
  retire(shopId: string, personId: string): Promise<void>;
  disable(accountId: string): Promise<void>;
  /**
   * A shop and its first person, written only when `work` (which makes them in the shop's own tables) says who that
   * is; with null nothing is kept. False when the name was taken in the meantime.
   */
  addShop(shop: NewShop, work: () => Promise<FirstPerson | null>): Promise<boolean>;
  close(): Promise<void>;
}

export interface FirstPerson {
  readonly personId: string;
  readonly name: string;
  readonly password: StoredPassword;
}

export interface PersonToSignIn {
  readonly shopId: string;
  readonly personId: string;
  readonly name: string;
}

const uniqueViolated = 'P2002';
/** How long `work` of a new shop may take, ms. */
const longestSetUpMs = 20_000;

export function openAccounts(database: Pick<Database, 'directory'>): Accounts {
  const client = directoryClient(database.directory);
  return {
    async find(shop, person) {
      const found = await client.membership.findFirst({
        where: { nameKey: foldKey(person), shop: { nameKey: foldKey(shop) } },
        include: { account: true },
      });
      if (found === null) return null;
      const { id, passwordHash, pepperId, disabled } = found.account;
      const password = { hash: passwordHash, pepperId };
      return { shopId: found.shopId, personId: found.personId, accountId: id, password, disabled };
    },
    async isShopNameTaken(name) {
      return (await client.directoryShop.findUnique({ where: { nameKey: foldKey(name) } })) !== null;
    },
    async hasRealShop() {
      return (await client.directoryShop.findFirst({ where: { demo: false } })) !== null;
    },
    async setPassword({ shopId, personId, name }, { hash, pepperId }) {
      const account = { passwordHash: hash, pepperId, disabled: false };
      const nameKey = foldKey(name);
      await client.membership.upsert({
        where: { shopId_personId: { shopId, personId } },
        update: { nameKey, account: { update: { ...account, changedAt: new Date() } } },
        create: {
          personId,
          nameKey,
          shop: { connect: { id: shopId } },
          account: { create: { id: uuidV7(), ...account } },
        },
      });
    },
    async rename(shopId, personId, name) {
      await client.membership.updateMany({ where: { shopId, personId }, data: { nameKey: foldKey(name) } });
    },
    async retire(shopId, personId) {
      // No folded name looks like this.
      await client.membership.updateMany({ where: { shopId, personId }, data: { nameKey: `left ${personId}` } });
    },
    async disable(accountId) {
      await client.account.update({ where: { id: accountId }, data: { disabled: true } });
    },
    addShop: (shop, work) => addShop(client, shop, work),
    close: () => client.$disconnect(),
  };
}

async function addShop(
  client: ReturnType<typeof directoryClient>,
  { shopId, name, demo }: NewShop,
  work: () => Promise<FirstPerson | null>,
): Promise<boolean> {
  try {
    await client.$transaction(
      async (transaction) => {
        const shop = { name, nameKey: foldKey(name), demo };
        await transaction.directoryShop.upsert({ where: { id: shopId }, update: {}, create: { id: shopId, ...shop } });
        const first = await work();
        if (first === null) throw new NothingKept();
        const { personId, password } = first;
        const account = { id: uuidV7(), passwordHash: password.hash, pepperId: password.pepperId };
        await transaction.membership.upsert({
          where: { shopId_personId: { shopId, personId } },
          update: {},
          create: {
            personId,
            nameKey: foldKey(first.name),
            shop: { connect: { id: shopId } },
            account: { create: account },
          },
        });
      },
      { timeout: longestSetUpMs },
    );
    return true;
  } catch (failure) {
    if (failure instanceof NothingKept) return true;
    if (codeOf(failure) === uniqueViolated) return false;
    throw failure;
  }
}

class NothingKept extends Error {
  override readonly name = 'NothingKept';
}
