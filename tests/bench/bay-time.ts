/**
 * `bay-time`: the account of one shop of ten bays over one year, rows read and all, against one SQL query with
 * multiranges that gives the same classes over the same rows (tests/kit/bay-time-sql.ts); the two answers are compared
 * before either is timed. Then ours alone over 1, 2, 4 and 8 years, each in a shop that is so old.
 */
import { makePool, openDatabase, withShop } from '../../apps/server/src/database/pools.js';
import { roleUrls } from '../../apps/server/src/database/roles.js';
import { readBayTime } from '../../apps/server/src/read/bay-time.js';
import { makeShopOf, type ShopOf } from '../../apps/server/src/read/shop-of.js';
import { parseArgs } from 'node:util';
import type pg from 'pg';
import { inventBayTimeShop } from '../kit/bay-time-shop.js';
import { bayTimeInSql } from '../kit/bay-time-sql.js';
import { cpuMsOf } from '../kit/server-process.js';
import { storeBayTimeShop } from '../kit/store-bay-time-shop.js';
import { type BenchDatabase, benchDatabase, type BenchLine, percentile, round } from './measure.js';

const turns = 9;
const growthTurns = 3;
const bays = 10;
const allYears = [1, 2, 4, 8] as const;
const lastYear = 2024;
const now = Date.parse('2025-02-01T12:00:00Z');
const silent = { info: () => undefined, warn: () => undefined };

/** A stored shop; its rows are not kept, so that they are no weight on the collector while it is timed. */
interface Asked {
  readonly pool: pg.Pool;
  readonly shopOf: ShopOf;
  readonly shopId: string;
  readonly rows: number;
  readonly query: { readonly from: string; readonly to: string; readonly segments: 'false' };
}

async function storedShop(pool: pg.Pool, shopOf: ShopOf, count: number): Promise<Asked> {
  const query = { from: `${lastYear + 1 - count}-01-02`, to: `${lastYear}-12-31`, segments: 'false' } as const;
  const shop = inventBayTimeShop({ seed: count, bays, firstDay: query.from, lastDay: query.to });
  await storeBayTimeShop(pool, shop, now);
  const rows = Object.values(shop.rows).reduce((sum, list) => sum + list.length, 0);
  return { pool, shopOf, shopId: shop.shopId, rows, query };
}

async function ours({ pool, shopOf, shopId, query }: Asked) {
  const view = await readBayTime(pool, shopOf, shopId, query);
  if (!view) throw new Error('The shop is not there.');
  return view;
}

/** The working days of these years begin and end at midnight in London, so no calendar is needed for the window. */
const theirs = ({ pool, shopId, query }: Asked) => {
  const window = { from: Date.parse(`${query.from}T00:00:00Z`), to: Date.parse(`${query.to}T24:00:00Z`) };
  return withShop(pool, shopId, (client) => bayTimeInSql(client, shopId, window, now));
};

const sorted = (sums: Readonly<Record<string, number>>) =>
  JSON.stringify(
    Object.entries(sums)
      .filter(([, ms]) => ms !== 0)
      .sort(),
  );

async function refuseDifference(asked: Asked): Promise<void> {
  const [view, bySql] = [await ours(asked), await theirs(asked)];
  for (const { bayId, totals } of view.bays) {
    const other = bySql.get(bayId);
    const same =
      sorted(totals.classMs) === sorted(other?.classMs ?? {}) && sorted(totals.heldMs) === sorted(other?.heldMs ?? {});
    if (!same) throw new Error(`The two disagree about bay ${bayId}: ${JSON.stringify([totals, other])}`);
  }
}

interface Cost {
  readonly wallMs: number;
  /** of this process and of the one PostgreSQL process that serves it: what else the machine does is not in it */
  readonly cpuMs: number;
}

const middle = (list: number[]) =>
  percentile(
    list.sort((a, b) => a - b),
    0.5,
  );

/** Medians of all, run in turns so that whatever else the machine does hits them alike. */
async function medians(pool: pg.Pool, works: readonly (() => Promise<unknown>)[], times: number): Promise<Cost[]> {
  const backend = (await pool.query<{ pid: number }>('select pg_backend_pid() as pid')).rows[0]?.pid ?? 0;
  const cpuMs = () => (process.cpuUsage().user + process.cpuUsage().system) / 1000 + cpuMsOf(backend);
  const took = works.map((): Cost[] => []);
  for (let turn = -1; turn < times; turn += 1) {
    for (const [at, work] of works.entries()) {
      const from = { wallMs: performance.now(), cpuMs: cpuMs() };
      await work();
      const cost = { wallMs: performance.now() - from.wallMs, cpuMs: cpuMs() - from.cpuMs };
      if (turn >= 0) took[at]?.push(cost);
    }
  }
  return took.map((list) => ({
    wallMs: middle(list.map((one) => one.wallMs)),
    cpuMs: middle(list.map((one) => one.cpuMs)),
  }));
}

/** As the server reads, but without its limit on the time of a statement: a busy machine is no reason to fail here. */
async function patientPool({ databaseUrl, dataDir }: BenchDatabase): Promise<pg.Pool> {
  const url = new URL((await roleUrls(databaseUrl, dataDir)).app);
  url.searchParams.set('options', '-c statement_timeout=120s -c idle_in_transaction_session_timeout=120s');
  return makePool(url.href, 1, silent);
}

/** `--years N`: growth is looked at up to so many years only, 8 where left out. */
export async function benchBayTime(options: readonly string[] = []): Promise<BenchLine> {
  const { values } = parseArgs({ args: [...options], options: { years: { type: 'string', default: '8' } } });
  const years = allYears.filter((count) => count <= Number(values.years));
  const server = await benchDatabase();
  const database = await openDatabase({ dataDir: server.dataDir, databaseUrl: server.databaseUrl }, silent);
  const pool = await patientPool(server);
  try {
    const shopOf = makeShopOf();
    const shops: Asked[] = [];
    for (const count of years) shops.push(await storedShop(pool, shopOf, count));
    await database.analyse();
    const [year] = shops;
    if (!year) throw new Error('There is no shop of one year.');
    await refuseDifference(year);
    const [own, sql] = await medians(pool, [() => ours(year), () => theirs(year)], turns);
    if (!own || !sql) throw new Error('Two were timed.');
    const growth = await medians(
      pool,
      shops.map((asked) => () => ours(asked)),
      growthTurns,
    );
    const perYear = growth.map(({ cpuMs }, at) => cpuMs / (years[at] ?? 1));
    const ratio = round(own.wallMs / sql.wallMs);
    const growthFactor = round(Math.max(...perYear) / (perYear[0] ?? NaN));
    const byYears = (of: (cost: Cost) => number) =>
      Object.fromEntries(growth.map((cost, at) => [String(years[at]), round(of(cost), 1)]));
    return {
      name: 'bay-time',
      rowsInOneYear: year.rows,
      oursMs: round(own.wallMs, 1),
      sqlMs: round(sql.wallMs, 1),
      ratio,
      cpuRatio: round(own.cpuMs / sql.cpuMs),
      msByYears: byYears(({ wallMs }) => wallMs),
      cpuMsByYears: byYears(({ cpuMs }) => cpuMs),
      growthFactor,
      target: 'one year ≤ 1.2 × the SQL query; CPU for a year of 2, 4, 8 ≤ 1.5 × that of one alone',
      holds: ratio <= 1.2 && growthFactor <= 1.5,
    };
  } finally {
    await pool.end();
    await database.stop();
    await server.stop();
  }
}
