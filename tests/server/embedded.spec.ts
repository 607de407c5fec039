import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { startEmbedded, type EmbeddedServer } from '../../apps/server/src/database/embedded.js';
import { isPostgresAlive, readPostmaster, stopPostmaster } from '../../apps/server/src/database/postmaster.js';

let dataDir: string;
let servers: EmbeddedServer[];
let said: string[];
const log = { info: (sentence: string) => said.push(sentence), warn: (sentence: string) => said.push(sentence) };

async function start(): Promise<EmbeddedServer> {
  const server = await startEmbedded(dataDir, log);
  servers.push(server);
  return server;
}

async function ask<T>(url: string, sql: string): Promise<T | undefined> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<{ answer: T }>(sql)).rows[0]?.answer;
  } finally {
    await client.end().catch(() => undefined);
  }
}

async function untilAnswered<T>(url: string, sql: string): Promise<T | undefined> {
  for (let tries = 0; ; tries += 1) {
    try {
      return await ask<T>(url, sql);
    } catch (failure) {
      if (tries === 200) throw failure;
      await pause(50);
    }
  }
}

function pidIn(folder: string): number {
  const postmaster = readPostmaster(folder);
  if (postmaster === undefined) throw new Error(`No PostgreSQL on ${folder}.`);
  return postmaster.pid;
}

describe('our own PostgreSQL', () => {
  // Making a database is the slow part, so the tests share one folder and leave it as they found it.
  beforeAll(() => {
    dataDir = mkdtempSync(join(tmpdir(), 'holdfast-embedded-'));
  });

  beforeEach(() => {
    servers = [];
    said = [];
  });

  afterEach(async () => {
    for (const server of servers) await server.stop();
    const left = readPostmaster(join(dataDir, 'postgres'));
    if (left !== undefined) await stopPostmaster(left.pid);
  });

  afterAll(() => {
    rmSync(dataDir, { recursive: true, force: true });
  });

  it('starts from nothing, asks for a password, and keeps its secrets for this user alone', async () => {
    const server = await start();
    expect(await ask(server.ownerUrl, `select current_user::text as answer`)).toBe('holdfast_owner');
    expect(
      await ask(
        server.urls.app,
        `select rolsuper or rolbypassrls as answer from pg_roles where rolname = current_user`,
      ),
    ).toBe(false);
    const withoutSecret = new URL(server.superuserUrl);
    withoutSecret.password = 'password';
    await expect(ask(withoutSecret.href, 'select 1 as answer')).rejects.toMatchObject({ code: '28P01' });
    expect(statSync(join(dataDir, 'secrets', 'postgres.json')).mode & 0o777).toBe(0o600);
    expect(await ask(server.superuserUrl, `select current_setting('listen_addresses') as answer`)).toBe('127.0.0.1');
    expect(await ask(server.superuserUrl, `select current_setting('fsync') as answer`)).toBe('on');
  });

  it('stops in order and comes back on the same port with what was written', async () => {
    const first = await start();
    await ask(first.ownerUrl, 'create table if not exists kept as select 42 as value');
    const pid = pidIn(first.folder);
    await first.stop();
    expect(isPostgresAlive(pid)).toBe(false);
    expect(readFileSync(join(first.folder, 'server.log'), 'utf8')).toContain('database system is shut down');
    const second = await start();
    expect(second.ownerUrl).toBe(first.ownerUrl);
    expect(second.adopted).toBe(false);
    expect(await ask(second.ownerUrl, 'select value as answer from kept')).toBe(42);
  });

  it('is taken over when it runs already, and stopped by the last that uses it', async () => {
    const first = await start();
    const pid = pidIn(first.folder);
    const second = await start();
    expect(second.adopted).toBe(true);
    expect(pidIn(second.folder)).toBe(pid);
    // Another server process on this folder, as PostgreSQL sees it.
    const other = new pg.Client({ connectionString: first.superuserUrl, application_name: 'holdfast 1 watch' });
    await other.connect();
    await second.stop();
    expect(isPostgresAlive(pid)).toBe(true);
    await other.end();
    await first.stop();
    expect(isPostgresAlive(pid)).toBe(false);
  });

  it('is refused when it runs already and does not accept our secrets', async () => {
    const first = await start();
    const file = join(dataDir, 'secrets', 'postgres.json');
    const secrets = readFileSync(file, 'utf8');
    writeFileSync(file, secrets.replace(/"superuser":"[^"]*"/, '"superuser":"other"'));
    await expect(start()).rejects.toThrow(/runs on .* already and does not accept the secrets/);
    writeFileSync(file, secrets);
    expect(await ask(first.ownerUrl, 'select 1 as answer')).toBe(1);
  });

  it('is refused when its secrets are lost, and its data stays as it was', async () => {
    const first = await start();
    await first.stop();
    renameSync(join(dataDir, 'secrets'), join(dataDir, 'elsewhere'));
    await expect(start()).rejects.toThrow(/holds a database, but its secrets .* are missing/);
    renameSync(join(dataDir, 'elsewhere'), join(dataDir, 'secrets'));
    expect(existsSync(join(first.folder, 'PG_VERSION'))).toBe(true);
  });

  it('comes back by itself after kill -9, on the same address and with what was committed', async () => {
    const server = await start();
    await ask(server.ownerUrl, 'create table if not exists kept as select 42 as value');
    for (let kill = 0; kill < 2; kill += 1) {
      const pid = pidIn(server.folder);
      process.kill(pid, 'SIGKILL');
      while (isPostgresAlive(pid)) await pause(5);
      expect(await untilAnswered(server.ownerUrl, 'select value as answer from kept')).toBe(42);
      expect(pidIn(server.folder)).not.toBe(pid);
      while (!said.slice(-1).includes('PostgreSQL runs again.')) await pause(10);
    }
  });

  it('starts over a pid file that a killed machine left and whose number another program has now', async () => {
    const first = await start();
    await first.stop();
    writeFileSync(
      join(first.folder, 'postmaster.pid'),
      `${process.pid}\n${first.folder}\n1700000000\n5432\n\n127.0.0.1\n0 0\nready\n`,
    );
    const second = await start();
    expect(second.adopted).toBe(false);
    expect(await ask(second.ownerUrl, 'select 1 as answer')).toBe(1);
  });
});
