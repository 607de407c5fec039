import { createHash, randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type pg from 'pg';
import { reasonOf } from '../failure.js';
import { migrationsFolder } from '../installation/places.js';
import { CannotStart } from './cannot-start.js';

interface Migration {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file's bytes in hexadecimal, as Prisma's own tool writes it. */
  readonly checksum: string;
}

interface AppliedMigration {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished: boolean;
}

/** The number of the advisory lock that Prisma's own tool takes, so that the two never migrate at once. */
const prismaLock = 72_707_369;

/** As Prisma's own tool makes it, so that people who have that tool can go on with it. */
const migrationsTable = `
  create table if not exists public._prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`;

/**
 * Brings the database up to the files in `folder` (`<number>_<name>/migration.sql`, in the order of the numbers) and
 * answers with the names it applied. `client` must be the owner of the schema. Each file is one transaction with its
 * row in `_prisma_migrations`, so that a file is applied whole or not at all; server processes that start together
 * wait for one another. Refused, each with a sentence and before anything is changed: an applied file that was changed
 * since, a database that knows migrations these files do not (made by a newer Holdfast), a file that would come before
 * one already applied, and a migration that another tool began and did not finish.
 */
export async function migrate(client: pg.ClientBase, folder: string = migrationsFolder): Promise<string[]> {
  const migrations = readMigrations(folder);
  await client.query('select pg_advisory_lock($1)', [prismaLock]);
  try {
    await client.query(migrationsTable);
    const { rows } = await client.query<AppliedMigration>(
      `select migration_name, checksum, finished_at is not null as finished
         from public._prisma_migrations where rolled_back_at is null order by started_at, migration_name`,
    );
    const outstanding = outstandingOf(migrations, rows);
    for (const migration of outstanding) await apply(client, migration);
    return outstanding.map(({ name }) => name);
  } finally {
    await client.query('select pg_advisory_unlock($1)', [prismaLock]);
  }
}

function readMigrations(folder: string): Migration[] {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
  const unnumbered = names.find((name) => !/^\d+_\w+$/.test(name));
  if (unnumbered !== undefined) {
    throw new CannotStart(`The migration folder ${join(folder, unnumbered)} is not named <number>_<name>.`);
  }
  return names
    .sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10) || (a < b ? -1 : 1))
    .map((name) => {
      const bytes = readFileSync(join(folder, name, 'migration.sql'));
      return { name, sql: bytes.toString('utf8'), checksum: createHash('sha256').update(bytes).digest('hex') };
    });
}

function outstandingOf(migrations: readonly Migration[], applied: readonly AppliedMigration[]): Migration[] {
  const files = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const { migration_name: name, checksum, finished } of applied) {
    const file = files.get(name);
    if (file === undefined) {
      throw new CannotStart(
        `The database knows the migration ${name}, and this Holdfast does not: a newer Holdfast has used this database. ` +
          'Start that one, or put back the backup from before it was used.',
      );
    }
    if (!finished) {
      throw new CannotStart(
        `The migration ${name} was begun by another tool and not finished. Settle it with that tool, then start Holdfast.`,
      );
    }
    if (file.checksum !== checksum) {
      throw new CannotStart(
        `The migration ${name} was changed after it had been applied to this database. ` +
          'Put back the file as it was; a correction is a new migration.',
      );
    }
  }
  const done = new Set(applied.map(({ migration_name: name }) => name));
  const lastDone = migrations.findLastIndex(({ name }) => done.has(name));
  const tooLate = migrations.find(({ name }, place) => place < lastDone && !done.has(name));
  if (tooLate !== undefined) {
    throw new CannotStart(
      `The migration ${tooLate.name} comes before ${migrations[lastDone]?.name ?? ''}, which is applied already. ` +
        'Give it a number after the last one.',
    );
  }
  return migrations.slice(lastDone + 1);
}

async function apply(client: pg.ClientBase, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('begin');
  try {
    const before = await transactionNumber(client);
    await client.query(sql);
    if ((await transactionNumber(client)) !== before) {
      throw new CannotStart(`The migration ${name} begins or commits a transaction of its own, which it must not.`);
    }
    await client.query(
      `insert into public._prisma_migrations
         (id, checksum, finished_at, migration_name, applied_steps_count)
       values ($1, $2, clock_timestamp(), $3, 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query('commit');
  } catch (failure) {
    await client.query('rollback');
    if (failure instanceof CannotStart) throw failure;
    throw new CannotStart(`The migration ${name} could not be applied, and nothing of it was: ${reasonOf(failure)}`);
  }
}

async function transactionNumber(client: pg.ClientBase): Promise<string | undefined> {
  const { rows } = await client.query<{ number: string }>('select pg_current_xact_id()::text as number');
  return rows[0]?.number;
}
