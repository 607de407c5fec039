import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { reasonOf } from '../failure.js';
import { CannotStart, type DatabaseLog } from './cannot-start.js';
import { keepPort, keptPort, openCluster, superuser, type Cluster } from './cluster.js';
import {
  freePort,
  isFree,
  isPostgresAlive,
  PostmasterEnded,
  readPostmaster,
  removeStalePidFile,
  startPostmaster,
  stopPostmaster,
  waitUntilReady,
} from './postmaster.js';
import {
  appRole,
  directoryRole,
  makeRole,
  ownerRole,
  roleSecrets,
  roleUrlsOn,
  urlAs,
  type RoleSecrets,
  type RoleUrls,
} from './roles.js';

/** Our own PostgreSQL while it runs. The addresses stay good over its crashes: it comes back on the same port. */
export interface EmbeddedServer {
  /** PostgreSQL's administrator, on the database `postgres`. Holds a secret. */
  readonly superuserUrl: string;
  /** Owner of the database `holdfast`. Holds a secret. */
  readonly ownerUrl: string;
  /** The roles the server works as, on the same database. Hold secrets. */
  readonly urls: RoleUrls;
  readonly folder: string;
  /** True when it was running already and its secrets fitted. */
  readonly adopted: boolean;
  /** Stops it in order, unless another server process still uses it: the last one out stops it. */
  stop(): Promise<void>;
}

export interface EmbeddedOptions {
  /** PostgreSQL settings beside ours, by name; for tests. */
  readonly settings?: Readonly<Record<string, string>>;
}

const database = 'holdfast';
/** Number of the advisory lock under which one process at a time prepares, or decides whether it is the last one out. */
const comingAndGoingLock = 4_650_001;
const attempts = 20;
const longestBackoffMs = 10_000;

/**
 * Runs PostgreSQL on the folder that belongs to `dataDir`, as root or as a plain user. A PostgreSQL that runs there
 * already (another server process, or one that outlived its server) is taken over if it accepts our secrets, and
 * refused with a sentence if not. While we use it, it is started again whenever it ends without our doing.
 */
export async function startEmbedded(
  dataDir: string,
  log: DatabaseLog,
  options: EmbeddedOptions = {},
): Promise<EmbeddedServer> {
  const cluster = await openCluster(dataDir, log);
  const [{ port, adopted }, secrets] = await Promise.all([
    run(cluster, options, undefined),
    roleSecrets(cluster.secrets.owner),
  ]);
  keepPort(cluster, port);
  const superuserUrl = urlAs(`postgresql://127.0.0.1:${port}`, superuser, cluster.secrets.superuser, 'postgres');
  const ownerUrl = urlAs(superuserUrl, ownerRole, cluster.secrets.owner, database);
  log.info(
    `PostgreSQL ${adopted ? 'was running already' : 'runs'} on port ${port}, with its data in ${cluster.folder}.`,
  );
  await prepare(superuserUrl, cluster.secrets.owner, secrets);
  const watch = new Watch(superuserUrl, log, async () => {
    await run(cluster, options, port);
  });
  await watch.begin();
  return {
    superuserUrl,
    ownerUrl,
    urls: roleUrlsOn(ownerUrl, secrets),
    folder: cluster.folder,
    adopted,
    async stop() {
      if (!(await watch.endAsLast())) {
        log.info('PostgreSQL is left running: another server process uses it.');
        return;
      }
      const postmaster = readPostmaster(cluster.folder);
      if (postmaster !== undefined) await stopPostmaster(postmaster.pid);
      log.info('PostgreSQL is stopped.');
    },
  };
}

/** Takes over or starts; with `fixedPort` on that port only. Waits while an earlier PostgreSQL is still going down. */
async function run(
  cluster: Cluster,
  options: EmbeddedOptions,
  fixedPort: number | undefined,
): Promise<{ port: number; adopted: boolean }> {
  let port = fixedPort ?? keptPort(cluster) ?? (await freePort());
  if (fixedPort === undefined && !(await isFree(port))) port = await freePort();
  for (let attempt = 1; ; attempt += 1) {
    const running = await takeOver(cluster);
    if (running !== undefined) return { port: running, adopted: true };
    try {
      await startPostmaster(cluster, port, options.settings ?? {});
      return { port, adopted: false };
    } catch (failure) {
      if (!(failure instanceof PostmasterEnded)) throw failure;
      if (!failure.mayPass || attempt === attempts) {
        throw new CannotStart(`PostgreSQL did not start in ${cluster.folder}. It said: ${failure.message}`);
      }
      if (failure.portTaken && fixedPort === undefined) port = await freePort();
      await pause(Math.min(50 * attempt, 500));
    }
  }
}

