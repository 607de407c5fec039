import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { selfCheck } from '../../apps/server/src/database/self-check.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';

const wall = (table: string) => `
  alter table ${table} enable row level security, force row level security;
  create policy wall on ${table} as restrictive to holdfast_app using (shop_id = app.shop_id());`;

/** One gap on purpose, and what the check must say of it. */
const gaps: readonly [sql: string, sentence: string][] = [
  ['create table gap (id int)', 'The table gap has no shop_id that is always filled in.'],
  [`create table gap (shop_id uuid); ${wall('gap')}`, 'The table gap has no shop_id that is always filled in.'],
  ['alter table bay disable row level security', 'The table bay is not under forced row-level security.'],
  ['alter table bay no force row level security', 'The table bay is not under forced row-level security.'],
  [
    `do $$ declare p record; begin
       for p in select polname from pg_policy where polrelid = 'bay'::regclass and not polpermissive loop
         execute format('drop policy %I on bay', p.polname);
       end loop; end $$`,
    'The table bay has no restrictive policy for holdfast_app.',
  ],
  [
    `create unique index gap_key on bay (id); alter table bay_spec add constraint gap foreign key (bay_id) references bay (id)`,
    'The foreign key gap of bay_spec does not carry shop_id.',
  ],
  ['create unique index gap on bay (id, shop_id)', 'The unique index gap of bay does not start with shop_id.'],
  ['create view gap as select * from bay', `The view gap reads with its owner's rights (security_invoker is not set).`],
  [
    'create materialized view gap as select * from bay; grant select on gap to holdfast_app',
    'The materialised view gap can be read by holdfast_app and knows no row-level security.',
  ],
  [
    `create function gap() returns bigint security definer language sql as 'select count(*) from bay'`,
    `The function gap() runs with its owner's rights and is not on the list of those that may.`,
  ],
  [
    'grant truncate on bay to holdfast_app',
    'The role holdfast_app may empty the table bay, which row-level security does not govern.',
  ],
  [
    'alter table bay owner to holdfast_app',
    'The role holdfast_app owns tables, and an owner can lift row-level security.',
  ],
];

describe('the check of the wall between shops', () => {
  let database: FreshDatabase;

  beforeAll(async () => {
    database = await freshDatabase();
  });

  afterAll(async () => {
    await database.drop();
  });

  it('finds no gap in the schema of the migrations', async () => {
    expect(await selfCheck(database.app)).toEqual([]);
  });

  it.each(gaps)('finds the gap that is made by: %s', async (sql, sentence) => {
    const broken = await freshDatabase();
    try {
      await broken.superuser.query(sql);
      expect(await selfCheck(broken.app)).toContain(sentence);
    } finally {
      await broken.drop();
    }
  });
});
