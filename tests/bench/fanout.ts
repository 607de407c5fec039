/**
 * `fanout`: from the moment a commit was acknowledged to the last of 500 sockets that has it. Ours: commands go to one
 * server process, the sockets hang on another one on the same database, which is woken by LISTEN as the baseline is.
 * All 500 clients live in this process, for both, so much of the time is theirs.
 */
import { spawn } from 'node:child_process';
import pg from 'pg';
import {
  command,
  freePort,
  memoryOf,
  newShop,
  request,
  signIn,
  startServerProcess,
  vehicleHere,
} from '../kit/server-process.js';
import { benchDatabase, type BenchLine, percentile, round } from './measure.js';
import { openBare, openLive, type ThinClients } from './thin-sockets.js';

const sockets = 500;
const socketsPerSession = 20;
const broadcasts = 150;
const pauseMs = 40;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function measured(clients: ThinClients, write: (at: number) => Promise<number>): Promise<number[]> {
  const times: number[] = [];
  for (let at = 0; at < broadcasts + 20; at += 1) {
    const seq = await write(at);
    const committed = performance.now();
    const last = await clients.lastReceipt(seq);
    if (at >= 20) times.push(Math.max(0, last - committed));
    await pause(pauseMs);
  }
  return times.sort((a, b) => a - b);
}

async function bareRun(bareUrl: string): Promise<number[]> {
  const port = await freePort();
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/bench/bare-fanout-server.ts'], {
    env: { ...process.env, PORT: String(port), BARE_URL: bareUrl },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise<void>((resolve) => child.stdout.once('data', () => resolve()));
  const clients = await openBare(`ws://127.0.0.1:${String(port)}`, sockets);
  const writer = new pg.Client({ connectionString: bareUrl });
  await writer.connect();
  try {
    return await measured(clients, async (at) => {
      const seq = at + 1;
      const text = JSON.stringify({ seq, text: 'x'.repeat(700) });
      await writer.query({ name: 'put', text: 'insert into feed values ($1, $2)', values: [seq, text] });
      // As ours: the notice is sent after the commit, outside its transaction, and is not waited for.
      void writer.query({ name: 'say', text: `select pg_notify('feed', $1)`, values: [String(seq)] });
      return seq;
    });
  } finally {
    clients.close();
    await writer.end();
    child.kill('SIGKILL');
  }
}

export async function benchFanout(): Promise<BenchLine> {
  const database = await benchDatabase();
  const takes = await startServerProcess({ dataDir: database.dataDir, databaseUrl: database.databaseUrl });
  const tells = await startServerProcess({ dataDir: database.dataDir, databaseUrl: database.databaseUrl });
  try {
    const shop = await newShop(takes.url, 'Slipway');
    const { jobId } = await vehicleHere(takes.url, shop.token, 'HB 500');
    const tokens: string[] = [];
    for (let at = 0; at < sockets / socketsPerSession; at += 1) {
      tokens.push(await signIn(tells.url, shop.shop, shop.owner.name, shop.owner.password));
    }
    const board = await request<{ epoch: string; seq: number; contract: number }>('GET', `${tells.url}/api/board`, {
      token: shop.token,
    });
    const before = memoryOf(tells.pid);
    const { epoch, seq, contract } = board.body;
    const clients = await openLive({ url: tells.url, tokens, resume: { epoch, after: seq, contract } }, sockets);
    await pause(2_000);
    const perSocketKb = (memoryOf(tells.pid) - before) / sockets / 1024;
    let version = 1;
    const ours = await measured(clients, async () => {
      const promisedAt = new Date(Date.now() + 86_400_000 + version * 60_000).toISOString();
      const answer = await command(takes.url, shop.token, 'changePromisedTime', { jobId, version, promisedAt });
      version += 1;
      return answer.seq;
    });
    clients.close();
    const bare = await bareRun(database.bareUrl);
    const ratio = round(percentile(ours, 0.99) / percentile(bare, 0.99));
    return {
      name: 'fanout',
      sockets,
      p50Ms: round(percentile(ours, 0.5)),
      bareP50Ms: round(percentile(bare, 0.5)),
      p99Ms: round(percentile(ours, 0.99)),
      bareP99Ms: round(percentile(bare, 0.99)),
      perSocketKb: round(perSocketKb, 1),
      ratio,
      target: 'p99 ≤ 1.5 × bare ws; ≤ 60 kB for each socket',
      holds: ratio <= 1.5 && perSocketKb <= 60,
    };
  } finally {
    await tells.stop();
    await takes.stop();
    await database.stop();
  }
}
