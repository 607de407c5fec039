import { describe, expect, it } from '@jest/globals';
import type { AddAttendance, CorrectAttendance, RecordAttendance } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { NewRow, Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { startWork } from '../work/start-work.js';
import { addAttendance, correctAttendance } from './correct-attendance.js';
import { recordAttendance } from './record-attendance.js';

const base = { recordedAt: opening, effectiveAt: opening, byId: null, device: null } as const;
const present = (over: Partial<NewRow<'attendance'>> = {}) => ({
  ...base,
  ...({ id: 'a1', personId: 'technician', kind: 'present', words: null, fromAt: opening, toAt: null } as const),
  ...over,
});
const shop = () => given().shop().vehicle('v1').job('j1').inYard().line('l1');
const here = (over: Parameters<typeof present>[0] = {}) => shop().row('attendance', present(over));
const say = (rows: Rows, input: RecordAttendance, said: GivenCircumstances = {}) =>
  carryOut(recordAttendance, rows, input, { by: 'technician', ...said });
const stretches = (rows: Rows) => rows.list('attendance').map((one) => [one.kind, one.fromAt, one.toAt]);
const yesterday = opening - 24 * hour;

describe('recordAttendance', () => {
  it('begins a stretch of that kind where the one before it ends; gone only ends', () => {
    const came = say(shop().rows(), { kind: 'present', attendanceId: 'a9' }, { effectiveAt: opening });
    expect(came.outcome?.created).toEqual({ attendance: 'a9' });
    const away = say(came.rows.fork(), { kind: 'break' }, { effectiveAt: tuesdayTen - hour });
    const gone = say(away.rows.fork(), { kind: 'gone' });
    expect(stretches(gone.rows)).toEqual([
      ['present', opening, tuesdayTen - hour],
      ['break', tuesdayTen - hour, tuesdayTen],
    ]);
    expect(gone.outcome?.facts).toEqual({ personId: 'technician', kind: 'gone', stopped: false });
  });

  it('never lets two stretches overlap, however late a report comes (rule 1)', () => {
    const rows = here({ toAt: tuesdayTen }).rows();
    const late = say(rows, { kind: 'break' }, { effectiveAt: opening + minute, now: tuesdayTen + hour });
    expect(stretches(late.rows)).toEqual([
      ['present', opening, tuesdayTen],
      ['break', tuesdayTen, null],
    ]);
  });

  it.each(['break', 'shopTime', 'gone'] as const)('stops the own clock at that instant when it is %s', (kind) => {
    const rows = here().but('workLine', 'l1', { progress: 'started', startedAt: opening }).clock('c1').rows();
    const { rows: after, outcome } = say(rows, { kind, words: 'Swept' }, { effectiveAt: tuesdayTen - hour });
    expect(after.get('clock', 'c1').toAt).toBe(tuesdayTen - hour);
    expect(after.get('workLine', 'l1').progress).toBe('stopped');
    expect(outcome?.facts).toMatchObject({ stopped: true, jobId: 'j1', lineId: 'l1', workedMs: hour });
  });

  it('leaves the clock to one who says once more that they are here', () => {
    const rows = here().clock('c1').rows();
    const again = say(rows, { kind: 'present' });
    expect(again.rows.get('clock', 'c1').toAt).toBeNull();
    expect(stretches(again.rows)).toEqual([['present', opening, null]]);
  });

  it('begins anew where yesterday was never ended, and for another word of shop time', () => {
    const forgotten = say(here({ fromAt: yesterday }).rows(), { kind: 'present' });
    expect(stretches(forgotten.rows)).toEqual([
      ['present', yesterday, tuesdayTen],
      ['present', tuesdayTen, null],
    ]);
    const swept = here({ kind: 'shopTime', words: 'Swept' }).rows();
    expect(stretches(say(swept, { kind: 'shopTime', words: 'Swept' }).rows)).toHaveLength(1);
    expect(stretches(say(swept, { kind: 'shopTime', words: 'Fetched oil' }).rows)).toHaveLength(2);
  });

  it('is for oneself; for others by manager or owner', () => {
    const rows = shop().rows();
    expect(say(rows, { kind: 'present', personId: 'second' }).codes).toEqual(['time.othersAttendance']);
    const told = say(rows, { kind: 'present', personId: 'second' }, { by: 'manager' });
    expect(told.rows.list('attendance')).toMatchObject([{ personId: 'second', kind: 'present' }]);
    expect(say(rows, { kind: 'gone', personId: 'nobody' }, { by: 'manager' }).codes).toEqual(['row.notFound']);
  });

  it('needs a word for shop time, and an id that is free', () => {
    expect(say(shop().rows(), { kind: 'shopTime' }).codes).toEqual(['time.wordMissing']);
    expect(say(here().rows(), { kind: 'break', attendanceId: 'a1' }).codes).toEqual(['time.alreadyRecorded']);
  });
});

describe('going on a clock', () => {
  const start = (rows: Rows) => carryOut(startWork, rows, { lineId: 'l1' }, { by: 'technician' }).rows;
  it('is being here: presence begins with it, and a break or shop time ends', () => {
    expect(stretches(start(shop().rows()))).toEqual([['present', tuesdayTen, null]]);
    expect(stretches(start(here().rows()))).toEqual([['present', opening, null]]);
    for (const kind of ['break', 'shopTime'] as const) {
      expect(stretches(start(here({ kind }).rows()))).toEqual([
        [kind, opening, tuesdayTen],
        ['present', tuesdayTen, null],
      ]);
    }
    expect(stretches(start(here({ fromAt: yesterday }).rows()))).toHaveLength(2);
  });
});

describe('addAttendance', () => {
  const add = (rows: Rows, over: Partial<AddAttendance> = {}, said: GivenCircumstances = {}) => {
    const input = {
      personId: 'technician',
      kind: 'present',
      fromAt: opening,
      toAt: tuesdayTen,
      words: 'Forgot',
    } as const;
    return carryOut(addAttendance, rows, { ...input, ...over }, { by: 'technician', ...said });
  };

  it('adds what was missing and keeps why', () => {
    const { rows, codes } = add(shop().rows(), { attendanceId: 'a9', kind: 'shopTime' });
    expect(codes).toEqual([]);
    expect(rows.get('attendance', 'a9')).toMatchObject({ kind: 'shopTime', words: 'Forgot', toAt: tuesdayTen });
    expect(rows.list('correction')).toMatchObject([
      { kind: 'added', tableName: 'attendance', rowId: null, newRowId: 'a9', before: null, personId: 'technician' },
    ]);
  });

  it('refuses what clashes, naming it, what is to come and what ends before it begins', () => {
    const clash = add(here().rows(), { kind: 'break' });
    expect(clash.codes).toEqual(['time.otherPresence']);
    expect(clash.refusedFor).toEqual({
      kind: 'present',
      fromAt: new Date(opening).toISOString(),
      toAt: null,
      runs: true,
    });
    expect(clash.refusals[0]?.way).toEqual({ table: 'attendance', id: 'a1' });
    expect(add(shop().rows(), { toAt: tuesdayTen + 1 }).codes).toEqual(['time.inFuture']);
    expect(add(shop().rows(), { toAt: opening }).codes).toEqual(['time.endBeforeStart']);
    expect(add(here().rows(), { attendanceId: 'a1' }).codes).toEqual(['time.alreadyRecorded']);
    expect(add(shop().rows(), { personId: 'x' }).codes).toEqual(['row.notFound']);
  });

  it('is for the own time of the same day, else for manager and owner (rule 14)', () => {
    const rows = shop().rows();
    const old = { fromAt: yesterday, toAt: yesterday + hour };
    expect(add(rows, { personId: 'second' }).codes).toEqual(['time.notYours']);
    expect(add(rows, old).codes).toEqual(['time.dayIsOver']);
    expect(add(rows, { ...old, personId: 'second' }, { by: 'manager' }).codes).toEqual([]);
  });
});

describe('correctAttendance', () => {
  const correct = (rows: Rows, over: Partial<CorrectAttendance>, said: GivenCircumstances = {}) =>
    carryOut(correctAttendance, rows, { attendanceId: 'a1', words: 'Looked', ...over }, { by: 'technician', ...said });

  it('keeps both versions: the old row void, a new one, and what stood before with the words', () => {
    const { rows, outcome } = correct(here({ toAt: tuesdayTen }).rows(), {
      kind: 'shopTime',
      fromAt: opening + minute,
    });
    expect(rows.get('attendance', 'a1')).toMatchObject({ void: true, fromAt: opening });
    expect(rows.list('attendance')).toMatchObject([{ kind: 'shopTime', words: 'Looked', fromAt: opening + minute }]);
    expect(rows.list('correction')).toMatchObject([
      {
        kind: 'replaced',
        rowId: 'a1',
        newRowId: outcome?.created?.['attendance'],
        before: { fromAt: opening, kind: 'present' },
        words: 'Looked',
      },
    ]);
  });

  it('closes the row where only its end was missing, for whose it is on any later day', () => {
    const rows = here({ fromAt: yesterday }).rows();
    const after = correct(rows, { toAt: yesterday + 9 * hour }).rows;
    expect(after.get('attendance', 'a1')).toMatchObject({ void: false, toAt: yesterday + 9 * hour });
    expect(after.list('correction')).toMatchObject([
      { kind: 'ended', rowId: 'a1', newRowId: 'a1', before: { toAt: null } },
    ]);
    expect(correct(rows, { toAt: yesterday + hour, fromAt: yesterday + 1 }).codes).toEqual(['time.dayIsOver']);
    const others = here({ personId: 'second' }).rows();
    expect(correct(others, { toAt: tuesdayTen }).codes).toEqual(['time.notYours']);
  });

  it('lets it run on again, but not over what came after it', () => {
    const rows = here({ toAt: tuesdayTen - hour }).rows();
    expect(stretches(correct(rows, { toAt: null }).rows)).toEqual([['present', opening, null]]);
    const later = here({ toAt: tuesdayTen - hour }).row(
      'attendance',
      present({ id: 'a2', fromAt: tuesdayTen - minute }),
    );
    expect(correct(later.rows(), { toAt: null }).codes).toEqual(['time.otherPresence']);
  });

  it('refuses what changes nothing and what is not there', () => {
    expect(correct(here().rows(), { kind: 'present', fromAt: opening }).codes).toEqual(['time.nothingChanged']);
    expect(correct(shop().rows(), { toAt: tuesdayTen }).codes).toEqual(['row.notFound']);
  });
});
