import { describe, expect, it } from '@jest/globals';
import type { AddClock, CorrectClock } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { takeBack } from '../any/take-back.js';
import { carryOut } from '../settle/carry-out.js';
import { addClock, correctClock } from './correct-clock.js';

const van = () => given().shop().vehicle('v1').job('j1').inYard().line('l1').line('l2');
const stopped = { progress: 'stopped', startedAt: opening } as const;
const nine = opening + hour;
const worked = () => van().but('workLine', 'l1', stopped).clock('c1', { lineId: 'l1', toAt: nine });
const running = () =>
  van()
    .but('workLine', 'l1', { ...stopped, progress: 'started' })
    .clock('c1', { lineId: 'l1' });
const yesterday = opening - 24 * hour;
const add = (rows: Rows, over: Partial<AddClock> = {}, said: GivenCircumstances = {}) => {
  const input = { personId: 'technician', lineId: 'l2', fromAt: nine, toAt: tuesdayTen, words: 'Forgot' };
  return carryOut(addClock, rows, { ...input, ...over }, { by: 'technician', ...said });
};
const correct = (rows: Rows, over: Partial<CorrectClock>, said: GivenCircumstances = {}) =>
  carryOut(correctClock, rows, { clockId: 'c1', words: 'Looked', ...over }, { by: 'technician', ...said });
const line = (rows: Rows, id: string) => {
  const { progress, startedAt } = rows.get('workLine', id);
  return [progress, startedAt];
};

describe('addClock', () => {
  it('adds time that nobody clocked: the line was begun then and has stopped', () => {
    const { rows, outcome } = add(van().rows(), { clockId: 'c9', bench: true });
    expect(rows.get('clock', 'c9')).toMatchObject({ jobId: 'j1', lineId: 'l2', bench: true, fromAt: nine });
    expect(line(rows, 'l2')).toEqual(['stopped', nine]);
    expect(outcome?.facts).toMatchObject({ lineId: 'l2', personId: 'technician', workedMs: hour });
    expect(rows.list('correction')).toMatchObject([{ kind: 'added', tableName: 'clock', newRowId: 'c9', jobId: 'j1' }]);
  });

  it('begins the line earlier where the time was earlier, and leaves one that has ended as it ended', () => {
    expect(line(add(worked().rows(), { lineId: 'l1' }).rows, 'l1')).toEqual(['stopped', opening]);
    const done = van().but('workLine', 'l2', { progress: 'done', startedAt: tuesdayTen, endedAt: tuesdayTen });
    expect(line(add(done.rows()).rows, 'l2')).toEqual(['done', nine]);
    const left = van().but('job', 'j1', { endedAt: tuesdayTen }).rows();
    expect(add(left).codes).toEqual([]);
  });

  it('refuses a second clock of a person, with the one it clashes with (rule 1)', () => {
    const clash = add(worked().rows(), { fromAt: nine - 1 });
    expect([clash.codes, clash.refusedFor]).toEqual([
      ['time.onAnotherClock'],
      { jobNumber: 1, fromAt: new Date(opening).toISOString(), toAt: new Date(nine).toISOString(), runs: false },
    ]);
    expect(clash.refusals[0]?.way).toEqual({ table: 'clock', id: 'c1' });
    expect(add(worked().rows(), { fromAt: nine - 1, personId: 'second' }, { by: 'owner' }).codes).toEqual([]);
  });

  it('refuses the time of others, of another day, to come, and what is not there', () => {
    const rows = worked().rows();
    expect(add(rows, { personId: 'second' }).codes).toEqual(['time.notYours']);
    expect(add(rows, { fromAt: yesterday, toAt: yesterday + 1 }).codes).toEqual(['time.dayIsOver']);
    expect(add(rows, { toAt: tuesdayTen + 1 }).codes).toEqual(['time.inFuture']);
    expect(add(rows, { lineId: 'x' }).codes).toEqual(['row.notFound']);
    expect(add(rows, { personId: 'x' }).codes).toEqual(['row.notFound']);
    expect(add(rows, { clockId: 'c1' }).codes).toEqual(['time.alreadyRecorded']);
  });
});

