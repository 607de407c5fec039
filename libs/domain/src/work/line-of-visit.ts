/** The line that a command names, with its job and its vehicle, where all are there. */
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { clocksRunningOn, lineEnded, live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import { close } from '../timeline/timeline.js';
import { applyEdits } from '../timeline/lanes.js';
import type { Circumstances } from '../kernel/decision.js';

export interface LineOfVisit extends Visit {
  readonly line: Row<'workLine'>;
}

export function lineOfVisit(rows: Rows, lineId: string): LineOfVisit | Refused {
  const line = live(rows, 'workLine', lineId);
  if (!line) return notThere('workLine', lineId);
  const visit = visitOf(rows, line.jobId);
  return visit instanceof Refused ? visit : { ...visit, line };
}

/** The line, where it can still change and come to an end. */
export function openLineOfVisit(rows: Rows, lineId: string): LineOfVisit | Refused {
  const found = lineOfVisit(rows, lineId);
  if (found instanceof Refused) return found;
  const { job, line } = found;
  if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
  return lineEnded(line) ? refuse('work.lineEnded', { progress: line.progress }) : found;
}

/** Stops every clock that runs on the line, at `when` (epoch ms); the last instant at which one of them stopped. */
export function stopClocksOn(rows: Rows, at: Circumstances, lineId: string, when: number): number {
  const edits = clocksRunningOn(rows, lineId).map((clock) => close(clock, when));
  applyEdits(rows, at, 'clock', edits);
  return edits.reduce((latest, edit) => (edit.do === 'close' ? Math.max(latest, edit.toAt) : latest), when);
}

/** Whether work goes on on a line follows from its clocks (rule 2). */
export function noteClocksOf(rows: Rows, lineId: string): void {
  const line = live(rows, 'workLine', lineId);
  if (!line || line.progress === 'done' || line.progress === 'carriedOver' || line.progress === 'dropped') return;
  if (line.progress === 'planned' && line.startedAt === null) return;
  const progress = clocksRunningOn(rows, lineId).length > 0 ? 'started' : 'stopped';
  if (line.progress !== progress) rows.change('workLine', lineId, { progress });
}
