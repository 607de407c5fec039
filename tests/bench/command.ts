/**
 * `command`: HTTP to committed. p50 at 8 clients in one shop; commands per second at 32 clients over 50 shops; CPU of
 * the server for each. Both servers get the same requests from the same client code, in turns, on one PostgreSQL.
 */
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { cpuMsOf, freePort, newShop, request, startServerProcess, vehicleHere } from '../kit/server-process.js';
import { benchDatabase, type BenchLine, percentile, round } from './measure.js';

interface Target {
  readonly url: string;
  readonly pid: number;
  readonly jobs: readonly {
    readonly shopId: string;
    readonly jobId: string;
    readonly token: string;
    version: number;
  }[];
}

interface Run {
  readonly p50: number;
  readonly perSecond: number;
  readonly cpuPerCommand: number;
}

/** Short turns and many of them: whatever else the machine does then hits both servers alike. */
const secondsPerRun = 1;
const turns = 12;
const shopsInAll = 50;

async function load(target: Target, jobs: Target['jobs'], seconds: number): Promise<Run> {
  const times: number[] = [];
  const end = performance.now() + seconds * 1000;
  const cpu = cpuMsOf(target.pid);
  const started = performance.now();
  await Promise.all(
    jobs.map(async (job) => {
      while (performance.now() < end) {
        const from = performance.now();
        const promisedAt = new Date(Date.now() + 86_400_000 + times.length * 60_000).toISOString();
        const reply = await request('POST', `${target.url}/api/commands/changePromisedTime`, {
          token: job.token,
          headers: { 'idempotency-key': randomUUID() },
          body:
            target.pid === barePid
              ? { shopId: job.shopId, jobId: job.jobId, version: job.version, promisedAt }
              : { jobId: job.jobId, version: job.version, promisedAt },
        });
        if (reply.status !== 200) throw new Error(`${String(reply.status)} ${JSON.stringify(reply.body)}`);
        job.version += 1;
        times.push(performance.now() - from);
      }
    }),
  );
  const tookMs = performance.now() - started;
  times.sort((a, b) => a - b);
  return {
    p50: percentile(times, 0.5),
    perSecond: (times.length * 1000) / tookMs,
    cpuPerCommand: (cpuMsOf(target.pid) - cpu) / times.length,
  };
}

let barePid = 0;
const median = (values: readonly number[]) =>
  percentile(
    [...values].sort((a, b) => a - b),
    0.5,
  );

/** Runs of the two in turns, so that slow drift of the machine hits both; medians of each figure. */
async function compare(ours: Target, bare: Target, pick: (target: Target) => Target['jobs']) {
  const runs = { ours: [] as Run[], bare: [] as Run[] };
  await load(bare, pick(bare), 1);
  await load(ours, pick(ours), 2);
  for (let turn = 0; turn < turns; turn += 1) {
    runs.bare.push(await load(bare, pick(bare), secondsPerRun));
    runs.ours.push(await load(ours, pick(ours), secondsPerRun));
  }
  const of = (list: readonly Run[]): Run => ({
    p50: median(list.map((run) => run.p50)),
    perSecond: median(list.map((run) => run.perSecond)),
    cpuPerCommand: median(list.map((run) => run.cpuPerCommand)),
  });
  return { ours: of(runs.ours), bare: of(runs.bare) };
}

async function bareTarget(bareUrl: string, count: { shops: number; jobsInFirst: number }) {
  const port = await freePort();
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/bench/bare-command-server.ts'], {
    env: { ...process.env, PORT: String(port), BARE_URL: bareUrl, NODE_ENV: 'production' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise<void>((resolve) => child.stdout.once('data', () => resolve()));
  const url = `http://127.0.0.1:${String(port)}`;
  const jobs: Target['jobs'][number][] = [];
  for (let shop = 0; shop < count.shops; shop += 1) {
    const shopId = randomUUID();
    for (let job = 0; job < (shop === 0 ? count.jobsInFirst : 1); job += 1) {
      const jobId = randomUUID();
      await request('POST', `${url}/job`, { body: { shopId, jobId } });
      jobs.push({ shopId, jobId, token: '', version: 1 });
    }
  }
  barePid = child.pid ?? 0;
  return { target: { url, pid: barePid, jobs }, stop: () => child.kill('SIGKILL') };
}

export async function benchCommand(): Promise<BenchLine> {
  const database = await benchDatabase();
  const server = await startServerProcess({ dataDir: database.dataDir, databaseUrl: database.databaseUrl });
  const bare = await bareTarget(database.bareUrl, { shops: shopsInAll, jobsInFirst: 8 });
  try {
    const jobs: Target['jobs'][number][] = [];
    for (let at = 0; at < shopsInAll; at += 1) {
      const shop = await newShop(server.url, `Slipway ${String(at)}`);
      for (let job = 0; job < (at === 0 ? 8 : 1); job += 1) {
        const { jobId } = await vehicleHere(server.url, shop.token, `HB ${String(at)} ${String(job)}`);
        jobs.push({ shopId: '', jobId, token: shop.token, version: 1 });
      }
    }
    const ours: Target = { url: server.url, pid: server.pid, jobs };
    const oneShop = await compare(ours, bare.target, (target) => target.jobs.slice(0, 8));
    const manyShops = await compare(ours, bare.target, (target) => target.jobs.slice(7, 39));
    const ratio = round(oneShop.ours.p50 / oneShop.bare.p50);
    const throughput = round(manyShops.ours.perSecond / manyShops.bare.perSecond);
    const cpu = round(manyShops.ours.cpuPerCommand / manyShops.bare.cpuPerCommand);
    return {
      name: 'command',
      p50Ms: round(oneShop.ours.p50),
      bareP50Ms: round(oneShop.bare.p50),
      perSecond: Math.round(manyShops.ours.perSecond),
      barePerSecond: Math.round(manyShops.bare.perSecond),
      cpuMsPerCommand: round(manyShops.ours.cpuPerCommand, 3),
      bareCpuMsPerCommand: round(manyShops.bare.cpuPerCommand, 3),
      ratio,
      throughputRatio: throughput,
      cpuRatio: cpu,
      target:
        'p50 ≤ 1.5 × bare at 8 clients in one shop; ≥ 0.6 × its throughput at 32 clients over 50 shops; CPU ≤ 2.5 ×',
      holds: ratio <= 1.5 && throughput >= 0.6 && cpu <= 2.5,
    };
  } finally {
    bare.stop();
    await server.stop();
    await database.stop();
  }
}
