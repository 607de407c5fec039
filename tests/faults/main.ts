/**
 * `npm run faults -- --minutes M --seed S`: kill −9 of the server and of PostgreSQL under load, then the account.
 *
 * Clients send commands, each with its key; when the line breaks they cannot know whether a command was carried out,
 * so they send it again with the same key until it is answered. At the end every acknowledged key is sent once more:
 * it must be answered byte for byte as before (else it was lost), what it made must be there once (else doubled), the
 * log must have no gap, and the clients that watched must have the board that a fresh snapshot gives. Prints one JSON
 * line; exits 1 unless all but the first count are 0.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import {
  freePort,
  newShop,
  request,
  type Reply,
  type ServerProcess,
  startServerProcess,
  vehicleHere,
} from '../kit/server-process.js';
import { watchBoard } from './watcher.js';

const { values: wanted } = parseArgs({
  options: { minutes: { type: 'string', default: '1' }, seed: { type: 'string', default: '1' } },
});

/** Lehmer's generator (Park and Miller 1988, multiplier 48271): the same kills for the same seed. */
function seeded(seed: number): () => number {
  let state = (Math.abs(Math.trunc(seed)) % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

interface Acknowledged {
  readonly name: string;
  readonly key: string;
  readonly body: unknown;
  readonly answer: string;
  readonly words: string | null;
}

const clients = 6;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const random = seeded(Number(wanted.seed));
const dataDir = mkdtempSync(join(tmpdir(), 'holdfast-faults-'));
const port = await freePort();
const url = `http://127.0.0.1:${String(port)}`;
let server: ServerProcess = await startServed();
const shop = await newShop(url, 'Breakwater');
const end = Date.now() + Number(wanted.minutes) * 60_000;
const acknowledged: Acknowledged[] = [];
let attempts = 0;
let stopping = false;

/** A server that goes without having been killed is a fault of ours: said with its last words, at once. */
async function startServed(): Promise<ServerProcess> {
  const started = await startServerProcess({ dataDir, port });
  started.process.once('exit', (code, signal) => {
    if (signal === 'SIGKILL' || stopping) return;
    process.stderr.write(`the server ended by itself (${String(code)}):\n${started.said()}\n`);
    process.exit(1);
  });
  return started;
}

/** Sends until there is an answer that settles it; null when the time is over and none came. */
async function insist(name: string, key: string, body: unknown): Promise<Reply | null> {
  for (const givenUp = end + 60_000; Date.now() < givenUp; await pause(100)) {
    attempts += 1;
    try {
      const reply = await request('POST', `${url}/api/commands/${name}`, {
        token: shop.token,
        body,
        headers: { 'idempotency-key': key },
        timeoutMs: 15_000,
      });
      if (reply.status !== 503 && reply.status !== 500 && reply.status !== 401) return reply;
    } catch {
      // The line broke: whether it was carried out is not known, so the same key goes out again.
    }
  }
  return null;
}

async function work(client: number, jobId: string): Promise<void> {
  let version = 1;
  for (let turn = 0; Date.now() < end; turn += 1) {
    const key = randomUUID();
    const isFact = turn % 2 === 0;
    const words = isFact ? `seen by ${String(client)} in turn ${String(turn)}` : null;
    const name = isFact ? 'addFinding' : 'changePromisedTime';
    const body = isFact
      ? { jobId, place: 'Rear step', kind: 'toWatch', words }
      : { jobId, version, promisedAt: new Date(Date.now() + 86_400_000 + turn * 60_000).toISOString() };
    const reply = await insist(name, key, body);
    if (!reply) return;
    if (reply.status !== 200) throw new Error(`${name}: ${String(reply.status)} ${JSON.stringify(reply.body)}`);
    if (!isFact) version += 1;
    acknowledged.push({ name, key, body, answer: JSON.stringify(reply.body), words });
  }
}

function postmasterPid(): number {
  return Number(readFileSync(join(dataDir, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]);
}

async function killNow(what: 'server' | 'database'): Promise<void> {
  if (what === 'database') {
    try {
      process.kill(postmasterPid(), 'SIGKILL');
    } catch {
      // Down already: it is coming up again after the kill before.
    }
    return;
  }
  server.process.kill('SIGKILL');
  await server.ended;
  server = await startServed();
}

const jobs: string[] = [];
for (let at = 0; at < clients; at += 1) jobs.push((await vehicleHere(url, shop.token, `HB ${String(at)}`)).jobId);
const watchers = [watchBoard(url, shop.token), watchBoard(url, shop.token)];
const killed = { server: 0, database: 0 };
const killing = (async () => {
  while (Date.now() < end - 5_000) {
    await pause(3_000 + random() * 4_000);
    const what = random() < 0.5 ? 'server' : 'database';
    await killNow(what);
    killed[what] += 1;
  }
})();
await Promise.all([...jobs.map((jobId, client) => work(client, jobId)), killing]);

let lost = 0;
for (const { name, key, body, answer } of acknowledged) {
  const again = await insist(name, key, body);
  if (!again || JSON.stringify(again.body) !== answer) lost += 1;
}

let doubled = 0;
for (const jobId of jobs) {
  const { body } = await request<{ findings: { words: string }[] }>('GET', `${url}/api/jobs/${jobId}`, {
    token: shop.token,
  });
  const seen = body.findings.map((finding) => finding.words);
  doubled += seen.length - new Set(seen).size;
}

let gaps = 0;
let last = 0;
for (;;) {
  const { body } = await request<{ changes: { seq: number }[]; seq: number }>(
    'GET',
    `${url}/api/changes?after=${String(last)}&wait=0`,
    { token: shop.token },
  );
  for (const { seq } of body.changes) {
    if (seq !== last + 1) gaps += 1;
    last = seq;
  }
  if (body.changes.length === 0) {
    if (body.seq !== last) gaps += 1;
    break;
  }
}
let unconverged = 0;
for (const watcher of watchers) if (!(await watcher.isLevel(last))) unconverged += 1;
for (const watcher of watchers) watcher.close();
stopping = true;
await server.stop();
rmSync(dataDir, { recursive: true, force: true });
const account = {
  name: 'faults',
  minutes: Number(wanted.minutes),
  seed: Number(wanted.seed),
  killed,
  attempts,
  acknowledged: acknowledged.length,
  lost,
  doubled,
  gaps,
  unconverged,
};
process.stdout.write(`${JSON.stringify(account)}\n`);
process.exit(lost + doubled + gaps + unconverged === 0 && acknowledged.length > 0 ? 0 : 1);
