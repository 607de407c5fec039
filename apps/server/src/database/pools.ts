import pg from 'pg';
import type { Config } from '../config.js';
import { reasonOf } from '../failure.js';
import { CannotStart, type DatabaseLog } from './cannot-start.js';
import { startEmbedded, type EmbeddedServer } from './embedded.js';
import { listenOn, type Listening, type WakeUp } from './listen.js';
import { migrate } from './migrate.js';
import { typeParsers } from './pg-types.js';
import { roleUrls, type RoleUrls } from './roles.js';
import { selfCheck } from './self-check.js';

/**
 * This folder hides where the database comes from (our own PostgreSQL or one that DATABASE_URL names), how it is
 * brought up to date and how it is kept alive. It guarantees that nobody gets a connection before the schema is
 * current and the wall between shops has been checked: everything outside works through the two pools below, as roles
 * that own nothing and pass by nothing.
 */
export interface Database {
  /** Role `holdfast_app`: sees the rows of the shop that the transaction has set, and of none before. */
  readonly app: pg.Pool;
  /** Role `holdfast_directory`: the schema `directory`. */
  readonly directory: pg.Pool;
  /** `embedded` is our own PostgreSQL; only there may a demo be loaded unasked. */
  readonly kind: 'embedded' | 'external';
  /** Migrations that this start applied. */
  readonly migrated: readonly string[];
  /** A connection of its own that calls `wakeUp` for each notification on `channel`; see `listenOn`. */
  listen(channel: string, wakeUp: WakeUp): Promise<Listening>;
  /** Tells the planner anew how much there is of what, as the owner. For after a bulk load: until then it plans for empty tables. */
  analyse(): Promise<void>;
  /** Ends the pools, then stops our own PostgreSQL unless another process uses it. Further calls do nothing. */
  stop(): Promise<void>;
}

/** The write path keeps one transaction in flight for each shop, so few connections do; more only wait on each other. */
const appConnections = 8;
const directoryConnections = 4;
const oldestServerVersion = 180_000;

/**
 * Opens the database of this server process: starts or reaches PostgreSQL, makes the roles, migrates, checks the wall
 * between shops. Throws `CannotStart` with a sentence when it cannot be done; nothing is then left running.
 */
export async function openDatabase(
  config: Pick<Config, 'dataDir' | 'databaseUrl'>,
  log: DatabaseLog,
): Promise<Database> {
  const embedded = config.databaseUrl === undefined ? await startEmbedded(config.dataDir, log) : undefined;
  const ownerUrl = embedded?.ownerUrl ?? config.databaseUrl ?? '';
  try {
    return await openOn(ownerUrl, embedded, config.dataDir, log);
  } catch (failure) {
    await embedded?.stop();
    throw failure;
  }
}

async function openOn(
  ownerUrl: string,
  embedded: EmbeddedServer | undefined,
  dataDir: string,
  log: DatabaseLog,
): Promise<Database> {
  const { urls, migrated } = await prepareAsOwner(ownerUrl, () =>
    embedded === undefined ? roleUrls(ownerUrl, dataDir) : Promise.resolve(embedded.urls),
  );
  for (const name of migrated) log.info(`The database was brought up to ${name}.`);
  const app = makePool(urls.app, appConnections, log);
  const directory = makePool(urls.directory, directoryConnections, log);
  const gaps = await selfCheck(app);
  if (gaps.length > 0) {
    await Promise.all([app.end(), directory.end()]);
    throw new CannotStart(`The wall between shops in this database has gaps. ${gaps.join(' ')}`);
  }
  const listeners: Listening[] = [];
  let stopped: Promise<void> | undefined;
  const stop = async () => {
    await Promise.all([...listeners.map((listener) => listener.close()), app.end(), directory.end()]);
    await embedded?.stop();
  };
  return {
    app,
    directory,
    kind: embedded === undefined ? 'external' : 'embedded',
    migrated,
    async listen(channel, wakeUp) {
      const listening = await listenOn(urls.app, channel, wakeUp, log);
      // Stopped while this connection was being made: nobody would close it any more.
      if (stopped === undefined) listeners.push(listening);
      else await listening.close();
      return listening;
    },
    analyse: () =>
      asOwner(ownerUrl, async (owner) => {
        await owner.query('analyze');
      }),
    stop: () => (stopped ??= stop()),
  };
}

