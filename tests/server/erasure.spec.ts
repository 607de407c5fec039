import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type pg from 'pg';
import { bayTimeView } from '@holdfast/contract';
import { makeRunCommand } from '../../apps/server/src/engine/run-command.js';
import { PhotoFiles } from '../../apps/server/src/http/photo-files.js';
import { makeReads } from '../../apps/server/src/read/reads.js';
import { makeLogReader } from '../../apps/server/src/store/read-log.js';
import { makeStore } from '../../apps/server/src/store/store.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop } from '../kit/engine-shop.js';

// A customer whose name, telephone, mail, plate and VIN stand wherever the program and people put them: in columns, in free
// words, in a sheet, in the log's images of rows. After the erasure none of them is in any column of any table.
const canary = {
  name: 'Zephyrine Quillfeather',
  contact: 'Barnabas Quillfeather',
  phone: '0777 424 242',
  mail: 'barnabas@quillfeather.example',
  plate: 'QX 42 ZYQ',
  vin: 'WQX42ZYQ000424242',
};
const told = Object.values(canary);

/** Rows of any table that hold one of the words in a text, a list or a document, as `table.column`. */
async function found(db: pg.Pool, words: readonly string[]): Promise<string[]> {
  const { rows: columns } = await db.query<{ schema: string; table: string; column: string }>(
    `select table_schema as schema, table_name as "table", column_name as "column" from information_schema.columns
      where table_schema in ('public', 'directory') and (data_type in ('text', 'json', 'jsonb', 'ARRAY', 'character varying'))
      order by 1, 2, 3`,
  );
  expect(columns.length).toBeGreaterThan(100);
  const hits: string[] = [];
  for (const { schema, table, column } of columns) {
    const { rows } = await db.query<{ count: number }>(
      `select count(*)::int as count from "${schema}"."${table}" where exists (
         select from unnest($1::text[]) w where "${column}"::text ilike '%' || w || '%')`,
      [words],
    );
    if ((rows[0]?.count ?? 0) > 0) hits.push(`${table}.${column}`);
  }
  return hits;
}

