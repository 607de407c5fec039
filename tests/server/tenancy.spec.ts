import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import { makeReads, type Reads } from '../../apps/server/src/read/reads.js';
import { makeLogReader } from '../../apps/server/src/store/read-log.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';

// Two walls keep shops apart: the filter in the code, and row-level security beneath it. Each is looked at with the
// other one switched off: the code on a connection that row-level security does not bind, and bare SQL without a filter.
const canary = 'CANARYPLATE';

describe('two shops in one database', () => {
  let db: FreshDatabase;
  let mine: EngineShop;
  let theirs: EngineShop;
  let inMine: Awaited<ReturnType<typeof vehicleAndBay>>;
  let inTheirs: Awaited<ReturnType<typeof vehicleAndBay>>;
  beforeAll(async () => {
    db = await freshDatabase();
    mine = await engineShop(db.app);
    theirs = await engineShop(db.app);
    inMine = await vehicleAndBay(mine, 'HB 1');
    inTheirs = await vehicleAndBay(theirs, canary);
  });
  afterAll(() => db.drop());

  const owner = { personId: randomUUID(), name: 'Owner', roles: ['owner'] as const };
  const everyRead = (reads: Reads, shopId: string): Promise<unknown>[] => [
    reads.board(shopId, 'staff'),
    reads.board(shopId, 'wall'),
    reads.jobs(shopId, { state: 'open', limit: 200 }),
    reads.vehicles(shopId, { limit: 200 }),
    reads.partLines(shopId, { state: 'all', limit: 200 }),
    reads.orders(shopId, { limit: 200 }),
    reads.outstanding(shopId, { limit: 200 }),
    reads.bayTime(shopId, { from: '2026-01-01', to: '2026-01-02', segments: 'false' }),
    reads.find(shopId, { q: canary.slice(0, 4) }),
    reads.changeLog(shopId, { limit: 200 }),
    reads.changeLog(shopId, { limit: 200, vehicle: inTheirs.vehicleId }),
    reads.logReads(shopId, { limit: 200 }),
    reads.customers(shopId, { limit: 200 }),
    reads.imports(shopId),
    reads.people(shopId).then((people) => [...people]),
    reads.job(shopId, inTheirs.jobId, owner),
    reads.vehicle(shopId, inTheirs.vehicleId),
    makeLogReader(db.superuser).changesAfter(shopId, 0, 'staff', 1000),
  ];

  it('the code filter alone: no read of one shop shows the other', async () => {
    const seen = JSON.stringify(await Promise.all(everyRead(makeReads(db.superuser), mine.shopId)));
    expect(seen).not.toContain(canary);
    expect(seen).not.toContain(inTheirs.vehicleId);
    const own = JSON.stringify(await Promise.all(everyRead(makeReads(db.superuser), theirs.shopId)));
    expect(own).toContain(canary);
  });

  it('the code filter alone: no command reaches a row of the other shop', async () => {
    const unbound = await engineOn(db.superuser);
    const before = await count();
    const refused = [
      await unbound.refused('addLine', { jobId: inTheirs.jobId, title: 'Not mine' }),
      await unbound.refused('takeIntoBay', { jobId: inMine.jobId, bayId: inTheirs.bayId }),
      await unbound.refused('takeIntoBay', { jobId: inTheirs.jobId, bayId: inMine.bayId }),
      await unbound.refused('startWork', { lineId: inTheirs.lineId }),
      await unbound.refused('recordGoAhead', { lineId: inTheirs.lineId, version: 2, answer: 'declined' }),
      await unbound.refused('recordRolls', { vehicleId: inTheirs.vehicleId, rolls: false, mayBeDriven: false }),
      await unbound.refused('checkIn', {
        vehicleId: inTheirs.vehicleId,
        customer: { name: 'X' },
        concerns: [{ words: 'x' }],
      }),
    ];
    expect(refused).toEqual(refused.map(() => ['row.notFound']));
    expect(await count()).toEqual(before);
  });

  it('row-level security alone: bare SQL without any filter shows and changes the set shop only', async () => {
    const tables = await tenantTables();
    expect(tables.length).toBeGreaterThan(40);
    for (const table of tables) {
      const seen = await inShop(mine.shopId, (client) =>
        client.query<{ shop_id: string }>(`select distinct shop_id from "${table}"`),
      );
      expect([table, seen.rows.filter((row) => row.shop_id !== mine.shopId)]).toEqual([table, []]);
    }
    const changed = await inShop(mine.shopId, (client) =>
      client.query(`update vehicle set notes = 'x' where id = $1`, [inTheirs.vehicleId]),
    );
    expect(changed.rowCount).toBe(0);
    await expect(
      inShop(mine.shopId, (client) =>
        client.query(`update vehicle set shop_id = $1 where id = $2`, [theirs.shopId, inMine.vehicleId]),
      ),
    ).rejects.toMatchObject({ code: '42501' });
  });

  it('row-level security alone: nothing at all without a shop', async () => {
    for (const table of await tenantTables()) {
      const { rows } = await db.app.query<{ n: number }>(`select count(*) as n from "${table}"`);
      expect([table, rows[0]?.n]).toEqual([table, 0]);
    }
  });

  async function engineOn(pool: pg.Pool): Promise<EngineShop> {
    const { makeRunCommand } = await import('../../apps/server/src/engine/run-command.js');
    const { makeStore } = await import('../../apps/server/src/store/store.js');
    const { v7 } = await import('uuid');
    const run = makeRunCommand({ store: makeStore(pool), wake: () => undefined, newId: v7 });
    const { commands, inputFromWire } = await import('@holdfast/contract');
    const sender = mine.sender(mine.ownerId, ['owner']);
    return {
      ...mine,
      run,
      refused: async (name, wire) => {
        const input = inputFromWire(commands[name].schema.parse(wire));
        const answer = await run(sender, { name, input, key: randomUUID(), fingerprint: 'x', sentAt: null });
        if (answer.kind !== 'refused') throw new Error(`${name} was ${answer.kind}`);
        return answer.refusals.map((refusal) => refusal.code);
      },
    };
  }

  async function inShop<T>(shopId: string, work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
    const client = await db.app.connect();
    try {
      await client.query('begin');
      await client.query(`select set_config('app.shop_id', $1, true)`, [shopId]);
      return await work(client);
    } finally {
      await client.query('rollback');
      client.release();
    }
  }

  async function tenantTables(): Promise<string[]> {
    const { rows } = await db.superuser.query<{ table_name: string }>(
      `select table_name from information_schema.columns where table_schema = 'public' and column_name = 'shop_id' order by 1`,
    );
    return rows.map((row) => row.table_name);
  }

  async function count(): Promise<unknown> {
    const { rows } = await db.superuser.query('select shop_id, seq from head order by shop_id');
    return rows;
  }
});
