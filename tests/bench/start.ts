/**
 * `start`: from the call of the built server to its line "ready at": from nothing (database made, migrated, demo
 * invented and loaded), and on the data of an earlier start, the median of several. Absolute targets.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServerProcess } from '../kit/server-process.js';
import { type BenchLine, percentile, round } from './measure.js';

const laterStarts = 5;
const longestFromNothing = 15;
const longestLater = 3;

/** Seconds from the spawn of the process to "ready at"; the server is stopped in order before this resolves. */
async function secondsToStart(dataDir: string): Promise<number> {
  const began = performance.now();
  const server = await startServerProcess({ dataDir });
  const seconds = (performance.now() - began) / 1000;
  await server.stop('SIGTERM');
  await server.ended;
  return seconds;
}

export async function benchStart(): Promise<BenchLine> {
  const dataDir = mkdtempSync(join(tmpdir(), 'holdfast-start-'));
  try {
    const fromNothing = await secondsToStart(dataDir);
    const later: number[] = [];
    for (let turn = 0; turn < laterStarts; turn += 1) later.push(await secondsToStart(dataDir));
    const existing = percentile(
      later.sort((a, b) => a - b),
      0.5,
    );
    return {
      name: 'start',
      fromNothingSeconds: round(fromNothing),
      existingSeconds: round(existing),
      ratio: null,
      target: `existing data ≤ ${longestLater} s; from nothing ≤ ${longestFromNothing} s`,
      holds: existing <= longestLater && fromNothing <= longestFromNothing,
    };
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}
