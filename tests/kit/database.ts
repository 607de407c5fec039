import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { makePool } from '../../apps/server/src/database/pools.js';
import { appRole, directoryRole, ownerRole, roleSecrets, urlAs } from '../../apps/server/src/database/roles.js';
import { testServerVariable, type TestServer } from './test-server.js';

/**
 * This folder hides which PostgreSQL the tests run on and how a server under test is started. It guarantees that every
 * test file works on a database of its own, with the schema of the migrations and the roles of a real installation.
 */
export interface FreshDatabase {
  readonly name: string;
  /** As the server works: behind row-level security. */
  readonly app: pg.Pool;
  /** For the schema `directory`. */
  readonly directory: pg.Pool;
  /** Owner of all tables; under forced row-level security like everybody. */
  readonly owner: pg.Pool;
  /** Passes by everything: for looking at rows of all shops and for breaking things on purpose. */
  readonly superuser: pg.Pool;
  /** What a server under test takes as DATABASE_URL. */
  readonly databaseUrl: string;
  /** Address of the application role, for a client of one's own. */
  readonly appUrl: string;
  /** Ends the pools and drops the database, whoever is still connected. Call it in `afterAll`. */
  drop(): Promise<void>;
}

export interface FreshOptions {
  /** Without the migrations: an empty database. */
  readonly empty?: boolean;
}

const log = { info: () => undefined, warn: () => undefined };

/** A new database, copied from the migrated template in about 0.14 s. */
export async function freshDatabase(options: FreshOptions = {}): Promise<FreshDatabase> {
  const { superuserUrl, ownerUrl, template } = testServer();
  const name = `${template}_${randomBytes(6).toString('hex')}`;
  await onServer(`create database ${name} template ${options.empty ? 'template0' : template} owner ${ownerRole}`);
  const ownerSecret = decodeURIComponent(new URL(ownerUrl).password);
  const secrets = await roleSecrets(ownerSecret);
  const databaseUrl = urlAs(ownerUrl, ownerRole, ownerSecret, name);
  const appUrl = urlAs(ownerUrl, appRole, secrets.app, name);
  const administrator = new URL(superuserUrl);
  administrator.pathname = `/${name}`;
  const pools = {
    app: makePool(appUrl, 8, log),
    directory: makePool(urlAs(ownerUrl, directoryRole, secrets.directory, name), 2, log),
    owner: makePool(databaseUrl, 2, log),
    superuser: makePool(administrator.href, 4, log),
  };
  return {
    ...pools,
    name,
    databaseUrl,
    appUrl,
    async drop() {
      await Promise.all(Object.values(pools).map((pool) => pool.end()));
      await onServer(`drop database if exists ${name} with (force)`);
    },
  };
}

function testServer(): TestServer {
  const handed = process.env[testServerVariable];
  if (handed === undefined)
    throw new Error('The test server is not there: global-setup.mjs must run before these tests.');
  return JSON.parse(handed) as TestServer;
}

async function onServer(sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: testServer().superuserUrl });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}
