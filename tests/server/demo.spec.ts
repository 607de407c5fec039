import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Config } from '../../apps/server/src/config.js';
import { CannotStart } from '../../apps/server/src/database/cannot-start.js';
import { demoPassword, demoShop, owner } from '../../apps/server/src/demo/cast.js';
import { demoShopId, inventShop, type Invention } from '../../apps/server/src/demo/invent.js';
import { demoDay, loadDemo } from '../../apps/server/src/demo/load-demo.js';
import { passwordProblem } from '../../apps/server/src/auth/password-rules.js';
import { startServer, type RunningServer } from '../../apps/server/src/start.js';
import { boardTables, encodeRow, visible } from '../../libs/board/src/index.js';
import type { BoardAnswer } from '../../libs/contract/src/index.js';
import { Rows, tierOf } from '../../libs/domain/src/index.js';
import { signedIn } from '../kit/app.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';

const seed = 20_261;
const today = '2026-11-25';

describe('the invented shop', () => {
  let shop: Invention;
  beforeAll(() => {
    const began = performance.now();
    shop = inventShop(seed, today);
    console.info(`invented in ${Math.round(performance.now() - began)} ms: ${shop.ledger.changes.length} changes`);
  });
  const rows = () => shop.ledger.atHand;
  const here = () => rows().list('job', (job) => job.endedAt === null);
  const standing = () => rows().list('spotUse', (use) => use.toAt === null);

  it('is the same for one seed and one day, and another one for another seed', () => {
    const digest = ({ ledger }: Invention) =>
      createHash('sha256')
        .update(JSON.stringify([ledger.all(), ledger.changes]))
        .digest('hex');
    expect(digest(inventShop(seed, today))).toBe(digest(shop));
    expect(digest(inventShop(seed + 1, today))).not.toBe(digest(shop));
  });

  // The rules refuse nothing on these days either: summer and winter, clocks that change, a new year, a Monday.
  it.each(['2027-01-04', '2027-03-30', '2026-11-26', '2027-04-02', '2026-10-26'])(
    'is accepted whole by the rules on %s, with the same morning',
    (day) => {
      const other = inventShop(seed, day).ledger.atHand;
      expect(other.list('job', (job) => job.endedAt === null)).toHaveLength(here().length);
      expect(other.list('spotUse', (use) => use.toAt === null)).toHaveLength(standing().length);
    },
  );

  it('is numbered without gaps, in the order of its times, over three months', () => {
    const { changes } = shop.ledger;
    expect(changes.map(({ seq }) => seq)).toEqual(changes.map((_, at) => at + 1));
    expect(changes.every((change, at) => change.recordedAt > (changes[at - 1]?.recordedAt ?? 0))).toBe(true);
    expect((shop.now - (changes[0]?.recordedAt ?? 0)) / 86_400_000).toBeGreaterThan(90);
    expect(changes.at(-1)?.recordedAt).toBeLessThanOrEqual(shop.now);
  });

  it('shows a morning with work, waits of several reasons, a bay without a reason and an empty one', () => {
    const running = rows().list('clock', (clock) => clock.toAt === null);
    expect(running.filter(({ bench }) => bench)).toHaveLength(1);
    expect(running.filter(({ bench }) => !bench)).toHaveLength(2);
    expect(
      new Set(
        rows()
          .list('hold', (hold) => hold.toAt === null)
          .map(({ reason }) => reason),
      ),
    ).toEqual(new Set(['parts', 'goAhead', 'collection', 'information']));
    expect(new Set(standing().map((use) => rows().get('bay', use.bayId).name))).toEqual(
      new Set(['North lift', 'South lift', 'Long lift', 'Floor by the gate']),
    );
    expect(here().length - standing().length).toBeGreaterThanOrEqual(6);
  });

  it('shows one contested card, tags and cautions, a promise that is late, parts that are late and parts that came', () => {
    expect(rows().list('report', (report) => report.state === 'contested')).toHaveLength(1);
    const cautions = rows()
      .list('caution', (one) => one.endedAt === null)
      .map(({ code }) => code);
    expect(cautions).toEqual(expect.arrayContaining(['brakesOpen', 'highVoltageDead', 'electricDrive', 'doNotStart']));
    expect(here().filter((job) => job.promisedAt !== null && job.promisedAt < shop.now).length).toBeGreaterThanOrEqual(
      1,
    );
    const parts = rows().list('partLine', (part) => here().some((job) => job.id === part.jobId));
    expect(parts.filter((part) => part.state === 'ordered' && (part.dueOn ?? today) < today)).toHaveLength(1);
    expect(parts.filter((part) => part.state === 'arrived')).toHaveLength(1);
  });

  it('tells of the van: three fixes of tier 2 with second checks and follow-ups, and the salt season before the lens', () => {
    const van = standing().find((use) => rows().get('bay', use.bayId).name === 'South lift');
    const fixes = rows().list('temporaryFix', (fix) => fix.vehicleId === van?.vehicleId);
    expect(fixes.map(({ kind }) => kind)).toEqual(['leftOff', 'heldBy', 'leftOpen']);
    for (const fix of fixes) {
      expect(tierOf(fix.system)).toBe(2);
      expect(rows().list('secondCheck', (check) => check.temporaryFixId === fix.id)).toHaveLength(1);
      expect(rows().get('followUp', fix.followUpId ?? '').state).toBe('open');
    }
    const season = rows().get('season', fixes[2]?.seasonId ?? '');
    const lens = rows().list(
      'partLine',
      (part) => part.vehicleId === van?.vehicleId && part.description.startsWith('Lens'),
    )[0];
    expect(lens?.dueOn?.slice(5).localeCompare(season.fromDay)).toBe(1);
    const unended = new Set(
      rows()
        .list('temporaryFix', (fix) => fix.state !== 'ended')
        .map(({ vehicleId }) => vehicleId),
    );
    expect(here().filter((job) => unended.has(job.vehicleId))).toHaveLength(3);
  });

  it('has a past of every kind: slipped, partial, damaged and wrong deliveries, comebacks, put-off work, mended fixes', () => {
    const all = Rows.of(shop.ledger.all());
    expect(new Set(all.list('arrival').map(({ verdict }) => verdict))).toEqual(new Set(['good', 'damaged', 'wrong']));
    expect(all.list('dueIn', (due) => due.ordinal > 1).length).toBeGreaterThan(10);
    expect(all.list('job', (job) => job.kind === 'comeback').length).toBeGreaterThan(2);
    expect(all.list('followUp', (one) => one.kind === 'deferred').length).toBeGreaterThan(5);
    expect(all.list('temporaryFix', (fix) => fix.endedHow === 'repaired').length).toBeGreaterThan(3);
    expect(all.list('sheet').length).toBeGreaterThan(300);
  });

  it('takes the last day that the shop was open where today it is closed', () => {
    expect(demoDay(Date.parse('2026-11-28T12:00:00Z'))).toBe('2026-11-27');
    expect(demoDay(Date.parse('2026-11-25T12:00:00Z'))).toBe('2026-11-25');
  });

  it('has a password that the rules for passwords take', () => {
    expect(passwordProblem(demoPassword, [demoShop.name, owner.name])).toBeNull();
  });
});

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
