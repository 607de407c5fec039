import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { fileURLToPath } from 'node:url';
import { catalogueOf } from '../kit/catalogue.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { sqlOfSchema } from '../kit/schema-engine.js';

const schemaFolder = fileURLToPath(new URL('../../prisma/schema', import.meta.url));

describe('the schema of Prisma and the migrations', () => {
  let migrated: FreshDatabase;
  let described: FreshDatabase;

  beforeAll(async () => {
    [migrated, described] = await Promise.all([freshDatabase(), freshDatabase({ empty: true })]);
    await described.superuser.query(await sqlOfSchema(schemaFolder, described.databaseUrl));
  });

  afterAll(async () => {
    await Promise.all([migrated.drop(), described.drop()]);
  });

  it('describe the same tables, columns, keys and unique indexes', async () => {
    const fromMigrations = await catalogueOf(migrated.superuser);
    const fromSchema = await catalogueOf(described.superuser);
    expect(fromMigrations.length).toBeGreaterThan(100);
    expect({
      onlyInMigrations: fromMigrations.filter((said) => !fromSchema.includes(said)),
      onlyInSchema: fromSchema.filter((said) => !fromMigrations.includes(said)),
    }).toEqual({ onlyInMigrations: [], onlyInSchema: [] });
  });

  it('are told apart by a column, a default, a key or an index that only one of them has', async () => {
    const before = await catalogueOf(described.superuser);
    await described.superuser.query(`
      alter table directory.shop add column extra integer;
      alter table directory.shop alter column demo set default true;
      alter table directory.membership drop constraint membership_account_id_fkey;
      create unique index on directory.shop (demo) where demo`);
    const after = await catalogueOf(described.superuser);
    expect(after.filter((said) => !before.includes(said))).toEqual([
      'column directory.shop.demo boolean not null default true',
      'column directory.shop.extra integer',
      'unique index: CREATE UNIQUE ON directory.shop USING btree (demo) WHERE demo',
    ]);
    expect(before.filter((said) => !after.includes(said))).toEqual([
      'column directory.shop.demo boolean not null default false',
      'foreign key directory.membership: FOREIGN KEY (account_id) REFERENCES directory.account(id)',
    ]);
  });
});
