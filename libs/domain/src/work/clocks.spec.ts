import { describe, expect, it } from '@jest/globals';
import type { StartWork, StopWork } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { startWork } from './start-work.js';
import { stopWork } from './stop-work.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const van = (line: Line = {}) => given().shop().vehicle('v1').job('j1').inYard().line('l1', line);
const start = (rows: Rows, input: Partial<StartWork> = {}, said: GivenCircumstances = {}) =>
  carryOut(startWork, rows, { lineId: 'l1', ...input }, { by: 'technician', ...said });
const begun = (rows: Rows, input: Partial<StartWork> = {}, said: GivenCircumstances = {}) =>
  start(rows, { alreadyStarted: true, ...input }, said);
const stop = (rows: Rows, input: Partial<StopWork> = {}, said: GivenCircumstances = {}) =>
  carryOut(stopWork, rows, { clockId: 'c1', ...input }, { by: 'technician', ...said });
const flags = (rows: Rows) => rows.list('flag').map((one) => one.rule);
const yesterday = '2026-03-09';

describe('startWork, intended', () => {
  it('puts the sender on the clock from now on and starts the line, wherever the vehicle stands', () => {
    const { rows, outcome } = start(van().rows(), { clockId: 'c9' }, { effectiveAt: tuesdayTen - hour });
    expect(rows.get('clock', 'c9')).toMatchObject({ personId: 'technician', lineId: 'l1', bench: false });
    expect(rows.get('clock', 'c9')).toMatchObject({ fromAt: tuesdayTen, toAt: null });
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'started', startedAt: tuesdayTen });
    expect(outcome?.created).toEqual({ clock: 'c9' });
  });

  it('keeps when a stopped line was first started', () => {
    const rows = van({ progress: 'stopped', startedAt: opening }).rows();
    expect(start(rows).rows.get('workLine', 'l1')).toMatchObject({ progress: 'started', startedAt: opening });
  });

  it('goes on although a hold is open (rule 5)', () => {
    expect(start(van().hold('h1').rows()).codes).toEqual([]);
  });

  it.each(['withCustomer', 'deferred', 'declined'] as const)(
    'refuses a line whose go-ahead is %s (rule 5)',
    (goAhead) => {
      const { codes, refusedFor } = start(van({ goAhead }).rows(), {}, { by: 'owner' });
      expect([codes, refusedFor]).toEqual([['work.noGoAhead'], { goAhead }]);
    },
  );

  it('never lets making it safe wait for the customer, and says that it was begun without the go-ahead (rule 5)', () => {
    const asked = van({ goAhead: 'withCustomer' });
    const begun = start(asked.rows(), { makesSafe: true });
    expect([begun.codes, flags(begun.rows)]).toEqual([[], ['work.madeSafe']]);
    expect(flags(start(van().rows(), { makesSafe: true }).rows)).toEqual([]);
    const unskilled = van({ goAhead: 'withCustomer', skill: 'highVoltage' });
    expect(start(unskilled.rows(), { makesSafe: true }).codes).toEqual(['work.skillMissing']);
  });

  it.each(['highVoltage', 'airbags'])('refuses a person without the skill for %s, whoever asks (rule 5)', (skill) => {
    const line = van({ skill });
    expect(start(line.rows()).codes).toEqual(['work.skillMissing']);
    expect(start(line.rows(), { personId: 'technician' }, { by: 'owner' }).codes).toEqual(['work.skillMissing']);
    expect(start(van({ skill }).skill('technician', skill, { until: yesterday }).rows()).codes).toHaveLength(1);
    expect(start(van({ skill }).skill('technician', skill, { until: '2026-03-10' }).rows()).codes).toEqual([]);
    expect(start(van({ skill }).skill('second', skill).rows()).codes).toEqual(['work.skillMissing']);
  });

  it.each([
    ['planned', true],
    ['stopped', true],
    ['carriedOver', true],
    ['done', false],
    ['dropped', false],
  ] as const)('knows whether a line that comes first and is %s gates it (rule 10)', (progress, gates) => {
    const rows = van({ afterLineId: 'l0' }).line('l0', { progress }).rows();
    expect(start(rows).codes).toEqual(gates ? ['work.afterUnfinished'] : []);
  });

  it('does not gate by position alone', () => {
    expect(start(van({ position: 2 }).line('l0', { position: 1 }).rows()).codes).toEqual([]);
  });

  it('refuses a person who is on another clock, and offers that line (rule 1)', () => {
    const rows = van().line('l2').clock('c2').rows();
    const { codes, refusedFor } = start(rows);
    expect(codes).toEqual(['work.onAnotherClock']);
    expect(refusedFor).toEqual({ lineId: 'l2', since: new Date(opening).toISOString() });
    expect(
      start(
        van()
          .line('l2')
          .clock('c2', { toAt: opening + hour })
          .rows(),
      ).codes,
    ).toEqual([]);
    expect(start(van().line('l2').clock('c2', { personId: 'second' }).rows()).codes).toEqual([]);
  });

  it('starts the clock of somebody else for manager and owner only', () => {
    expect(start(van().rows(), { personId: 'second' }).codes).toEqual(['work.othersClock']);
    const { rows } = start(van().rows(), { personId: 'second', bench: true }, { by: 'manager' });
    expect(rows.list('clock')).toMatchObject([{ personId: 'second', bench: true }]);
  });

  it('refuses who left, ended lines and visits, unknown rows and an id in use', () => {
    const left = van().but('person', 'technician', { active: false }).rows();
    expect(start(left).codes).toEqual(['work.personLeft']);
    expect(start(van({ progress: 'done' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(
      start(
        van()
          .but('job', 'j1', { endedAt: opening + 1 })
          .rows(),
      ).codes,
    ).toEqual(['work.jobEnded']);
    expect(start(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(start(van().rows(), { personId: 'p9' }, { by: 'owner' }).codes).toEqual(['row.notFound']);
    const used = van().clock('c2', { personId: 'second' }).rows();
    expect(start(used, { clockId: 'c2' }).codes).toEqual(['work.alreadyRecorded']);
  });

  it('says every reason at once', () => {
    const rows = van({ goAhead: 'withCustomer', skill: 'airbags', afterLineId: 'l0' }).line('l0').clock('c2').rows();
    const all = ['work.noGoAhead', 'work.skillMissing', 'work.afterUnfinished', 'work.onAnotherClock'];
    expect(start(rows).codes).toEqual(all);
  });
});

describe('startWork, begun already', () => {
  it('is recorded from when it happened, with its report', () => {
    const { rows } = begun(van().rows(), {}, { effectiveAt: tuesdayTen - hour });
    expect(rows.list('clock')).toMatchObject([{ fromAt: tuesdayTen - hour, toAt: null }]);
    expect(rows.list('report')).toMatchObject([{ kind: 'startWork', state: 'settled', personId: 'technician' }]);
    expect(flags(rows)).toEqual([]);
  });

  it('is never put before the last clock of the person ended', () => {
    const rows = van()
      .line('l2')
      .clock('c2', { toAt: tuesdayTen - minute })
      .rows();
    const after = begun(rows, { clockId: 'c9' }, { effectiveAt: tuesdayTen - hour }).rows;
    expect(after.get('clock', 'c9').fromAt).toBe(tuesdayTen - minute);
  });

  it.each<[string, Line]>([
    ['work.noGoAhead', { goAhead: 'declined' }],
    ['work.skillMissing', { skill: 'highVoltage' }],
    ['work.afterUnfinished', { afterLineId: 'l0' }],
  ])('is recorded and flagged %s', (rule, line) => {
    const { rows } = begun(van().line('l0').line('l1b', line).rows(), { lineId: 'l1b' });
    expect(flags(rows)).toEqual([rule]);
    expect(rows.list('flag')[0]?.facts['lineId']).toBe('l1b');
    expect(rows.list('clock')).toHaveLength(1);
  });

  it('waits as a card where the person is on another clock (rule 1), flagged all the same', () => {
    const rows = van({ goAhead: 'deferred' }).line('l2').clock('c2').rows();
    const after = begun(rows, {}, { effectiveAt: tuesdayTen - hour }).rows;
    const card = { state: 'contested', against: ['c2'], effectiveAt: tuesdayTen - hour };
    expect(after.list('report')).toMatchObject([card]);
    expect(after.list('clock')).toHaveLength(1);
    expect(after.get('workLine', 'l1').progress).toBe('planned');
    expect(flags(after)).toEqual(['work.noGoAhead']);
  });

  it('waits as a card where the line or the visit has ended', () => {
    const ended = begun(van({ progress: 'done', endedAt: opening + hour }).rows());
    expect(ended.rows.list('report')).toMatchObject([{ state: 'contested', against: ['l1'] }]);
    const left = begun(
      van()
        .but('job', 'j1', { endedAt: opening + hour })
        .rows(),
    );
    expect(left.outcome?.facts['contested']).toBe(true);
    expect(left.rows.list('clock')).toEqual([]);
  });
});

describe('stopWork', () => {
  const working = () => van({ progress: 'started', startedAt: opening }).clock('c1');

  it('ends the clock when it happened and leaves the handover', () => {
    const { rows, outcome } = stop(
      working().rows(),
      { handover: 'Two bolts loose' },
      { effectiveAt: tuesdayTen - minute },
    );
    expect(rows.get('clock', 'c1').toAt).toBe(tuesdayTen - minute);
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'stopped', handover: 'Two bolts loose' });
    expect(outcome?.facts['workedMs']).toBe(2 * hour - minute);
  });

  it('never ends a clock before it began', () => {
    expect(stop(working().rows(), {}, { effectiveAt: opening - hour }).rows.get('clock', 'c1').toAt).toBe(opening + 1);
  });

  it('keeps the line started while somebody else works on it', () => {
    const rows = working().clock('c2', { personId: 'second' }).rows();
    expect(stop(rows).rows.get('workLine', 'l1').progress).toBe('started');
  });

  it('keeps an earlier handover until there is a newer one', () => {
    const rows = working().but('workLine', 'l1', { handover: 'Oil is out' }).rows();
    expect(stop(rows).rows.get('workLine', 'l1').handover).toBe('Oil is out');
  });

  it('is for the own clock, or for manager and owner', () => {
    expect(stop(working().rows(), {}, { by: 'desk' }).codes).toEqual(['work.othersClock']);
    expect(stop(working().rows(), {}, { by: 'manager' }).codes).toEqual([]);
  });

  it('refuses a clock that has stopped and one that is not there', () => {
    expect(
      stop(
        working()
          .but('clock', 'c1', { toAt: opening + hour })
          .rows(),
      ).codes,
    ).toEqual(['work.clockStopped']);
    expect(stop(working().but('clock', 'c1', { void: true }).rows()).codes).toEqual(['row.notFound']);
  });
});