describe('erasing the personal data of a customer', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  let customerId = '';
  let vehicleId = '';
  let jobId = '';
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  const version = async (table: string, id: string): Promise<number> => {
    const { rows } = await db.superuser.query<{ version: number }>(
      `select version from "${table}" where shop_id = $1 and id = $2`,
      [shop.shopId, id],
    );
    return rows[0]?.version ?? 0;
  };
  const made = async (name: Parameters<EngineShop['accept']>[0], table: string, input: object) =>
    (await shop.accept(name, input)).created[table] ?? '';

  /** What happened to whom of the shop, where and for how long: no name of a customer is in it. */
  const account = async () => {
    const { rows } = await db.superuser.query<Record<string, unknown>>(
      `select (select json_agg(json_build_array(number, arrived_at, ended_at, ended_how) order by number) from job where shop_id = $1) as jobs,
              (select json_agg(json_build_array(title, progress, price, started_at, ended_at) order by id) from work_line where shop_id = $1) as lines,
              (select json_agg(json_build_array(person_id, from_at, to_at) order by id) from clock where shop_id = $1) as clocks,
              (select json_agg(json_build_array(bay_id, spot, from_at, to_at) order by id) from spot_use where shop_id = $1) as stays`,
      [shop.shopId],
    );
    const today = new Date().toISOString().slice(0, 10);
    const view = bayTimeView.parse(
      await makeReads(db.app).bayTime(shop.shopId, { from: today, to: today, segments: 'false' }),
    );
    return { rows: rows[0], totals: view.bays.map(({ name, totals }) => ({ name, worked: totals.classMs.worked })) };
  };

  it('is asked for after a visit in which they stand everywhere', async () => {
    const bayId = await made('addBay', 'bay', {
      name: 'Flat',
      spots: 1,
      equipment: [{ kind: 'flat', inUse: true, grips: null }],
    });
    customerId = await made('addCustomer', 'customer', {
      name: canary.name,
      contacts: [{ name: canary.contact, phone: canary.phone, mail: canary.mail, mayAgreeAny: true }],
    });
    vehicleId = await made('addVehicle', 'vehicle', {
      customerId,
      plate: canary.plate,
      vin: canary.vin,
      description: `Van of ${canary.name}`,
      kind: 'light',
      drive: 'combustion',
      notes: `Key with ${canary.contact}`,
    });
    await shop.accept('correctVehicle', { vehicleId, version: 1, plate: `${canary.plate} 1`, words: 'Misread' });
    await shop.accept('correctVehicle', { vehicleId, version: 2, plate: canary.plate, words: 'Read again' });
    jobId = await made('checkIn', 'job', {
      vehicleId,
      concerns: [{ words: `${canary.contact} says ${canary.plate} knocks` }],
      boardNote: canary.phone,
      standingGoAheads: [{ kind: 'smallThings', upTo: '20.00', byName: canary.contact }],
    });
    const lineId = await made('addLine', 'workLine', { jobId, title: 'Look at it', price: '30.00' });
    await shop.accept('recordGoAhead', {
      lineId,
      version: 1,
      answer: 'given',
      byName: canary.contact,
      how: 'telephone',
      upTo: '30.00',
    });
    await shop.accept('recordContact', {
      vehicleId,
      jobId,
      way: 'telephone',
      withName: canary.contact,
      reached: true,
      answer: `Ring ${canary.phone}`,
      moveOf: 'shop',
    });
    await shop.accept('takeIntoBay', { jobId, bayId, movedByName: canary.contact, movedHow: 'towed' });
    await made('startWork', 'clock', { lineId });
    const content = 'c'.repeat(64);
    await db.superuser.query(
      `insert into upload (shop_id, content, width, height, bytes, person_id, uploaded_at) values ($1, $2, 10, 10, 100, $3, now())`,
      [shop.shopId, content, shop.ownerId],
    );
    const photo = { jobId, content, width: 10, height: 10, showsPeople: true, caption: canary.contact };
    await shop.accept('attachPhoto', photo);
    await shop.accept('openHold', {
      jobId,
      reason: 'information',
      words: `Wait for ${canary.name}`,
      moveOf: canary.name,
    });
    await shop.accept('finishLine', { lineId, version: await version('work_line', lineId) });
    const { rows } = await db.superuser.query<{ id: string }>('select id from concern where job_id = $1', [jobId]);
    const concernId = rows[0]?.id ?? '';
    await shop.accept('recordConcernOutcome', {
      concernId,
      version: 1,
      outcome: 'gone',
      conditions: 'Over the same kerb',
      words: `Heard by ${canary.contact}`,
    });
    expect(
      await shop.refused('erasePersonalData', {
        customerId,
        version: await version('customer', customerId),
        words: 'w',
      }),
    ).toEqual(['erase.visitHere']);
    await shop.accept('handBack', {
      jobId,
      version: await version('job', jobId),
      leavesBy: 'road',
      receivedBy: canary.contact,
      receivedHow: 'there',
    });
    const hits = await found(db.superuser, told);
    expect(hits).toEqual(
      expect.arrayContaining([
        'change_rows.rows',
        'change_rows.staff',
        'contact.phone',
        'customer.name',
        'sheet.content',
        'vehicle.plate',
      ]),
    );
  });

  it('leaves none of it in any table, and the account of the work as it was', async () => {
    const before = await account();
    const removed: string[] = [];
    const run = makeRunCommand({
      store: makeStore(db.app),
      wake: () => undefined,
      newId: randomUUID,
      erased: (_shopId, photos) => removed.push(...photos),
    });
    const input = { customerId, version: await version('customer', customerId), words: `Letter of ${canary.name}` };
    const sent = { name: 'erasePersonalData', input, key: randomUUID(), fingerprint: 'x', sentAt: null } as const;
    const answer = await run(shop.sender(shop.ownerId, ['owner']), sent);
    expect(answer.kind).toBe('accepted');
    expect(await found(db.superuser, [...told, canary.plate.replaceAll(' ', ''), 'Quillfeather'])).toEqual([]);
    expect(removed).toEqual(['c'.repeat(64)]);
    expect(await account()).toEqual(before);
  });

  it('takes the files of photos away in both sizes, also where one is not there', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-photos-'));
    const [gone, kept] = ['c'.repeat(64), 'd'.repeat(64)];
    mkdirSync(join(folder, 'shop'));
    for (const name of [`${gone}.jpg`, `${gone}.small.jpg`, `${kept}.jpg`])
      writeFileSync(join(folder, 'shop', name), 'x');
    await new PhotoFiles(folder).remove('shop', [gone, 'e'.repeat(64)]);
    expect(readdirSync(join(folder, 'shop'))).toEqual([`${kept}.jpg`]);
    rmSync(folder, { recursive: true });
  });

  it('keeps the log without a gap, and has clients that were away take a snapshot', async () => {
    const { rows } = await db.superuser.query<{ seq: number; changes: number; images: number }>(
      `select h.seq, (select count(*)::int from change c where c.shop_id = h.shop_id) as changes,
              (select count(*)::int from change_rows r where r.shop_id = h.shop_id) as images from head h where h.shop_id = $1`,
      [shop.shopId],
    );
    const [{ seq, changes, images } = { seq: 0, changes: 0, images: 0 }] = rows;
    expect([changes, images]).toEqual([seq, 1]);
    const log = makeLogReader(db.app);
    expect(await log.changesAfter(shop.shopId, seq - 2, 'staff', 10)).toBeNull();
    expect(await log.changesAfter(shop.shopId, seq - 1, 'staff', 10)).toHaveLength(1);
    expect(await shop.refused('takeBack', { seq })).toEqual(['change.hasOwnWayBack']);
  });

  it('shows who it was nowhere, and the vehicle with its history', async () => {
    const reads = makeReads(db.app);
    const views = [
      await reads.vehicle(shop.shopId, vehicleId),
      await reads.customer(shop.shopId, customerId),
      await reads.board(shop.shopId, 'staff'),
    ];
    for (const view of views) for (const word of told) expect(view).not.toContain(word);
    expect(views[0]).toContain('Look at it');
    expect(jobId).not.toBe('');
  });
});
