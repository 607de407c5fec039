/** What all benchmarks share: a PostgreSQL with fsync on, percentiles, and the one JSON line that each prints. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { startEmbedded } from '../../apps/server/src/database/embedded.js';
import { ownerRole } from '../../apps/server/src/database/roles.js';

export interface BenchLine {
  readonly name: string;
  /** Ours divided by the bare baseline of the same run; null where the target is absolute. */
  readonly ratio: number | null;
  readonly target: string;
  readonly holds: boolean;
  readonly [figure: string]: unknown;
}

export function percentile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

export const round = (value: number, digits = 2) => Number(value.toFixed(digits));

export interface BenchDatabase {
  readonly dataDir: string;
  /** A database for Holdfast, owned by the role that migrates. */
  readonly databaseUrl: string;
  /** A database for the bare baseline on the same server, as superuser. */
  readonly bareUrl: string;
  stop(): Promise<void>;
}

const silent = { info: () => undefined, warn: () => undefined };

export async function benchDatabase(): Promise<BenchDatabase> {
  const dataDir = mkdtempSync(join(tmpdir(), 'holdfast-bench-'));
  const embedded = await startEmbedded(dataDir, silent, { settings: { max_connections: '120' } });
  const admin = new pg.Client({ connectionString: embedded.superuserUrl });
  await admin.connect();
  await admin.query(`create database bench owner ${ownerRole}`);
  await admin.query('create database bare');
  await admin.end();
  const databaseUrl = new URL(embedded.ownerUrl);
  databaseUrl.pathname = '/bench';
  const bareUrl = new URL(embedded.superuserUrl);
  bareUrl.pathname = '/bare';
  return {
    dataDir,
    databaseUrl: databaseUrl.href,
    bareUrl: bareUrl.href,
    async stop() {
      await embedded.stop();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}
