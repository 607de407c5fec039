import type { CommandInputs, CommandName, Role } from '@holdfast/domain';
import type { ProblemDetails, SignedInView, Wire } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Config } from '../../apps/server/src/config.js';
import type { RunningServer } from '../../apps/server/src/serve.js';
import { startServer } from '../../apps/server/src/start.js';
import { freshDatabase, type FreshDatabase } from './database.js';

/**
 * A real server on a port of its own, on a fresh database. Unless told to be `real` it is a server for trying: its
 * set-up code makes any number of shops, each on a clock of its own that `setClock` sets.
 */
export interface TestApp {
  readonly url: string;
  readonly database: FreshDatabase;
  readonly server: RunningServer;
  readonly dataDir: string;
  /** A second process' worth of server on the same database. Stopped with the rest. */
  another(settings?: Partial<Config>): Promise<RunningServer>;
  /** A shop with its owner signed in. */
  newShop(name?: string): Promise<TestShop>;
  /** Bare request to this server. */
  request(path: string, init?: RequestInit): Promise<HttpAnswer>;
  stop(): Promise<void>;
}

export interface TestShop {
  readonly id: string;
  readonly name: string;
  readonly owner: TestClient;
  /** Somebody with exactly these roles, added and signed in; asked again, the same person. */
  signIn(...roles: readonly Role[]): Promise<TestClient>;
  /** Adds somebody and signs them in; `skills` have no end. */
  addPerson(person: { name: string; roles: readonly Role[]; skills?: readonly string[] }): Promise<TestClient>;
  /** The shop's time from now on (ISO); `rate` 0 stands still. */
  setClock(at: string, rate?: number): Promise<void>;
}

export interface HttpAnswer {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  /** The parsed body; undefined where it is no JSON. */
  readonly json: unknown;
}

export interface Accepted {
  readonly seq: number;
  readonly at: string;
  readonly created: Readonly<Record<string, string>>;
  readonly flags: readonly string[];
  readonly contested: readonly string[];
}

