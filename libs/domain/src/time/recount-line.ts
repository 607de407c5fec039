import type { Rows } from '../kernel/rows.js';
import { lineEnded, live } from '../questions/place-and-work.js';
import { isRunning } from '../timeline/timeline.js';

/**
 * Nobody sets a line's progress (rule 2), so after a correction it is what its clocks say: since the first of them, going
 * on while one runs, stopped after the last. A line without clocks was never begun: planned again, also where its
 * go-ahead was withdrawn, since nothing was done that could be put back or charged. A line that has ended stays ended as
 * somebody said it is; only since when it was worked on follows the clocks it has.
 */
export function recountLine(rows: Rows, lineId: string): void {
  const line = live(rows, 'workLine', lineId);
  if (!line) return;
  const clocks = rows.list('clock', (clock) => clock.lineId === lineId);
  const first = clocks.length === 0 ? null : Math.min(...clocks.map((clock) => clock.fromAt));
  const ended = lineEnded(line);
  const startedAt = ended ? (first ?? line.startedAt) : first;
  const going = clocks.some(isRunning) ? 'started' : clocks.length === 0 ? 'planned' : 'stopped';
  const progress = ended ? line.progress : going;
  if (startedAt !== line.startedAt || progress !== line.progress) {
    rows.change('workLine', lineId, { startedAt, progress });
  }
}
