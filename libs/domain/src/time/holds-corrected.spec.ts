import { describe, expect, it } from '@jest/globals';
import type { CorrectHold } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { correctHold } from './correct-hold.js';

const nine = opening + hour;
const van = () => given().shop().vehicle('v1').job('j1').inYard().line('l1').part('p1');
const mine = { openedById: 'technician' };
const held = () =>
  van().hold('h1', { ...mine, reason: 'tool', toAt: nine, endedHow: 'byHand', endWords: 'Back' }, ['l1']);
const open = () => van().hold('h1', { ...mine, reason: 'tool' }, ['l1']);
const correct = (rows: Rows, over: Partial<CorrectHold>, said: GivenCircumstances = {}) =>
  carryOut(correctHold, rows, { holdId: 'h1', words: 'Looked', ...over }, { by: 'technician', ...said });
const holds = (rows: Rows) => rows.list('hold').map((one) => [one.reason, one.fromAt, one.toAt]);

describe('correctHold', () => {
  it('keeps both versions; the lines it names are named by the one that stands', () => {
    const { rows, outcome } = correct(held().rows(), { reason: 'bay', fromAt: opening + minute });
    expect(holds(rows)).toEqual([['bay', opening + minute, nine]]);
    expect(rows.list('hold')).toMatchObject([{ endedHow: 'byHand', endWords: 'Back', openedById: 'technician' }]);
    expect(rows.list('holdLine')).toMatchObject([{ holdId: outcome?.created?.['hold'], lineId: 'l1' }]);
    expect(rows.list('correction')).toMatchObject([
      { kind: 'replaced', tableName: 'hold', rowId: 'h1', before: { reason: 'tool' }, jobId: 'j1' },
    ]);
  });

  it('ends one that ran, in its own row and by hand, for whom may end it', () => {
    const { rows } = correct(open().rows(), { toAt: nine });
    expect(rows.get('hold', 'h1')).toMatchObject({
      void: false,
      toAt: nine,
      endedHow: 'byHand',
      endWords: 'Looked',
      endedById: 'technician',
    });
    expect(rows.list('correction')).toMatchObject([{ kind: 'ended', newRowId: 'h1' }]);
    const parts = van().hold('h1', mine, [], ['p1']).rows();
    expect(correct(parts, { toAt: nine }).codes).toEqual(['hold.mayNotEnd']);
  });

  it('lets one run on again, with the parts it names, until these are here (rule 6)', () => {
    const parts = van()
      .but('workLine', 'l1', { progress: 'started', startedAt: opening })
      .hold('h1', { ...mine, toAt: nine, endedHow: 'partsHere' }, [], ['p1'])
      .hold('h2', { againOfId: 'h1' });
    const again = correct(parts.rows(), { toAt: null });
    const id = again.outcome?.created?.['hold'] ?? '';
    expect(again.rows.get('hold', id)).toMatchObject({ toAt: null, endedHow: null });
    expect(again.rows.list('holdPart')).toMatchObject([{ holdId: id, partLineId: 'p1' }]);
    expect(again.rows.get('hold', 'h2').againOfId).toBe(id);
    const here = parts.but('partLine', 'p1', { state: 'arrived', here: '1' }).rows();
    expect(correct(here, { toAt: null }).rows.list('hold', (one) => one.toAt === null && one.id !== 'h2')).toEqual([]);
  });

  it('asks of a reason what it has to say', () => {
    const rows = held().but('hold', 'h1', { words: null }).rows();
    expect(correct(rows, { reason: 'parts' }).codes).toEqual(['hold.partsNeeded']);
    expect(correct(rows, { reason: 'other' }).codes).toEqual(['hold.wordsMissing']);
    expect(correct(rows, { reason: 'setting' }).rows.list('hold')).toMatchObject([{ endsAt: nine }]);
    expect(correct(open().rows(), { reason: 'setting' }).codes).toEqual(['hold.endMissing']);
    const sets = held()
      .but('hold', 'h1', { reason: 'setting', endsAt: opening + minute })
      .rows();
    expect(correct(sets, { fromAt: opening + minute }).codes).toEqual(['hold.endBeforeStart']);
    expect(correct(sets, { reason: 'tool' }).rows.list('hold')).toMatchObject([{ endsAt: null }]);
  });

  it('stays within the visit', () => {
    expect(correct(held().rows(), { fromAt: opening - 1 }, { by: 'manager' }).codes).toEqual(['time.outsideVisit']);
    const left = held().but('job', 'j1', { endedAt: nine + minute });
    expect(correct(left.rows(), { toAt: nine + 2 * minute }).codes).toEqual(['time.outsideVisit']);
    expect(correct(left.rows(), { toAt: nine + minute }).codes).toEqual([]);
    expect(correct(left.rows(), { toAt: null }).codes).toEqual(['time.cannotRun']);
    expect(correct(held().rows(), { toAt: tuesdayTen + 1 }).codes).toEqual(['time.inFuture']);
  });

  it('is for who opened it on that day, else for manager and owner (rule 14)', () => {
    const rows = held().rows();
    const change = { toAt: nine + 1 };
    expect(correct(rows, change, { by: 'desk' }).codes).toEqual(['time.notYours']);
    expect(correct(rows, change, { now: tuesdayTen + 24 * hour }).codes).toEqual(['time.dayIsOver']);
    expect(correct(rows, change, { now: tuesdayTen + 24 * hour, by: 'owner' }).codes).toEqual([]);
    expect(correct(rows, { toAt: nine, reason: 'tool' }).codes).toEqual(['time.nothingChanged']);
    expect(correct(van().rows(), change).codes).toEqual(['row.notFound']);
  });
});
