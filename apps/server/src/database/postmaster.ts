import { spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { codeOf } from '../failure.js';
import type { Cluster } from './cluster.js';
import { spawnOptions } from './unprivileged-user.js';

/** What `postmaster.pid` in a database folder says. */
export interface Postmaster {
  readonly pid: number;
  readonly port: number;
  readonly ready: boolean;
}

/** PostgreSQL ended while it was starting. `mayPass`: the reason can go away by waiting, or with another port. */
export class PostmasterEnded extends Error {
  override readonly name = 'PostmasterEnded';
  readonly mayPass: boolean;
  readonly portTaken: boolean;

  constructor(lastWords: string) {
    super(lastWords);
    this.portTaken = /could not (bind|create any TCP)/.test(lastWords);
    this.mayPass =
      this.portTaken || /shared memory block|lock file ".*" (already exists|is empty)|starting up/.test(lastWords);
  }
}

const pollMs = 10;
/** Recovery after a crash replays what was not yet in the tables; on a slow disk that can take minutes. */
const longestStartMs = 300_000;
const longestFastStopMs = 20_000;
const largestLogBytes = 10_000_000;

/**
 * Settings that hold for every database folder of ours, given at each start so that they follow the release. Only
 * loopback, no socket in the file system. Log lines carry no statement and no row's values: they may be personal.
 */
const ourSettings: Readonly<Record<string, string>> = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  timezone: 'UTC',
  log_timezone: 'UTC',
  log_min_messages: 'log',
  log_min_error_statement: 'panic',
  log_error_verbosity: 'terse',
  log_checkpoints: 'off',
};

export function readPostmaster(folder: string): Postmaster | undefined {
  let lines: string[];
  try {
    lines = readFileSync(join(folder, 'postmaster.pid'), 'utf8').split('\n');
  } catch {
    return undefined;
  }
  const pid = Number(lines[0]);
  if (!Number.isInteger(pid) || pid <= 0) return undefined;
  return { pid, port: Number(lines[3] ?? 0), ready: lines[7]?.trim() === 'ready' };
}

/** Whether process `pid` lives and is PostgreSQL: after a restart of the machine the number may be somebody else's. */
export function isPostgresAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (failure) {
    // Not permitted means that it lives and is another user's.
    if (codeOf(failure) !== 'EPERM') return false;
  }
  try {
    if (/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'))) return false;
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('postgres');
  } catch {
    // No /proc, as on macOS: PostgreSQL itself then decides whether the process counts.
    return true;
  }
}

/** Removes a `postmaster.pid` that a killed PostgreSQL left and whose number now belongs to another program. */
export function removeStalePidFile(folder: string): void {
  rmSync(join(folder, 'postmaster.pid'), { force: true });
}

/** A port on 127.0.0.1 that is free now, below those that systems hand out for outgoing connections. */
export async function freePort(): Promise<number> {
  for (;;) {
    const port = 20_000 + Math.floor(Math.random() * 12_000);
    if (await isFree(port)) return port;
  }
}

export function isFree(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(false));
    probe.listen({ port, host: '127.0.0.1', exclusive: true }, () => probe.close(() => resolve(true)));
  });
}

/**
 * Starts PostgreSQL on the cluster's folder and resolves when it takes connections. It runs in a group of its own:
 * Ctrl-C at the terminal reaches the server alone, which then stops it in order.
 */
export async function startPostmaster(
  cluster: Cluster,
  port: number,
  extraSettings: Readonly<Record<string, string>>,
): Promise<Postmaster> {
  const logFile = join(cluster.folder, 'server.log');
  rotate(logFile);
  const log = openSync(logFile, 'a', 0o600);
  const logStart = statSync(logFile).size;
  const settings = Object.entries({ ...ourSettings, ...extraSettings, port: String(port) });
  const child = spawn(
    cluster.binaries.postgres,
    ['-D', cluster.folder, ...settings.flatMap(([name, value]) => ['-c', `${name}=${value}`])],
    { ...spawnOptions(cluster.runAs), detached: true, stdio: ['ignore', log, log] },
  );
  closeSync(log);
  child.unref();
  let failedToRun: string | undefined;
  child.once('error', (failure) => (failedToRun = failure.message));
  const giveUpAt = performance.now() + longestStartMs;
  while (performance.now() < giveUpAt) {
    if (failedToRun !== undefined) throw new PostmasterEnded(failedToRun);
    if (child.exitCode !== null || child.signalCode !== null) {
      throw new PostmasterEnded(readFileSync(logFile).subarray(logStart).toString('utf8').trim());
    }
    const postmaster = readPostmaster(cluster.folder);
    if (postmaster?.ready && postmaster.pid === child.pid) return postmaster;
    await pause(pollMs);
  }
  throw new PostmasterEnded(`PostgreSQL was not ready within ${longestStartMs / 1000} s.`);
}

/** Waits until a PostgreSQL that runs already takes connections; false when it ends first. */
export async function waitUntilReady(folder: string, pid: number): Promise<boolean> {
  const giveUpAt = performance.now() + longestStartMs;
  while (performance.now() < giveUpAt && isPostgresAlive(pid)) {
    const postmaster = readPostmaster(folder);
    if (postmaster?.pid === pid && postmaster.ready) return true;
    await pause(pollMs);
  }
  return false;
}

/** Stops it in order: open transactions are rolled back, a checkpoint is written. Only if that hangs, at once. */
export async function stopPostmaster(pid: number): Promise<void> {
  for (const [signal, patienceMs] of [
    ['SIGINT', longestFastStopMs],
    ['SIGQUIT', longestFastStopMs],
  ] as const) {
    if (!isPostgresAlive(pid)) return;
    process.kill(pid, signal);
    const giveUpAt = performance.now() + patienceMs;
    while (performance.now() < giveUpAt) {
      if (!isPostgresAlive(pid)) return;
      await pause(pollMs);
    }
  }
}

function rotate(logFile: string): void {
  try {
    if (statSync(logFile).size > largestLogBytes) renameSync(logFile, `${logFile}.1`);
  } catch {
    // No log yet.
  }
}
