import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { migrate } from '../../apps/server/src/database/migrate.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';

let database: FreshDatabase;
let folder: string;
let owner: pg.Client;

function file(name: string, sql: string): void {
  mkdirSync(join(folder, name), { recursive: true });
  writeFileSync(join(folder, name, 'migration.sql'), sql);
}

async function tables(): Promise<string[]> {
  const { rows } = await owner.query<{ name: string }>(
    `select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
        and relname <> '_prisma_migrations' order by relname`,
  );
  return rows.map(({ name }) => name);
}

describe('migrations', () => {
  beforeEach(async () => {
    database = await freshDatabase({ empty: true });
    folder = mkdtempSync(join(tmpdir(), 'holdfast-migrations-'));
    owner = new pg.Client({ connectionString: database.databaseUrl });
    await owner.connect();
  });

  afterEach(async () => {
    await owner.end();
    rmSync(folder, { recursive: true });
    await database.drop();
  });

  it('are applied once, in the order of their numbers, with rows as the Prisma tool writes them', async () => {
    file('10_third', 'alter table b rename to c;');
    file('2_second', 'alter table a rename to b;');
    file('1_first', 'create table a ();');
    expect(await migrate(owner, folder)).toEqual(['1_first', '2_second', '10_third']);
    expect(await migrate(owner, folder)).toEqual([]);
    expect(await tables()).toEqual(['c']);
    const { rows } = await owner.query(
      `select migration_name, checksum, finished_at >= started_at as finished, rolled_back_at, applied_steps_count, logs
         from _prisma_migrations order by started_at limit 1`,
    );
    expect(rows).toEqual([
      {
        migration_name: '1_first',
        checksum: createHash('sha256').update('create table a ();').digest('hex'),
        finished: true,
        rolled_back_at: null,
        applied_steps_count: 1,
        logs: null,
      },
    ]);
  });

  it('are refused when an applied file was changed, and nothing later is applied', async () => {
    file('1_first', 'create table a ();');
    await migrate(owner, folder);
    file('1_first', 'create table a (); -- and a word');
    file('2_second', 'create table b ();');
    await expect(migrate(owner, folder)).rejects.toThrow('The migration 1_first was changed after it had been applied');
    expect(await tables()).toEqual(['a']);
  });

  it('are refused when a newer Holdfast has used the database', async () => {
    file('1_first', 'create table a ();');
    file('2_second', 'create table b ();');
    await migrate(owner, folder);
    rmSync(join(folder, '2_second'), { recursive: true });
    await expect(migrate(owner, folder)).rejects.toThrow('a newer Holdfast has used this database');
  });

  it('are refused when a file comes before one that is applied already', async () => {
    file('2_second', 'create table b ();');
    await migrate(owner, folder);
    file('1_first', 'create table a ();');
    await expect(migrate(owner, folder)).rejects.toThrow('1_first comes before 2_second');
  });

  it('are refused after another tool left one unfinished', async () => {
    file('1_first', 'create table a ();');
    await migrate(owner, folder);
    await owner.query('update _prisma_migrations set finished_at = null');
    await expect(migrate(owner, folder)).rejects.toThrow('was begun by another tool and not finished');
  });

  it('are applied whole or not at all', async () => {
    file('1_first', 'create table a ();');
    file('2_broken', 'create table b (); create table a ();');
    await expect(migrate(owner, folder)).rejects.toThrow(/2_broken could not be applied, and nothing of it was: .*"a"/);
    expect(await tables()).toEqual(['a']);
    file('2_broken', 'create table b ();');
    expect(await migrate(owner, folder)).toEqual(['2_broken']);
  });

  it('may not end the transaction they run in', async () => {
    file('1_first', 'create table a (); commit; begin; create table b ();');
    await expect(migrate(owner, folder)).rejects.toThrow('begins or commits a transaction of its own');
  });

  it('are applied once when two server processes start at the same moment', async () => {
    file('1_first', 'create table a (); select pg_sleep(0.1);');
    const second = new pg.Client({ connectionString: database.databaseUrl });
    await second.connect();
    const answers = await Promise.all([migrate(owner, folder), migrate(second, folder)]);
    await second.end();
    expect(answers.flat()).toEqual(['1_first']);
  });
});
