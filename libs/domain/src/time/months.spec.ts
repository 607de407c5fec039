import { describe, expect, it } from '@jest/globals';
import { strikeEntry } from '../any/strike-entry.js';
import { takeBack } from '../any/take-back.js';
import { circumstances, given, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { addAttendance, correctAttendance } from './correct-attendance.js';
import { addClock, correctClock } from './correct-clock.js';
import { correctHold } from './correct-hold.js';
import { addStay, correctStay } from './correct-stay.js';
import { closeMonth, flagClosedMonth, reopenMonth } from './months.js';

// Summer time begins in the zone of the shop on 29 March: the month ends an hour earlier than its UTC days say.
const endOfMarch = Date.UTC(2026, 2, 31, 23);
const close = (rows: Rows, month: string, now = endOfMarch) =>
  carryOut(closeMonth, rows.fork(), { month, words: 'Counted' }, { now, by: 'manager' });
const reopen = (rows: Rows, month = '2026-03') =>
  carryOut(reopenMonth, rows.fork(), { month, words: 'A wrong clock' }, { now: endOfMarch, by: 'owner' });

describe('closeMonth', () => {
  it('closes a month that is over in the zone of the shop, once', () => {
    const rows = given().shop().rows();
    expect(close(rows, '2026-03', endOfMarch - 1).codes).toEqual(['time.monthNotOver']);
    const closed = close(rows, '2026-03');
    expect(closed.rows.list('closedMonth')).toMatchObject([{ month: '2026-03', words: 'Counted', reopenedAt: null }]);
    expect(close(closed.rows, '2026-03').codes).toEqual(['time.monthClosedAlready']);
    expect(close(closed.rows, '2025-12').codes).toEqual([]);
  });

  it('is opened again with words, and may be closed once more', () => {
    const closed = close(given().shop().rows(), '2026-03').rows;
    const opened = reopen(closed);
    expect(opened.rows.list('closedMonth')).toMatchObject([{ reopenedById: 'owner', reopenWords: 'A wrong clock' }]);
    expect(reopen(opened.rows).codes).toEqual(['time.monthNotClosed']);
    expect(close(opened.rows, '2026-03').codes).toEqual([]);
  });
});

describe('a closed month', () => {
  const nine = opening + hour;
  const base = { recordedAt: opening, effectiveAt: opening, byId: null, device: null } as const;
  const here = { id: 'a1', ...base, personId: 'technician', kind: 'present', words: null } as const;
  const march = () =>
    given()
      .shop()
      .bay('b1')
      .vehicle('v1')
      .job('j1')
      .inYard({ toAt: nine })
      .inBay('b1', { fromAt: nine })
      .line('l1')
      .clock('c1', { toAt: nine })
      .hold('h1', { reason: 'tool', toAt: nine })
      .row('attendance', { ...here, fromAt: opening, toAt: nine });
  const said = { now: endOfMarch + hour, by: 'owner' } as const;
  const words = 'Looked';
  const lost = { fromAt: nine + minute, toAt: nine + 2 * minute };
  const inMarch = (rows: Rows) => [
    carryOut(correctClock, rows.fork(), { clockId: 'c1', toAt: nine - 1, words }, said),
    carryOut(addClock, rows.fork(), { personId: 'technician', lineId: 'l1', ...lost, words }, said),
    carryOut(correctHold, rows.fork(), { holdId: 'h1', toAt: nine - 1, words }, said),
    carryOut(correctAttendance, rows.fork(), { attendanceId: 'a1', toAt: nine - 1, words }, said),
    carryOut(addAttendance, rows.fork(), { personId: 'technician', kind: 'break', ...lost, words }, said),
    carryOut(correctStay, rows.fork(), { placeId: 'j1-b1', fromAt: nine - 1, words }, said),
    carryOut(addStay, rows.fork(), { jobId: 'j1', kind: 'yard', ...lost, words }, said),
    carryOut(strikeEntry, rows.fork(), { table: 'clock', id: 'c1', words }, said),
    carryOut(strikeEntry, rows.fork(), { table: 'hold', id: 'h1', words }, said),
    carryOut(strikeEntry, rows.fork(), { table: 'attendance', id: 'a1', words }, said),
  ];

  it('refuses every correction, addition and striking of what lies in it, with the month', () => {
    const closed = close(march().rows(), '2026-03').rows;
    for (const { codes, refusedFor } of inMarch(closed)) {
      expect([codes, refusedFor]).toEqual([['time.monthClosed'], { month: '2026-03' }]);
    }
    for (const { codes } of inMarch(reopen(closed).rows)) expect(codes).toEqual([]);
    for (const { codes } of inMarch(close(march().rows(), '2026-02').rows)) expect(codes).toEqual([]);
  });

  it('is not touched by the end of what ran on beyond it', () => {
    const forgotten = march().clock('c2', { fromAt: nine + minute, personId: 'second' });
    const closed = close(forgotten.rows(), '2026-03').rows;
    const end = (toAt: number) => carryOut(correctClock, closed.fork(), { clockId: 'c2', toAt, words }, said).codes;
    expect(end(endOfMarch - 1)).toEqual(['time.monthClosed']);
    expect(end(endOfMarch)).toEqual([]);
  });

  it('is not changed by taking back what was corrected before it was closed', () => {
    const corrected = carryOut(correctClock, march().rows(), { clockId: 'c1', toAt: nine - 1, words }, said);
    const takenBack = {
      ...{ seq: 3, command: 'correctClock', personId: 'owner', recordedAt: said.now },
      edits: corrected.rows.changes(),
    };
    const undo = (rows: Rows) => carryOut(takeBack, rows.fork(), { seq: 3 }, { ...said, takenBack }).codes;
    expect(undo(corrected.rows)).toEqual([]);
    expect(undo(close(corrected.rows, '2026-03').rows)).toEqual(['time.monthClosed']);
  });

  it('keeps a report that comes late, and marks it', () => {
    const rows = close(march().rows(), '2026-03').rows.fork();
    const subjects = { jobId: 'j1', vehicleId: 'v1' };
    flagClosedMonth(rows, circumstances({ now: endOfMarch + hour, effectiveAt: tuesdayTen }), subjects);
    flagClosedMonth(rows, circumstances({ now: endOfMarch + hour, ids: 'none' }), subjects);
    expect(rows.list('flag')).toMatchObject([{ rule: 'time.inClosedMonth', facts: { month: '2026-03' }, jobId: 'j1' }]);
  });
});
