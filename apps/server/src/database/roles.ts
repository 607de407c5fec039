import { scrypt } from 'node:crypto';
import { join } from 'node:path';
import pg from 'pg';
import { keptSecret, randomSecret, writeSecretFile } from '../secret-file.js';
import { CannotStart } from './cannot-start.js';

/** Owns the schema of our own PostgreSQL and runs the migrations; no request ever reaches it. */
export const ownerRole = 'holdfast_owner';
/** What the server works as: behind row-level security, owner of nothing. */
export const appRole = 'holdfast_app';
/** For the schema `directory` alone: shops, accounts, memberships. */
export const directoryRole = 'holdfast_directory';

export interface RoleSecrets {
  readonly app: string;
  readonly directory: string;
}

export interface RoleUrls {
  readonly app: string;
  readonly directory: string;
}

const limits = {
  lock_timeout: '2s',
  statement_timeout: '5s',
  idle_in_transaction_session_timeout: '5s',
  timezone: 'UTC',
} as const;
/** While a new shop is made its directory transaction waits for the shop's own rows; a demo's are many. */
const directoryLimits = { ...limits, idle_in_transaction_session_timeout: '60s' } as const;

const harmless = 'LOGIN NOSUPERUSER NOBYPASSRLS NOINHERIT NOCREATEDB NOCREATEROLE NOREPLICATION';

/**
 * The passwords of the two roles, drawn from the owner's by scrypt (RFC 7914; N 16384, r 8, p 1): every server process
 * that can open the database as its owner finds the same ones, without a file to share. They do not lead back to the
 * owner's.
 */
export async function roleSecrets(ownerSecret: string): Promise<RoleSecrets> {
  const [app, directory] = await Promise.all([derive(ownerSecret, appRole), derive(ownerSecret, directoryRole)]);
  return { app, directory };
}

function derive(ownerSecret: string, role: string): Promise<string> {
  return new Promise((resolve, reject) => {
    scrypt(ownerSecret, `holdfast role ${role}`, 32, (failure, key) => {
      if (failure) reject(failure);
      else resolve(key.toString('base64url'));
    });
  });
}

/** `url` with another user, and with another database where one is named. */
export function urlAs(url: string, user: string, password: string, database?: string): string {
  const address = new URL(url);
  address.username = user;
  address.password = password;
  if (database !== undefined) address.pathname = `/${database}`;
  return address.href;
}

/** The addresses of the two roles on the database at `ownerUrl`. */
export function roleUrlsOn(ownerUrl: string, secrets: RoleSecrets): RoleUrls {
  return {
    app: urlAs(ownerUrl, appRole, secrets.app),
    directory: urlAs(ownerUrl, directoryRole, secrets.directory),
  };
}

/**
 * Makes the role where it is missing and sets what it may and its limits of time: waiting for a lock 2 s, a statement
 * 5 s, idle inside a transaction 5 s. The password of a role that exists is left as it is.
 */
export async function makeRole(client: pg.ClientBase, role: string, secret: string): Promise<void> {
  const found = await client.query('select from pg_roles where rolname = $1', [role]);
  await client.query(roleStatements(role, secret, found.rowCount === 0).join('; '));
}

function roleStatements(role: string, secret: string, isNew: boolean): string[] {
  const settings: Readonly<Record<string, string>> =
    role === ownerRole ? {} : role === directoryRole ? directoryLimits : limits;
  return [
    isNew ? `CREATE ROLE ${role} ${harmless} PASSWORD '${secret}'` : `ALTER ROLE ${role} ${harmless}`,
    ...Object.entries(settings).map(([name, value]) => `ALTER ROLE ${role} SET ${name} = '${value}'`),
  ];
}

/**
 * The addresses of the two roles on a PostgreSQL that is not ours, at `ownerUrl`. They are made if the
 * owner may make roles. Refused, with the statements an administrator must run kept in a file that only this user can
 * read: an owner who may not, and a role that is there with another password (another installation may be using it).
 */
export async function roleUrls(ownerUrl: string, dataDir: string): Promise<RoleUrls> {
  const given = decodeURIComponent(new URL(ownerUrl).password);
  const seed = given === '' ? keptSecret(join(dataDir, 'secrets', 'roles'), randomSecret) : given;
  const secrets = await roleSecrets(seed);
  const urls = roleUrlsOn(ownerUrl, secrets);
  const missing = await rolesThatCannotSignIn(urls, secrets);
  if (missing.length === 0) return urls;
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    const statements = await makeMissing(owner, missing);
    if (statements.length > 0) throw administratorNeeded(statements, dataDir);
  } finally {
    await owner.end();
  }
  const still = await rolesThatCannotSignIn(urls, secrets);
  if (still.length === 0) return urls;
  throw new CannotStart(
    `The PostgreSQL server does not let ${still.map(({ role }) => role).join(' and ')} sign in with a password. ` +
      'Its pg_hba.conf must allow scram-sha-256 for them from this machine.',
  );
}

interface MissingRole {
  readonly role: string;
  readonly secret: string;
}

async function rolesThatCannotSignIn(urls: RoleUrls, secrets: RoleSecrets): Promise<MissingRole[]> {
  const [app, directory] = await Promise.all([canSignIn(urls.app), canSignIn(urls.directory)]);
  return [
    ...(app ? [] : [{ role: appRole, secret: secrets.app }]),
    ...(directory ? [] : [{ role: directoryRole, secret: secrets.directory }]),
  ];
}

async function canSignIn(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  // A connection that is lost here must not end the process; the answer is then no.
  client.on('error', () => undefined);
  try {
    await client.connect();
    return true;
  } catch (failure) {
    // invalid_password, invalid_authorization_specification (also: no such role, no line in pg_hba.conf)
    if (failure instanceof pg.DatabaseError && (failure.code === '28P01' || failure.code === '28000')) return false;
    throw failure;
  } finally {
    await client.end();
  }
}

/** Makes what it may; answers with the statements it may not run itself. */
async function makeMissing(owner: pg.Client, missing: readonly MissingRole[]): Promise<string[]> {
  const { rows } = await owner.query<{ may: boolean; existing: string[] }>(
    `select (rolsuper or rolcreaterole) as may,
            array(select rolname::text from pg_roles where rolname = any ($1)) as existing
       from pg_roles where rolname = current_user`,
    [missing.map(({ role }) => role)],
  );
  const existing = new Set(rows[0]?.existing ?? []);
  const statements: string[] = [];
  for (const { role, secret } of missing) {
    if (existing.has(role)) statements.push(`ALTER ROLE ${role} PASSWORD '${secret}'`);
    else if (rows[0]?.may) await makeRole(owner, role, secret);
    else statements.push(...roleStatements(role, secret, true));
  }
  return statements;
}

function administratorNeeded(statements: readonly string[], dataDir: string): CannotStart {
  const file = join(dataDir, 'secrets', 'roles.sql');
  writeSecretFile(file, statements.map((statement) => `${statement};\n`).join(''));
  return new CannotStart(
    `The user of DATABASE_URL may not make or change the roles ${appRole} and ${directoryRole}, which Holdfast works ` +
      `as. An administrator of that PostgreSQL must run the statements in ${file} once (they hold passwords), and then ` +
      'start Holdfast again.',
  );
}