async function asOwner<T>(ownerUrl: string, work: (owner: pg.Client) => Promise<T>): Promise<T> {
  const owner = new pg.Client({ connectionString: ownerUrl, application_name: nameOf('owner') });
  owner.on('error', () => undefined);
  try {
    await owner.connect();
    return await work(owner);
  } finally {
    await owner.end();
  }
}

async function prepareAsOwner(
  ownerUrl: string,
  rolesOf: () => Promise<RoleUrls>,
): Promise<{ urls: RoleUrls; migrated: string[] }> {
  const owner = new pg.Client({ connectionString: ownerUrl, application_name: nameOf('owner') });
  owner.on('error', () => undefined);
  try {
    await owner.connect();
  } catch (failure) {
    const { host } = new URL(ownerUrl);
    throw new CannotStart(`The PostgreSQL at ${host} cannot be reached: ${reasonOf(failure)}. Check DATABASE_URL.`);
  }
  try {
    const { rows } = await owner.query<{ version: number; release: string }>(
      `select current_setting('server_version_num')::int as version, current_setting('server_version') as release`,
    );
    if ((rows[0]?.version ?? 0) < oldestServerVersion) {
      throw new CannotStart(
        `Holdfast needs PostgreSQL 18 or newer; the server of DATABASE_URL is ${rows[0]?.release ?? 'unknown'}.`,
      );
    }
    // Before the migrations: their policies and grants name the roles.
    const urls = await rolesOf();
    return { urls, migrated: await migrate(owner) };
  } finally {
    await owner.end();
  }
}

/**
 * A pool with our reading of values; a connection lost while idle is logged and replaced, never thrown. One lost in use
 * fails the next statement on it, which its user must expect.
 */
export function makePool(url: string, max: number, log: DatabaseLog): pg.Pool {
  const pool = new pg.Pool({
    connectionString: url,
    max,
    types: typeParsers,
    application_name: nameOf(new URL(url).username),
    keepAlive: true,
    // Statements that need not wait for each other's answers go out together; each is still answered on its own.
    pipeline: true,
    idleTimeoutMillis: 60_000,
    connectionTimeoutMillis: 5_000,
  });
  // The pool hears only its idle connections: one that is lost between two statements of its user would otherwise be an
  // event that nobody hears, which ends the process.
  pool.on('connect', (client) => client.on('error', () => undefined));
  pool.on('error', (failure) => {
    log.warn(`A database connection was lost: ${failure.message}`);
  });
  return pool;
}

export interface ReadOptions {
  /** One consistent view over several statements (REPEATABLE READ); otherwise each statement sees what is committed. */
  readonly oneView?: boolean;
}

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/**
 * Reads inside one read-only transaction that sees the rows of `shopId` (a UUID, else refused) and no others. One round
 * trip beside those of `read`: it opens and sets the shop, and the commit, which cannot change what was read, is not
 * waited for.
 */
export async function withShop<T>(
  pool: pg.Pool,
  shopId: string,
  read: (client: pg.ClientBase) => Promise<T>,
  options: ReadOptions = {},
): Promise<T> {
  if (!uuid.test(shopId)) throw new RangeError('A shop is named by its UUID.');
  const isolation = options.oneView ? 'isolation level repeatable read ' : '';
  const client = await pool.connect();
  try {
    // One simple query, so one round trip; the UUID was checked above, so it needs no parameter.
    await client.query(`begin ${isolation}read only; select set_config('app.shop_id', '${shopId}', true)`);
    const result = await read(client);
    void client.query('commit').then(
      () => client.release(),
      () => client.release(true),
    );
    return result;
  } catch (failure) {
    // A connection whose rollback fails is closed: nobody gets it again.
    await client.query('rollback').then(
      () => client.release(),
      () => client.release(true),
    );
    throw failure;
  }
}

function nameOf(part: string): string {
  return `holdfast ${process.pid} ${part}`;
}
