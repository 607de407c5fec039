import { describe, expect, it } from '@jest/globals';
import type { TakenBack } from '../kernel/decision.js';
import { given, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { takeIntoBay } from '../place/take-into-bay.js';
import { carryOut } from '../settle/carry-out.js';
import type { Role } from '../tables/words.js';
import { addLine } from '../work/add-line.js';
import { finishLine } from '../work/end-line.js';
import { startWork } from '../work/start-work.js';
import { takeBack } from './take-back.js';

const van = () => given().shop().bay('b1').bay('b2').vehicle('v1').job('j1').inBay('b1').line('l1');
type Ready = { readonly rows: Rows };
const changeOf = ({ rows }: Ready, over: Partial<TakenBack> = {}): TakenBack => ({
  ...{ seq: 5, command: 'startWork', personId: 'technician', recordedAt: tuesdayTen, edits: rows.changes() },
  ...over,
});
const undo = (rows: Rows, change: TakenBack, now = tuesdayTen + minute, by: Role = 'technician') =>
  carryOut(takeBack, rows.fork(), { seq: 5 }, { by, now, takenBack: change });
const start = (rows: Rows) => carryOut(startWork, rows, { lineId: 'l1', clockId: 'c1' }, { by: 'technician' });
const toBay2 = (rows: Rows) => carryOut(takeIntoBay, rows, { jobId: 'j1', bayId: 'b2' }, { by: 'technician' });

describe('takeBack', () => {
  it('voids what was made and gives what was changed its old values, as a newer version', () => {
    const started = start(van().rows());
    const { rows, outcome } = undo(started.rows, changeOf(started));
    expect(rows.get('clock', 'c1')).toMatchObject({ void: true, version: 2 });
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'planned', startedAt: null, version: 3 });
    expect(outcome?.facts).toEqual({ seq: 5, command: 'startWork' });
  });

  it('puts a vehicle back where it stood: the stay runs on', () => {
    const moved = toBay2(van().rows());
    const { rows } = undo(moved.rows, changeOf(moved));
    expect(rows.list('place')).toMatchObject([{ bayId: 'b1', fromAt: opening, toAt: null }]);
    expect(rows.list('spotUse')).toMatchObject([{ bayId: 'b1', fromAt: opening, toAt: null }]);
  });

  it('keeps a stay ended whose spot another vehicle has by now (rule 1)', () => {
    const moved = toBay2(van().vehicle('v2').job('j2').inYard({ jobId: 'j2' }).rows());
    const taken = carryOut(takeIntoBay, moved.rows.fork(), { jobId: 'j2', bayId: 'b1' }, { now: tuesdayTen + 1 });
    expect(taken.codes).toEqual([]);
    const { codes, refusedFor } = undo(taken.rows, changeOf(moved));
    expect([codes, refusedFor]).toEqual([['change.clashes'], { table: 'spotUse' }]);
  });

  it('is for the own change, of the last ten minutes', () => {
    const started = start(van().rows());
    const change = changeOf(started);
    expect(undo(started.rows, change, tuesdayTen + minute, 'owner').codes).toEqual(['change.notYours']);
    expect(undo(started.rows, changeOf(started, { personId: null })).codes).toEqual(['change.notYours']);
    expect(undo(started.rows, change, tuesdayTen + 10 * minute).codes).toEqual([]);
    expect(undo(started.rows, change, tuesdayTen + 10 * minute + 1).codes).toEqual(['change.tooOld']);
  });

  it.each(['takeBack', 'handBack', 'addPerson', 'changePerson', 'setUpShop'])('is not for %s', (command) => {
    const started = start(van().rows());
    expect(undo(started.rows, changeOf(started, { command })).codes).toEqual(['change.hasOwnWayBack']);
  });

  it('refuses once a row it wrote has changed since, itself included', () => {
    const started = start(van().rows());
    const done = carryOut(finishLine, started.rows.fork(), { lineId: 'l1' }, { now: tuesdayTen + 1 });
    expect(undo(done.rows, changeOf(started)).codes).toEqual(['change.builtOn']);
    const once = undo(started.rows, changeOf(started));
    expect(undo(once.rows, changeOf(started)).codes).toEqual(['change.builtOn']);
  });

  it('refuses once something made later rests on what it made', () => {
    const added = carryOut(addLine, van().rows(), { jobId: 'j1', title: 'Lamp', lineId: 'l2' }, { by: 'technician' });
    const change = changeOf(added, { command: 'addLine' });
    expect(undo(added.rows, change).codes).toEqual([]);
    const after = added.rows.fork();
    const line = after.get('workLine', 'l2');
    after.add('workLine', { ...line, id: 'l3', afterLineId: 'l2' });
    const { codes, refusedFor } = undo(after, change);
    expect([codes, refusedFor]).toEqual([['change.builtOn'], { table: 'workLine', id: 'l3' }]);
    after.change('workLine', 'l3', { void: true });
    expect(undo(after, change).codes).toEqual([]);
  });

  it('refuses once the visit has ended: its sheet tells of the change', () => {
    const started = start(van().line('l2').rows());
    const done = carryOut(finishLine, started.rows.fork(), { lineId: 'l1' }, { by: 'technician' });
    const left = done.rows.fork();
    left.change('job', 'j1', { endedAt: tuesdayTen + minute });
    const change = changeOf(done, { command: 'finishLine' });
    expect(undo(done.rows, change).codes).toEqual([]);
    const { codes, refusedFor } = undo(left, change, tuesdayTen + 2 * minute);
    expect([codes, refusedFor]).toEqual([['change.builtOn'], { table: 'job', id: 'j1' }]);
  });

  it('never gives a job number out again', () => {
    const rows = van().rows().fork();
    rows.change('counter', 'counter', { value: 101 });
    const change = changeOf({ rows }, { command: 'checkIn' });
    const later = rows.fork();
    later.change('counter', 'counter', { value: 102 });
    const undone = undo(later, change);
    expect([undone.codes, undone.rows.get('counter', 'counter').value]).toEqual([[], 102]);
    expect(undo(rows, change).rows.get('counter', 'counter').value).toBe(101);
  });

  it('refuses a change that is not there', () => {
    const started = start(van().rows());
    expect(undo(started.rows, changeOf(started, { seq: 4 })).codes).toEqual(['row.notFound']);
    expect(carryOut(takeBack, started.rows, { seq: 5 }, { now: tuesdayTen + hour }).codes).toEqual(['row.notFound']);
  });
});