describe('correctClock', () => {
  it('keeps both versions and moves the beginning of the line', () => {
    const { rows } = correct(worked().rows(), { fromAt: opening + minute });
    expect(rows.get('clock', 'c1').void).toBe(true);
    expect(rows.list('clock')).toMatchObject([{ lineId: 'l1', fromAt: opening + minute, toAt: nine }]);
    expect(line(rows, 'l1')).toEqual(['stopped', opening + minute]);
    expect(rows.list('correction')).toMatchObject([{ kind: 'replaced', rowId: 'c1', before: { fromAt: opening } }]);
  });

  it('moves it to another line and person: what nobody worked on is planned again (rule 2)', () => {
    const { rows, codes } = correct(worked().rows(), { lineId: 'l2', personId: 'second' }, { by: 'manager' });
    expect(codes).toEqual([]);
    expect(rows.list('clock')).toMatchObject([{ lineId: 'l2', personId: 'second', fromAt: opening }]);
    expect([line(rows, 'l1'), line(rows, 'l2')]).toEqual([
      ['planned', null],
      ['stopped', opening],
    ]);
    expect(correct(worked().rows(), { personId: 'second' }).codes).toEqual(['time.notYours']);
  });

  it('ends a forgotten one in its own row, also by whose it is on a later day; nothing else of a later day', () => {
    const rows = running().but('clock', 'c1', { fromAt: yesterday }).rows();
    const ended = correct(rows, { toAt: yesterday + 9 * hour }).rows;
    expect(ended.get('clock', 'c1')).toMatchObject({ void: false, toAt: yesterday + 9 * hour });
    expect(line(ended, 'l1')).toEqual(['stopped', yesterday]);
    expect(ended.list('correction')).toMatchObject([{ kind: 'ended', rowId: 'c1', newRowId: 'c1' }]);
    expect(correct(rows, { toAt: yesterday + hour, bench: true }).codes).toEqual(['time.dayIsOver']);
    expect(correct(rows, { toAt: yesterday + hour }, { by: 'partsClerk' }).codes).toEqual(['time.notYours']);
  });

  it('lets one run on again, unless its line or its visit has ended', () => {
    expect(line(correct(worked().rows(), { toAt: null }).rows, 'l1')).toEqual(['started', opening]);
    const done = worked().but('workLine', 'l1', { progress: 'done' }).rows();
    expect(correct(done, { toAt: null }).codes).toEqual(['time.cannotRun']);
    const left = worked().but('job', 'j1', { endedAt: tuesdayTen }).rows();
    expect(correct(left, { toAt: null }).codes).toEqual(['time.cannotRun']);
    expect(correct(left, { toAt: nine + minute }).codes).toEqual([]);
  });

  it('refuses a clash, what changes nothing and what ends before it begins', () => {
    const two = worked().clock('c2', { lineId: 'l2', fromAt: nine, toAt: tuesdayTen });
    expect(correct(two.rows(), { toAt: nine + 1 }).codes).toEqual(['time.onAnotherClock']);
    expect(correct(worked().rows(), { toAt: nine, lineId: 'l1' }).codes).toEqual(['time.nothingChanged']);
    expect(correct(worked().rows(), { fromAt: nine }).codes).toEqual(['time.endBeforeStart']);
    expect(correct(van().rows(), { toAt: nine }).codes).toEqual(['row.notFound']);
    expect(correct(worked().rows(), { lineId: 'x' }).codes).toEqual(['row.notFound']);
    expect(correct(worked().rows(), { personId: 'x' }, { by: 'owner' }).codes).toEqual(['row.notFound']);
  });

  it('is taken back like any other change', () => {
    const once = correct(worked().rows(), { fromAt: opening + minute });
    const takenBack = {
      seq: 7,
      command: 'correctClock',
      personId: 'technician',
      recordedAt: tuesdayTen,
      edits: once.rows.changes(),
    };
    const { rows, codes } = carryOut(takeBack, once.rows.fork(), { seq: 7 }, { by: 'technician', takenBack });
    expect(codes).toEqual([]);
    expect(rows.list('clock')).toMatchObject([{ id: 'c1', fromAt: opening, toAt: nine }]);
    expect(line(rows, 'l1')).toEqual(['stopped', opening]);
    expect(rows.list('correction')).toEqual([]);
  });
});
