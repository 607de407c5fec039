import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { CannotStart } from './cannot-start.js';

/** The user PostgreSQL is run as when this process is root, which PostgreSQL refuses for itself. */
export interface RunAs {
  readonly uid: number;
  readonly gid: number;
  /** For messages only. */
  readonly name: string;
}

/** Only what PostgreSQL's programs need; nothing of the server's own environment, which may hold secrets. */
export const postgresEnvironment = { PATH: '/usr/bin:/bin', LC_ALL: 'C', TZ: 'UTC' } as const;

/**
 * The user for PostgreSQL's processes, or undefined when they run as the user we are. As root: the owner of the
 * existing database folder, else `postgres`, else `nobody`.
 */
export function runAsFor(existingFolder: string | undefined): RunAs | undefined {
  if (process.getuid?.() !== 0) return undefined;
  if (existingFolder !== undefined) {
    const { uid, gid } = statSync(existingFolder);
    if (uid !== 0) return { uid, gid, name: `user ${uid}` };
  }
  for (const name of ['postgres', 'nobody']) {
    const uid = idOf('-u', name);
    const gid = idOf('-g', name);
    if (uid !== undefined && gid !== undefined && uid !== 0) return { uid, gid, name };
  }
  throw new CannotStart(
    'Holdfast was started as root, PostgreSQL does not run as root, and this machine has neither a user "postgres" nor ' +
      'a user "nobody". Start Holdfast as an ordinary user, or set DATABASE_URL to an existing PostgreSQL.',
  );
}

/** Whether that user (or we ourselves) can go into `folder`, which depends on every folder above it as well. */
export function canEnter(folder: string, runAs: RunAs | undefined): boolean {
  return shellSays('cd "$1"', folder, runAs);
}

/** Whether that user (or we ourselves) can read `file`. */
export function canRead(file: string, runAs: RunAs | undefined): boolean {
  return shellSays('test -r "$1"', file, runAs);
}

// Asked of the system itself: permission bits alone would miss access lists and mount options.
function shellSays(script: string, argument: string, runAs: RunAs | undefined): boolean {
  const answer = spawnSync('/bin/sh', ['-c', script, 'sh', argument], spawnOptions(runAs));
  return answer.status === 0;
}

/** Options for every PostgreSQL program: user, bare environment, and a working folder that everybody can enter. */
export function spawnOptions(runAs: RunAs | undefined): {
  cwd: string;
  env: NodeJS.ProcessEnv;
  uid?: number;
  gid?: number;
} {
  const ids = runAs === undefined ? {} : { uid: runAs.uid, gid: runAs.gid };
  return { cwd: '/', env: { ...postgresEnvironment }, ...ids };
}

function idOf(flag: '-u' | '-g', name: string): number | undefined {
  const answer = spawnSync('id', [flag, name], { encoding: 'utf8' });
  const id = Number(answer.stdout);
  return answer.status === 0 && Number.isInteger(id) ? id : undefined;
}
