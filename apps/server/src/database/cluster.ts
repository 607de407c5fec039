import { execFile } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmodSync, chownSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { z } from 'zod';
import { reasonOf } from '../failure.js';
import { keptSecret, randomSecret, readSecretFile, writeSecretFile } from '../secret-file.js';
import { CannotStart, type DatabaseLog } from './cannot-start.js';
import { postgresBinaries, sharedStateFolder, type PostgresBinaries } from './postgres-binaries.js';
import { canEnter, runAsFor, spawnOptions, type RunAs } from './unprivileged-user.js';

/** Name of PostgreSQL's own administrator in a database folder of ours. */
export const superuser = 'postgres';

/** One PostgreSQL folder of ours on disk, with what is needed to run it. */
export interface Cluster {
  readonly folder: string;
  readonly binaries: PostgresBinaries;
  readonly runAs: RunAs | undefined;
  readonly secrets: ClusterSecrets;
}

const clusterSecrets = z.object({ id: z.string(), superuser: z.string(), owner: z.string() });
export type ClusterSecrets = z.infer<typeof clusterSecrets>;

/**
 * The PostgreSQL folder that belongs to `dataDir`; made on first use, with scram-sha-256 for every way in and random
 * secrets in `secrets/postgres.json` (mode 0600). It is `postgres` under the data folder. As root, where the user
 * PostgreSQL runs as cannot enter the data folder (root's home), it is a folder of its own under /var/lib/holdfast
 * instead, and the log says so. Refused: a folder whose secrets are lost, and one of another major release.
 */
export async function openCluster(dataDir: string, log: DatabaseLog): Promise<Cluster> {
  const secretsFile = join(dataDir, 'secrets', 'postgres.json');
  makeDataDir(dataDir);
  if (existsSync(join(dataDir, 'postgres')) && readSecretFile(secretsFile) === undefined) {
    throw new CannotStart(
      `${join(dataDir, 'postgres')} holds a database, but its secrets in ${secretsFile} are missing. ` +
        'Put that file back from a backup, or choose another DATA_DIR.',
    );
  }
  const secrets = clusterSecrets.parse(JSON.parse(keptSecret(secretsFile, newSecrets)));
  const { folder, runAs } = placeFor(dataDir, secrets.id, log);
  const cluster = { folder, runAs, secrets, binaries: postgresBinaries(runAs, dataDir, log) };
  if (!existsSync(folder)) await initialise(cluster);
  const major = readFileSync(join(folder, 'PG_VERSION'), 'utf8').trim();
  if (major !== cluster.binaries.major) {
    throw new CannotStart(
      `The database in ${folder} was made by PostgreSQL ${major}, and this Holdfast brings PostgreSQL ` +
        `${cluster.binaries.major}, which cannot read it. Start the Holdfast that made it and export your shop from there.`,
    );
  }
  return cluster;
}

/** The port this cluster was last run on, or undefined. Kept so that addresses stay the same over restarts. */
export function keptPort(cluster: Cluster): number | undefined {
  const port = Number(readSecretFile(`${cluster.folder}.port`));
  return Number.isInteger(port) && port > 0 ? port : undefined;
}

export function keepPort(cluster: Cluster, port: number): void {
  writeSecretFile(`${cluster.folder}.port`, String(port));
}

function newSecrets(): string {
  const secrets: ClusterSecrets = {
    id: randomBytes(8).toString('hex'),
    superuser: randomSecret(),
    owner: randomSecret(),
  };
  return JSON.stringify(secrets);
}

function makeDataDir(dataDir: string): void {
  try {
    mkdirSync(dataDir, { recursive: true, mode: process.getuid?.() === 0 ? 0o711 : 0o700 });
  } catch (failure) {
    throw new CannotStart(
      `The data folder ${dataDir} cannot be made: ${reasonOf(failure)}. Choose another with DATA_DIR.`,
    );
  }
}

function placeFor(dataDir: string, id: string, log: DatabaseLog): { folder: string; runAs: RunAs | undefined } {
  const usual = join(dataDir, 'postgres');
  const apart = join(sharedStateFolder, `data-${id}`);
  const existing = [usual, apart].find((folder) => existsSync(folder));
  const runAs = runAsFor(existing);
  if (existing === apart) return { folder: apart, runAs };
  openTheWay(dataDir, runAs);
  if (canEnter(existing ?? dataDir, runAs)) return { folder: usual, runAs };
  if (existing !== undefined) {
    throw new CannotStart(
      `PostgreSQL runs as ${runAs?.name ?? 'this user'} and cannot enter the database folder ${existing}. ` +
        'Move the data folder to where that user can enter, such as under /var/lib, and set DATA_DIR to it.',
    );
  }
  log.warn(
    `PostgreSQL does not run as root, and ${runAs?.name ?? 'its user'} cannot enter ${dataDir}; ` +
      `the database itself is kept in ${apart}. Everything else stays in ${dataDir}.`,
  );
  return { folder: apart, runAs };
}

/** As root: lets others pass through our own data folder (not list it). Folders above it are not ours to change. */
function openTheWay(dataDir: string, runAs: RunAs | undefined): void {
  if (runAs === undefined || canEnter(dataDir, runAs)) return;
  const { mode, uid } = statSync(dataDir);
  if (uid === 0) chmodSync(dataDir, (mode & 0o777) | 0o011);
}

/** Made beside its place and renamed when whole, so that a start that was cut short leaves no half database. */
async function initialise({ folder, runAs, secrets, binaries }: Cluster): Promise<void> {
  const draft = `${folder}.${randomBytes(6).toString('hex')}`;
  const passwordFile = `${draft}.secret`;
  mkdirSync(dirname(folder), { recursive: true, mode: 0o755 });
  mkdirSync(draft, { mode: 0o700 });
  writeSecretFile(passwordFile, secrets.superuser);
  try {
    if (runAs !== undefined) {
      chownSync(draft, runAs.uid, runAs.gid);
      chownSync(passwordFile, runAs.uid, runAs.gid);
    }
    await promisify(execFile)(
      binaries.initdb,
      [
        `--pgdata=${draft}`,
        `--username=${superuser}`,
        `--pwfile=${passwordFile}`,
        '--auth=scram-sha-256',
        '--encoding=UTF8',
        // Order of texts that no update of the machine's language data can change under an index.
        '--locale=C',
        '--locale-provider=builtin',
        '--builtin-locale=C.UTF-8',
        // Small segments, so that an archive of them can follow within seconds without growing by 16 MB each time.
        '--wal-segsize=4',
      ],
      spawnOptions(runAs),
    );
    if (!existsSync(folder)) renameSync(draft, folder);
  } catch (failure) {
    // A second process that started at the same moment, with the same secrets, was faster.
    if (existsSync(join(folder, 'PG_VERSION'))) return;
    throw new CannotStart(`A new database could not be made in ${folder}: ${reasonOf(failure)}`);
  } finally {
    rmSync(passwordFile, { force: true });
    rmSync(draft, { recursive: true, force: true });
  }
}
