/**
 * The wheels of a visit as they are now. A wheel has a row for each time it came off (or was tightened again); the last
 * one of a place counts, so that a wheel that came off again hides what was recorded before. Nothing here knows or
 * computes a torque: its value and where it comes from are what somebody recorded.
 */
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

type Wheel = Row<'wheelRecord'>;

/** The last thing that happened to it, epoch ms. */
function lastMoment({ offAt, onAt, torquedAt, effectiveAt }: Wheel): number {
  const moments = [offAt, onAt, torquedAt].filter((moment) => moment !== null);
  return moments.length > 0 ? Math.max(...moments) : effectiveAt;
}

function isLater(one: Wheel, other: Wheel): boolean {
  const by = lastMoment(one) - lastMoment(other) || one.recordedAt - other.recordedAt;
  return by === 0 ? one.id > other.id : by > 0;
}

/** The record that counts of each place of the visit, by place. */
export function wheelsNow(rows: Rows, jobId: string): Wheel[] {
  const last = new Map<string, Wheel>();
  for (const wheel of rows.list('wheelRecord', (one) => one.jobId === jobId)) {
    const other = last.get(wheel.position);
    if (!other || isLater(wheel, other)) last.set(wheel.position, wheel);
  }
  return [...last.values()].sort((a, b) => (a.position < b.position ? -1 : 1));
}

export function isOff(wheel: Pick<Wheel, 'offAt' | 'onAt' | 'torquedAt'>): boolean {
  return wheel.offAt !== null && wheel.onAt === null && wheel.torquedAt === null;
}

/** Wheels that are off now. */
export function wheelsOff(rows: Rows, jobId: string): Wheel[] {
  return wheelsNow(rows, jobId).filter(isOff);
}

/** Wheels that are on again without a torque record. */
export function wheelsUntorqued(rows: Rows, jobId: string): Wheel[] {
  return wheelsNow(rows, jobId).filter((wheel) => wheel.onAt !== null && wheel.torquedAt === null);
}

/** Whether any wheel was off on this visit, or was put on as one that had been. */
export function wheelsWereOff(rows: Rows, jobId: string): boolean {
  return rows.list('wheelRecord', (one) => one.jobId === jobId && (one.offAt !== null || one.onAt !== null)).length > 0;
}

/** Whether the re-torque of this visit's wheels was put down as outstanding, whatever became of it since. */
export function retorqueSettled(rows: Rows, job: Pick<Row<'job'>, 'id'>): boolean {
  return rows.list('followUp', (one) => one.kind === 'retorque' && one.fromJobId === job.id).length > 0;
}