export interface CommandOptions {
  readonly key?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface TestClient {
  readonly token: string;
  readonly session: SignedInView;
  readonly password: string;
  /** This person on another server of the same database. */
  on(url: string): TestClient;
  request(path: string, init?: RequestInit): Promise<HttpAnswer>;
  get(path: string): Promise<HttpAnswer>;
  /** Sends a command and hands over whatever is answered. */
  command<N extends CommandName>(name: N, input: Wire<CommandInputs[N]>, options?: CommandOptions): Promise<HttpAnswer>;
  /** Sends a command that must be accepted. */
  accepted<N extends CommandName>(name: N, input: Wire<CommandInputs[N]>, options?: CommandOptions): Promise<Accepted>;
  /** Sends a command that must be refused, and gives the problem. */
  refused<N extends CommandName>(
    name: N,
    input: Wire<CommandInputs[N]>,
    options?: CommandOptions,
  ): Promise<ProblemDetails>;
}

export interface AppOptions {
  /** As a shop's own server: the code makes one shop, and its clock is real. */
  readonly real?: boolean;
  readonly config?: Partial<Config>;
}

const pepper = 'pepper of the tests, the same for every server of a run';
export const testPassword = 'a stone in a shoe walks far';

export async function startApp({ real = false, config = {} }: AppOptions = {}): Promise<TestApp> {
  const database = await freshDatabase();
  const dataDir = mkdtempSync(join(tmpdir(), 'holdfast-app-'));
  const start = (more: Partial<Config> = {}) =>
    startServer(
      {
        port: 0,
        host: '127.0.0.1',
        dataDir,
        databaseUrl: database.databaseUrl,
        demo: 'off',
        tls: undefined,
        logLevel: 'error',
        pepper,
        ...config,
        ...more,
      },
      real
        ? {}
        : { loadDemo: () => Promise.resolve({ signIns: () => ({ shop: '', people: [] }), isToldTo: () => true }) },
    );
  const server = await start();
  const servers = [server];
  return {
    url: server.url,
    database,
    server,
    dataDir,
    async another(settings) {
      const more = await start(settings);
      servers.push(more);
      return more;
    },
    newShop: (name = `Shop ${randomUUID().slice(0, 8)}`) => setUpShop(server, name),
    request: (path, init) => send(server.url, path, init),
    async stop() {
      await Promise.all(servers.map((each) => each.stop()));
      await database.drop();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

async function setUpShop(server: RunningServer, name: string): Promise<TestShop> {
  const ownerName = 'Ola Ferrand';
  const answer = await sendCommand(server.url, null, 'setUpShop', {
    code: server.setUpCode ?? '',
    shop: { name, zone: 'Europe/London', currency: 'GBP', units: 'metric', locale: 'en-GB' },
    owner: { name: ownerName, password: testPassword },
  });
  if (answer.status !== 200) throw new Error(`setUpShop: ${answer.status} ${answer.text}`);
  const owner = await signedIn(server.url, { shop: name, name: ownerName, password: testPassword });
  const known = new Map<string, TestClient>();
  const shop: TestShop = {
    id: owner.session.shop.id,
    name,
    owner,
    async signIn(...roles) {
      const key = [...roles].sort().join(' and ');
      const client = known.get(key) ?? (await shop.addPerson({ name: `Person of ${key}`, roles }));
      known.set(key, client);
      return client;
    },
    async addPerson(person) {
      const skills = (person.skills ?? []).map((skill) => ({ skill }));
      await owner.accepted('addPerson', {
        name: person.name,
        roles: [...person.roles],
        skills,
        password: testPassword,
      });
      return signedIn(server.url, { shop: name, name: person.name, password: testPassword });
    },
    async setClock(at, rate = 0) {
      const set = await owner.request('/api/demo/clock', jsonInit('PUT', { at, rate }));
      if (set.status !== 200) throw new Error(`The clock: ${set.status} ${set.text}`);
    },
  };
  return shop;
}

/** Signs in over HTTP; throws where it is not accepted. */
export async function signedIn(
  url: string,
  person: { readonly shop: string; readonly name: string; readonly password: string },
): Promise<TestClient> {
  const answer = await send(url, '/api/session', jsonInit('POST', person));
  if (answer.status !== 200) throw new Error(`Sign-in of ${person.name}: ${answer.status} ${answer.text}`);
  return clientOn(url, answer.json as SignedInView, person.password);
}

function clientOn(url: string, session: SignedInView, password: string): TestClient {
  const { token } = session;
  const client: TestClient = {
    token,
    session,
    password,
    on: (other) => clientOn(other, session, password),
    request: (path, init = {}) => {
      const headers = new Headers(init.headers);
      headers.set('authorization', `Bearer ${token}`);
      return send(url, path, { ...init, headers });
    },
    get: (path) => client.request(path),
    command: (name, input, options) => sendCommand(url, token, name, input, options),
    async accepted(name, input, options) {
      const answer = await client.command(name, input, options);
      if (answer.status !== 200) throw new Error(`${name}: ${answer.status} ${answer.text}`);
      return answer.json as Accepted;
    },
    async refused(name, input, options) {
      const answer = await client.command(name, input, options);
      if (answer.status < 400) throw new Error(`${name} was not refused: ${answer.text}`);
      return answer.json as ProblemDetails;
    },
  };
  return client;
}

function sendCommand(
  url: string,
  token: string | null,
  name: string,
  input: unknown,
  { key = randomUUID(), headers = {} }: CommandOptions = {},
): Promise<HttpAnswer> {
  const init = jsonInit('POST', input);
  return send(url, `/api/commands/${name}`, {
    ...init,
    headers: {
      ...init.headers,
      'idempotency-key': key,
      ...(token === null ? {} : { authorization: `Bearer ${token}` }),
      ...headers,
    },
  });
}

export function jsonInit(method: string, body: unknown) {
  return { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

async function send(url: string, path: string, init: RequestInit = {}): Promise<HttpAnswer> {
  const response = await fetch(`${url}${path}`, init);
  const text = await response.text();
  const isJson = /json/.test(response.headers.get('content-type') ?? '');
  return {
    status: response.status,
    headers: response.headers,
    text,
    json: isJson ? (JSON.parse(text) as unknown) : undefined,
  };
}
