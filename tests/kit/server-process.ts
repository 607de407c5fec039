/**
 * The built server as a process of its own, on a PostgreSQL that the caller started, spoken to over HTTP: for
 * benchmarks and faults, which kill it, measure its CPU, or run several on one database.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import http from 'node:http';
import { createServer } from 'node:net';
import { join } from 'node:path';

export interface ServerProcess {
  readonly url: string;
  readonly process: ChildProcess;
  readonly pid: number;
  /** Resolves when the process has gone. */
  readonly ended: Promise<void>;
  /** What it wrote so far, the last 20 000 characters. */
  said(): string;
  stop(signal?: NodeJS.Signals): Promise<void>;
}

export interface ServerSettings {
  readonly dataDir: string;
  readonly databaseUrl?: string;
  readonly port?: number;
  readonly demo?: 'on' | 'off';
}

export async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

const main = join(process.cwd(), 'apps/server/dist/bundle/main.js');

/** Starts the server and waits for its line "ready at"; throws with what it said when it ends before. */
export async function startServerProcess(settings: ServerSettings): Promise<ServerProcess> {
  const port = settings.port ?? (await freePort());
  const child = spawn(process.execPath, [main], {
    env: {
      ...process.env,
      PORT: String(port),
      HOST: '127.0.0.1',
      DATA_DIR: settings.dataDir,
      DEMO: settings.demo ?? 'on',
      LOG_LEVEL: 'warn',
      NODE_ENV: 'production',
      ...(settings.databaseUrl === undefined ? {} : { DATABASE_URL: settings.databaseUrl }),
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  let said = '';
  const url = await new Promise<string>((resolve, reject) => {
    const read = (chunk: Buffer) => {
      said = (said + chunk.toString()).slice(-20_000);
      const ready = /ready at (\S+)/.exec(said);
      if (ready?.[1]) resolve(ready[1]);
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.once('exit', (code) => reject(new Error(`the server ended (${String(code)}) before it was ready:\n${said}`)));
  });
  return {
    url,
    process: child,
    pid: child.pid ?? 0,
    ended,
    said: () => said,
    async stop(signal = 'SIGTERM') {
      child.kill(signal);
      await ended;
    },
  };
}

/** CPU time that a process has used so far, ms (Linux: /proc). */
export function cpuMsOf(pid: number): number {
  const fields =
    readFileSync(`/proc/${String(pid)}/stat`, 'utf8')
      .split(') ')[1]
      ?.split(' ') ?? [];
  const ticksPerSecond = 100;
  return ((Number(fields[11]) + Number(fields[12])) * 1000) / ticksPerSecond;
}

/** Resident memory of a process, bytes (Linux: /proc). */
export function memoryOf(pid: number): number {
  const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${String(pid)}/status`, 'utf8'));
  return Number(line?.[1]) * 1024;
}

export interface Reply<T = Record<string, unknown>> {
  readonly status: number;
  readonly body: T;
}

const agent = new http.Agent({ keepAlive: true, maxSockets: 256 });

/** One request with JSON in and out. Rejects when the connection breaks: whether it was carried out is then not known. */
export function request<T = Record<string, unknown>>(
  method: string,
  url: string,
  options: {
    readonly token?: string;
    readonly body?: unknown;
    readonly headers?: Readonly<Record<string, string>>;
    readonly timeoutMs?: number;
  } = {},
): Promise<Reply<T>> {
  const text = options.body === undefined ? undefined : JSON.stringify(options.body);
  return new Promise((resolve, reject) => {
    const sent = http.request(
      url,
      {
        method,
        agent,
        timeout: options.timeoutMs ?? 30_000,
        headers: {
          ...(text === undefined
            ? {}
            : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text) }),
          ...(options.token === undefined ? {} : { authorization: `Bearer ${options.token}` }),
          ...options.headers,
        },
      },
      (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk: Buffer) => chunks.push(chunk));
        answer.on('error', reject);
        answer.on('end', () => {
          const said = Buffer.concat(chunks).toString();
          try {
            resolve({ status: answer.statusCode ?? 0, body: (said === '' ? {} : JSON.parse(said)) as T });
          } catch (failure) {
            reject(failure instanceof Error ? failure : new Error('no JSON'));
          }
        });
      },
    );
    sent.on('timeout', () => sent.destroy(new Error('no answer in time')));
    sent.on('error', reject);
    sent.end(text);
  });
}

export interface CommandReply {
  readonly seq: number;
  readonly at: string;
  readonly created: Readonly<Record<string, string>>;
  readonly flags: readonly string[];
}

/** Sends one command and gives its answer; throws with the problem when it was refused. */
export async function command(
  url: string,
  token: string,
  name: string,
  body: unknown,
  key: string = randomUUID(),
): Promise<CommandReply> {
  const reply = await request<CommandReply & { detail?: string }>('POST', `${url}/api/commands/${name}`, {
    token,
    body,
    headers: { 'idempotency-key': key },
  });
  if (reply.status !== 200) throw new Error(`${name}: ${String(reply.status)} ${JSON.stringify(reply.body)}`);
  return reply.body;
}

export interface ShopOnServer {
  readonly shop: string;
  readonly owner: { readonly name: string; readonly password: string };
  readonly token: string;
}

/** A further shop on a server with the demo, with its owner signed in. */
export async function newShop(url: string, name: string): Promise<ShopOnServer> {
  const demo = await request<{ setUpCode: string }>('GET', `${url}/api/demo`);
  const owner = { name: 'Orla Quay', password: `gangway-${randomUUID()}` };
  await command(url, '', 'setUpShop', {
    code: demo.body.setUpCode,
    shop: { name, zone: 'Europe/London', currency: 'GBP', units: 'metric', locale: 'en-GB' },
    owner,
  });
  return { shop: name, owner, token: await signIn(url, name, owner.name, owner.password) };
}

export async function signIn(url: string, shop: string, name: string, password: string): Promise<string> {
  const reply = await request<{ token?: string }>('POST', `${url}/api/session`, { body: { shop, name, password } });
  if (reply.body.token === undefined) throw new Error(`not signed in: ${JSON.stringify(reply.body)}`);
  return reply.body.token;
}

/** A vehicle checked in, in a bay of its own, with one line that has the go-ahead. */
export async function vehicleHere(
  url: string,
  token: string,
  plate: string,
): Promise<{ jobId: string; bayId: string; lineId: string }> {
  const bay = await command(url, token, 'addBay', {
    name: `Bay ${plate}`,
    spots: 1,
    equipment: [{ kind: 'flat', inUse: true, grips: null }],
  });
  const vehicle = await command(url, token, 'addVehicle', {
    plate,
    description: 'Van',
    kind: 'light',
    drive: 'combustion',
  });
  const visit = await command(url, token, 'checkIn', {
    vehicleId: vehicle.created['vehicle'],
    customer: { name: `Keeper of ${plate}` },
    concerns: [{ words: 'Knocks', conditions: 'Cold' }],
  });
  const jobId = visit.created['job'] ?? '';
  const line = await command(url, token, 'addLine', {
    jobId,
    title: 'Find the knock',
    bookMinutes: 60,
    price: '90.00',
  });
  const lineId = line.created['workLine'] ?? '';
  await command(url, token, 'recordGoAhead', {
    lineId,
    version: 1,
    answer: 'given',
    byName: 'Keeper',
    how: 'there',
    upTo: '120.00',
  });
  const bayId = bay.created['bay'] ?? '';
  await command(url, token, 'takeIntoBay', { jobId, bayId });
  return { jobId, bayId, lineId };
}
