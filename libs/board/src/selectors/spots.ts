/** Bays in the order of the building, their spots, and what became of each spot's opening time. */
import { type JobLine, partition, type SpotAccount, usualGraceMs } from '@holdfast/bay-time';
import { outOfUseByOutage, type Row, settingOn, specOn } from '@holdfast/domain';
import { type Interval, intersect } from '@holdfast/shop-calendar';
import type { Board } from '../board.js';
import { calendarOfBoard, rowsOf } from './rows-of.js';

export interface Spot {
  readonly bay: Row<'bay'>;
  readonly spec: Row<'baySpec'>;
  /** 1 to the bay's number of spots. */
  readonly spot: number;
  /** Who has the spot now: standing there, or on a road test with the spot kept. */
  readonly use: Row<'spotUse'> | null;
}

/** Every spot of every bay that is in being on the day of `now`, in the order of the building. */
export function spotsInOrder(board: Board, now: number): Spot[] {
  const rows = rowsOf(board);
  const today = calendarOfBoard(board).dateOf(now);
  const running = rows.list('spotUse', (use) => use.toAt === null);
  return rows
    .list('bay', (bay) => bay.endedOn === null || bay.endedOn > today)
    .sort((a, b) => a.position - b.position)
    .flatMap((bay) => {
      const spec = specOn(rows, bay.id, today);
      return Array.from({ length: spec.spots }, (_, at) => ({
        bay,
        spec,
        spot: at + 1,
        use: running.find((use) => use.bayId === bay.id && use.spot === at + 1) ?? null,
      }));
    });
}

/** The lines of a job with the days of their answers, as the account of bay time wants them. */
export function accountLines(board: Board, jobId: string): JobLine[] {
  const rows = rowsOf(board);
  const answers = rows.list('goAhead', (one) => one.jobId === jobId);
  return rows
    .list('workLine', (line) => line.jobId === jobId)
    .map((line) => ({
      jobId,
      lineId: line.id,
      addedAt: line.effectiveAt,
      endedAt: line.endedAt,
      after: line.afterLineId,
      choice: line.choiceId,
      goAhead: answers
        .filter((one) => one.lineId === line.id)
        .map((one) => ({ at: one.effectiveAt, answer: one.answer })),
    }));
}

export function accountHolds(board: Board, jobId: string) {
  const rows = rowsOf(board);
  const named = rows.list('holdLine');
  return rows
    .list('hold', (hold) => hold.jobId === jobId)
    .map((hold) => ({
      holdId: hold.id,
      jobId,
      lineIds: named.filter((one) => one.holdId === hold.id).map((one) => one.lineId),
      reason: hold.reason,
      from: hold.fromAt,
      to: hold.toAt ?? (hold.reason === 'setting' ? hold.endsAt : null),
    }));
}

/** Stored: an internal job that is marked so, from its arrival to its end. */
export function storedMarks(job: Row<'job'>) {
  return job.storedHere && job.arrivedAt !== null ? [{ jobId: job.id, from: job.arrivedAt, to: job.endedAt }] : [];
}

/** The account of one spot over `window` (epoch ms), from the rows of the board: what the strips draw. */
export function accountOfSpot(board: Board, bayId: string, spot: number, window: Interval, now: number): SpotAccount {
  const rows = rowsOf(board);
  const calendar = calendarOfBoard(board);
  const stays = rows
    .list('spotUse', (use) => use.bayId === bayId && use.spot === spot && (use.toAt ?? now) > window.from)
    .map((use) => ({ jobId: use.jobId, kind: use.kind, from: use.fromAt, to: use.toAt }));
  const jobs = [...new Set(stays.map((stay) => stay.jobId))].map((id) => rows.get('job', id));
  const from = Math.min(window.from, ...stays.map((stay) => stay.from));
  const spec = specOn(rows, bayId, calendar.dateOf(now));
  return partition({
    window,
    open: calendar.openIntervals(from, window.to),
    outOfUse: spec.outOfUse
      ? [{ from: calendar.dayBounds(spec.validFrom).from, to: window.to }]
      : intersect(outOfUseByOutage(rows.list('outage'), spec), [window]),
    stays,
    clocks: jobs.flatMap((job) => accountClocks(board, job.id)),
    holds: jobs.flatMap((job) => accountHolds(board, job.id)),
    lines: jobs.flatMap((job) => accountLines(board, job.id)),
    storedJobs: jobs.flatMap(storedMarks),
    breaks: calendar.breakIntervals(from, window.to),
    graceMs:
      board.tables.shopSetting.size > 0 ? settingOn(rows, calendar.dateOf(now)).graceMinutes * 60_000 : usualGraceMs,
    now,
  });
}

/** The clocks of people, and the time that somebody of another firm works here, which is work on the vehicle too. */
export function accountClocks(board: Board, jobId: string) {
  const rows = rowsOf(board);
  const own = rows
    .list('clock', (clock) => clock.jobId === jobId)
    .map(({ personId, bench, fromAt, toAt }) => ({ jobId, personId, bench, from: fromAt, to: toAt }));
  const outside = rows
    .list('sublet', (one) => one.jobId === jobId && one.form === 'outsiderIn')
    .flatMap(({ id, fromAt, toAt }) =>
      fromAt === null ? [] : [{ jobId, personId: `outsider:${id}`, bench: false, from: fromAt, to: toAt }],
    );
  return [...own, ...outside];
}
