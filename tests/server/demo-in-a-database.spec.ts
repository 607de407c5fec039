import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Config } from '../../apps/server/src/config.js';
import { CannotStart } from '../../apps/server/src/database/cannot-start.js';
import { demoPassword, demoShop, owner } from '../../apps/server/src/demo/cast.js';
import { demoShopId } from '../../apps/server/src/demo/cast.js';
import { inventShop } from '../../apps/server/src/demo/invent.js';
import { demoDay, loadDemo } from '../../apps/server/src/demo/load-demo.js';
import type { RunningServer } from '../../apps/server/src/serve.js';
import { startServer } from '../../apps/server/src/start.js';
import { boardTables, encodeRow, visible } from '../../libs/board/src/index.js';
import type { BoardAnswer } from '../../libs/contract/src/index.js';
import { Rows } from '../../libs/domain/src/index.js';
import { signedIn } from '../kit/app.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';

const seed = 20_261;

describe('the demo in a database', () => {
  let database: FreshDatabase;
  let dataDir: string;
  const config = (demo: Config['demo']): Config => ({
    port: 0,
    host: '127.0.0.1',
    dataDir,
    databaseUrl: database.databaseUrl,
    demo,
    tls: undefined,
    logLevel: 'error',
    pepper: 'pepper of the tests, the same for every server of a run',
  });
  const start = (demo: Config['demo']) => startServer(config(demo), { loadDemo });
  const signIn = (server: RunningServer) =>
    signedIn(server.url, { shop: demoShop.name, name: owner.name, password: demoPassword });

  beforeAll(async () => {
    database = await freshDatabase();
    dataDir = mkdtempSync(join(tmpdir(), 'holdfast-demo-'));
  });
  afterAll(async () => {
    await database.drop();
    rmSync(dataDir, { recursive: true, force: true });
  });
  const headOf = async () => {
    const { rows } = await database.superuser.query<{ epoch: string; seq: number; shops: number }>(
      `select (select epoch from head where shop_id = $1) as epoch, (select seq from head where shop_id = $1)::int as seq, (select count(*) from directory.shop)::int as shops`,
      [demoShopId],
    );
    return rows[0];
  };

  it('is not loaded unasked into a database that DATABASE_URL names', async () => {
    const server = await start('unset');
    try {
      expect(server.demo).toBeNull();
      expect(server.setUpCode).not.toBeNull();
      expect((await headOf())?.shops).toBe(0);
    } finally {
      await server.stop();
    }
  });

  it('is loaded when DEMO=on says so: the snapshot is what is visible of the rows, the log has no gap', async () => {
    const began = performance.now();
    const server = await start('on');
    console.info(`started with the demo in ${Math.round(performance.now() - began)} ms`);
    try {
      const client = await signIn(server);
      const board = (await client.get('/api/board')).json as BoardAnswer;
      const { ledger } = inventShop(seed, demoDay(Date.now()));
      const shown = visible(Rows.of(ledger.all()), Date.parse(board.now));
      for (const table of boardTables('staff')) {
        const expected = [...(shown.get(table)?.values() ?? [])].map((row) => encodeRow(table, row, 'staff'));
        const byId = (list: readonly { readonly id: string }[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
        expect([table, byId(board.rows[table] ?? [])]).toEqual([table, byId(expected)]);
      }
      expect(board.seq).toBe(ledger.changes.length);
      const { rows } = await database.superuser.query<{ n: number; last: number; gaps: number }>(
        `select count(*)::int as n, max(seq)::int as last, count(*) filter (where seq <> n)::int as gaps from (select seq, row_number() over (order by seq) as n from change where shop_id = $1) c`,
        [demoShopId],
      );
      expect(rows[0]).toEqual({ n: ledger.changes.length, last: ledger.changes.length, gaps: 0 });
    } finally {
      await server.stop();
    }
  });

  it('goes on where it was at the next start, and is worked like any shop', async () => {
    const before = await headOf();
    const server = await start('unset');
    try {
      expect(server.demo?.signIns().people).toHaveLength(9);
      expect(await headOf()).toEqual(before);
      const client = await signIn(server);
      const { seq } = await client.accepted('addVehicle', {
        plate: 'HB 999 Z',
        description: 'Estate car',
        kind: 'light',
        drive: 'combustion',
      });
      expect(seq).toBe((before?.seq ?? 0) + 1);
    } finally {
      await server.stop();
    }
  });

  it('tells its passwords on loopback only, unless DEMO=on is written out', async () => {
    const away = { https: true, loopback: false, secure: true, address: '192.0.2.7' };
    for (const [demo, told] of [
      ['unset', false],
      ['on', true],
    ] as const) {
      const server = await start(demo);
      expect(server.demo?.isToldTo(away)).toBe(told);
      await server.stop();
    }
  });

  it('refuses to start as a real shop beside the demo, and as the demo beside a real shop', async () => {
    await expect(start('off')).rejects.toThrow(CannotStart);
    const other = await freshDatabase();
    try {
      await other.superuser.query(
        `insert into directory.shop (id, name, name_key, demo) values (gen_random_uuid(), 'A shop', 'ASHOP', false)`,
      );
      await expect(startServer({ ...config('on'), databaseUrl: other.databaseUrl }, { loadDemo })).rejects.toThrow(
        /never shares a database/,
      );
    } finally {
      await other.drop();
    }
  });
});