/** The port of the PostgreSQL that runs on the folder now, or undefined when none does. */
async function takeOver(cluster: Cluster): Promise<number | undefined> {
  const found = readPostmaster(cluster.folder);
  if (found === undefined) return undefined;
  if (!isPostgresAlive(found.pid)) {
    removeStalePidFile(cluster.folder);
    return undefined;
  }
  if (!(await waitUntilReady(cluster.folder, found.pid))) return undefined;
  const { port, pid } = readPostmaster(cluster.folder) ?? found;
  const client = new pg.Client({
    host: '127.0.0.1',
    port,
    user: superuser,
    password: cluster.secrets.superuser,
    database: 'postgres',
  });
  client.on('error', () => undefined);
  try {
    await client.connect();
    const { rows } = await client.query<{ folder: string }>(`select current_setting('data_directory') as folder`);
    if (rows[0]?.folder === cluster.folder) return port;
  } catch (failure) {
    if (failure instanceof pg.DatabaseError && failure.code === '57P03') return undefined;
    if (!isPostgresAlive(pid)) return undefined;
    if (!(failure instanceof pg.DatabaseError)) throw failure;
  } finally {
    await client.end();
  }
  throw new CannotStart(
    `A PostgreSQL (process ${pid}) runs on ${cluster.folder} already and does not accept the secrets that this Holdfast ` +
      'keeps for it. Stop that process, or choose another DATA_DIR.',
  );
}

async function prepare(superuserUrl: string, ownerSecret: string, secrets: RoleSecrets): Promise<void> {
  const client = new pg.Client({ connectionString: superuserUrl });
  await client.connect();
  try {
    // Two processes that start at the same moment do this one after the other.
    await client.query('select pg_advisory_lock($1)', [comingAndGoingLock]);
    await makeRole(client, ownerRole, ownerSecret);
    await makeRole(client, appRole, secrets.app);
    await makeRole(client, directoryRole, secrets.directory);
    const found = await client.query('select from pg_database where datname = $1', [database]);
    if (found.rowCount === 0) await client.query(`create database ${database} owner ${ownerRole}`);
    await client.query(`revoke all on database ${database} from public`);
    await client.query(`grant connect on database ${database} to ${appRole}, ${directoryRole}`);
  } finally {
    await client.end();
  }
}

/**
 * Keeps one connection open: its end is the sign that PostgreSQL is gone, and its name tells other server processes
 * on this machine that we still use it.
 */
class Watch {
  private connection: pg.Client | undefined;
  private stopping = false;
  private recovering: Promise<void> | undefined;

  constructor(
    private readonly url: string,
    private readonly log: DatabaseLog,
    private readonly bringBack: () => Promise<void>,
  ) {}

  async begin(): Promise<void> {
    const connection = new pg.Client({ connectionString: this.url, application_name: presenceOf(process.pid) });
    // The 'end' event follows every loss; an 'error' nobody listens to would end the process.
    connection.on('error', () => undefined);
    await connection.connect();
    connection.once('end', () => {
      if (!this.stopping && this.connection === connection) this.recovering ??= this.recover();
    });
    this.connection = connection;
  }

  /** Ends the watch; true when no other server process watches the same PostgreSQL. */
  async endAsLast(): Promise<boolean> {
    this.stopping = true;
    await this.recovering;
    const { connection } = this;
    if (connection === undefined) return true;
    try {
      await connection.query('select pg_advisory_lock($1)', [comingAndGoingLock]);
      // The one that held the lock before us has ended its connection, which is still listed for an instant.
      await pause(50);
      const { rowCount } = await connection.query(
        `select from pg_stat_activity where application_name like $1 and application_name <> $2`,
        [presenceOf('%'), presenceOf(process.pid)],
      );
      return rowCount === 0;
    } catch {
      return true;
    } finally {
      await connection.end().catch(() => undefined);
    }
  }

  private async recover(): Promise<void> {
    this.log.warn('PostgreSQL ended unexpectedly; it is started again.');
    for (let backoffMs = 50; !this.stopping; backoffMs = Math.min(backoffMs * 2, longestBackoffMs)) {
      try {
        await this.bringBack();
        this.recovering = undefined;
        await this.begin();
        this.log.info('PostgreSQL runs again.');
        return;
      } catch (failure) {
        this.log.warn(`PostgreSQL is not back yet: ${reasonOf(failure)}`);
        await pause(backoffMs);
      }
    }
  }
}

function presenceOf(process: number | '%'): string {
  return `holdfast ${process} watch`;
}
