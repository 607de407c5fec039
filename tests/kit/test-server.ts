import { execFile } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import pg from 'pg';
import { codeOf } from '../../apps/server/src/failure.js';
import { startEmbedded } from '../../apps/server/src/database/embedded.js';
import { migrate } from '../../apps/server/src/database/migrate.js';
import { isPostgresAlive, readPostmaster, stopPostmaster } from '../../apps/server/src/database/postmaster.js';
import {
  appRole,
  directoryRole,
  makeRole,
  ownerRole,
  roleSecrets,
  urlAs,
} from '../../apps/server/src/database/roles.js';

/** The one PostgreSQL of a test run, as the test files find it in their environment. */
export interface TestServer {
  readonly superuserUrl: string;
  readonly ownerUrl: string;
  /** Name of the migrated database that fresh ones are copied from. */
  readonly template: string;
}

/** Environment variable that hands a `TestServer` from the run to its test files, as JSON. */
export const testServerVariable = 'HOLDFAST_TEST_SERVER';

interface Source {
  readonly what: string;
  readonly superuserUrl: string;
  stop(): Promise<void>;
}

const silent = { info: () => undefined, warn: () => undefined };
const folderPrefix = 'holdfast-test-';

/**
 * Starts the PostgreSQL of a test run and migrates the template. It is the server of TEST_DATABASE_URL (its user must
 * be a superuser) if that is set, else a container if a Docker engine answers, else our own PostgreSQL, without waiting
 * for the disk. `what` says in words which it is.
 */
export async function startTestServer(): Promise<{ server: TestServer; what: string; stop(): Promise<void> }> {
  const source = fromSetting() ?? (await fromDocker()) ?? (await fromOurOwn());
  const template = `holdfast_test_${randomBytes(4).toString('hex')}`;
  const ownerSecret = createHash('sha256').update(`owner ${source.superuserUrl}`).digest('base64url');
  const superuser = new pg.Client({ connectionString: source.superuserUrl });
  await superuser.connect();
  await setRole(superuser, ownerRole, ownerSecret);
  const secrets = await roleSecrets(ownerSecret);
  await setRole(superuser, appRole, secrets.app);
  await setRole(superuser, directoryRole, secrets.directory);
  await superuser.query(`create database ${template} owner ${ownerRole}`);
  const ownerUrl = urlAs(source.superuserUrl, ownerRole, ownerSecret, template);
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  await migrate(owner);
  await owner.end();
  return {
    server: { superuserUrl: source.superuserUrl, ownerUrl, template },
    what: source.what,
    async stop() {
      await superuser.query(`drop database if exists ${template} with (force)`);
      await superuser.end();
      await source.stop();
    },
  };
}

// A test server may have the roles from an earlier run, with that run's passwords.
async function setRole(client: pg.Client, role: string, secret: string): Promise<void> {
  await makeRole(client, role, secret);
  await client.query(`alter role ${role} password '${secret}'`);
}

function fromSetting(): Source | undefined {
  const url = process.env['TEST_DATABASE_URL'];
  if (url === undefined || url === '') return undefined;
  return { what: 'the server of TEST_DATABASE_URL', superuserUrl: url, stop: () => Promise.resolve() };
}

async function fromDocker(): Promise<Source | undefined> {
  try {
    await promisify(execFile)('docker', ['version', '--format', '{{.Server.Version}}'], { timeout: 5_000 });
  } catch {
    return undefined;
  }
  const { GenericContainer, Wait } = await import('testcontainers');
  const password = randomBytes(16).toString('hex');
  const container = await new GenericContainer('postgres:18')
    .withEnvironment({ POSTGRES_PASSWORD: password })
    .withExposedPorts(5432)
    // It comes up once to set itself up, then for good.
    .withWaitStrategy(Wait.forLogMessage(/ready to accept connections/, 2))
    .start();
  return {
    what: 'postgres:18 in Docker',
    superuserUrl: `postgresql://postgres:${password}@${container.getHost()}:${container.getMappedPort(5432)}/postgres`,
    async stop() {
      await container.stop();
    },
  };
}

async function fromOurOwn(): Promise<Source> {
  await sweep();
  const dataDir = mkdtempSync(join(tmpdir(), `${folderPrefix}${process.pid}-`));
  const embedded = await startEmbedded(dataDir, silent, {
    settings: { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', max_connections: '200' },
  });
  return {
    what: 'our own PostgreSQL',
    superuserUrl: embedded.superuserUrl,
    async stop() {
      await embedded.stop();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

/** Clears away what runs left that were killed before their end. */
async function sweep(): Promise<void> {
  for (const name of readdirSync(tmpdir()).filter((entry) => entry.startsWith(folderPrefix))) {
    const pid = Number(name.slice(folderPrefix.length).split('-')[0]);
    if (!Number.isInteger(pid) || isAlive(pid)) continue;
    const folder = join(tmpdir(), name);
    const postmaster = readPostmaster(join(folder, 'postgres'));
    if (postmaster !== undefined && isPostgresAlive(postmaster.pid)) await stopPostmaster(postmaster.pid);
    rmSync(folder, { recursive: true, force: true });
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (failure) {
    return codeOf(failure) === 'EPERM';
  }
}
