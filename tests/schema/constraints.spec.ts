import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';

// The database is the last guard. Each constraint is broken on purpose, by somebody who passes by all code: the copy of
// a good row with what must not be.
describe('the database refuses by itself', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  let other: EngineShop;
  let mine: Awaited<ReturnType<typeof vehicleAndBay>>;
  let theirs: Awaited<ReturnType<typeof vehicleAndBay>>;

  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
    other = await engineShop(db.app);
    mine = await vehicleAndBay(shop, 'HB 1');
    theirs = await vehicleAndBay(other, 'HB 2');
    await shop.accept('takeIntoBay', { jobId: mine.jobId, bayId: mine.bayId });
    await shop.accept('startWork', { lineId: mine.lineId });
    await shop.accept('openHold', { jobId: mine.jobId, reason: 'tool', words: 'Puller is lent' });
  });
  afterAll(() => db.drop());

  /** Copies a row of this shop with some columns set to other SQL; gives the constraint or the code that fired. */
  async function copied(table: string, change: Readonly<Record<string, string>>): Promise<string> {
    const { rows } = await db.superuser.query<{ column_name: string }>(
      `select column_name from information_schema.columns where table_schema = 'public' and table_name = $1 and is_generated = 'NEVER'`,
      [table],
    );
    const columns = rows.map((row) => row.column_name);
    const values = columns.map((name) => change[name] ?? (name === 'id' ? `'${randomUUID()}'` : `t."${name}"`));
    try {
      await db.superuser.query(
        `insert into "${table}" (${columns.map((name) => `"${name}"`).join(', ')}) select ${values.join(', ')} from "${table}" t where t.shop_id = '${shop.shopId}' and not t.void order by t.recorded_at desc limit 1`.replace(
          columns.includes('recorded_at') ? '' : ' order by t.recorded_at desc',
          '',
        ),
      );
    } catch (failure) {
      if (failure instanceof pg.DatabaseError) return failure.constraint ?? failure.code ?? 'unknown';
      throw failure;
    }
    return 'accepted';
  }

  it('two vehicles in one spot at once', async () => {
    expect(await copied('spot_use', { from_at: `t.from_at + interval '1 second'` })).toBe('spot_use_once');
  });
  it('a vehicle in two places at once', async () => {
    expect(await copied('place', { from_at: `t.from_at + interval '1 second'` })).toBe('place_once');
  });
  it('a person on two clocks at once', async () => {
    expect(await copied('clock', { from_at: `t.from_at + interval '1 second'` })).toBe('clock_once');
  });
  it('a person in two states of presence at once', async () => {
    expect(await copied('attendance', { from_at: `t.from_at + interval '1 second'` })).toBe('attendance_once');
  });
  it('but a void row stands in nobody’s way', async () => {
    expect(await copied('clock', { from_at: `t.from_at + interval '1 second'`, void: 'true' })).toBe('accepted');
  });
  // An empty range overlaps nothing, so without the check it would slip past the exclusion constraint.
  it.each([
    ['place', 'place_ends_after_start'],
    ['spot_use', 'spot_use_ends_after_start'],
    ['clock', 'clock_ends_after_start'],
    ['attendance', 'attendance_ends_after_start'],
  ])('an interval of %s that ends as it starts', async (table, constraint) => {
    expect(await copied(table, { to_at: 't.from_at' })).toBe(constraint);
  });
  it.each([
    ['place', '22000'],
    ['spot_use', '22000'],
    ['clock', '22000'],
    ['attendance', '22000'],
    ['hold', 'hold_ends_after_start'],
  ])('an interval of %s that ends before it starts', async (table, fired) => {
    expect(await copied(table, { to_at: `t.from_at - interval '1 hour'` })).toBe(fired);
  });
  it('a second open visit of one vehicle', async () => {
    expect(await copied('job', { number: '999' })).toBe('job_open_once');
  });
  it('a job number twice', async () => {
    expect(await copied('job', { ended_at: 'now()' })).toBe('job_shop_id_number_key');
  });
  it('a word that is not in its closed list', async () => {
    expect(await copied('hold', { reason: `'weather'` })).toBe('hold_reason_check');
  });
  it('a row that names a row of another shop', async () => {
    expect(await copied('hold', { job_id: `'${theirs.jobId}'` })).toBe('hold_job_id_fkey');
    expect(await copied('clock', { line_id: `'${theirs.lineId}'`, void: 'true' })).toBe('clock_line_id_fkey');
  });

  it('every foreign key between tables of a shop carries the shop', async () => {
    const { rows } = await db.superuser.query<{ conname: string }>(
      `select c.conname from pg_constraint c join pg_namespace n on n.oid = c.connamespace
       where c.contype = 'f' and n.nspname = 'public' and not exists (
         select 1 from unnest(c.conkey) k join pg_attribute a on a.attrelid = c.conrelid and a.attnum = k where a.attname = 'shop_id')`,
    );
    expect(rows).toEqual([]);
  });

  it('the application may neither delete rows nor change the log', async () => {
    const attempts = [
      ['delete from job', '42501'],
      ['delete from change', '42501'],
      ['update change set command = command', '42501'],
      ['update change_rows set staff = staff', '42501'],
      ['truncate job', '42501'],
    ] as const;
    for (const [sql, code] of attempts) {
      await expect(db.app.query(sql)).rejects.toMatchObject({ code });
    }
  });
});
