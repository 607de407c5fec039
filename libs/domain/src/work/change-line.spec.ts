import { describe, expect, it } from '@jest/globals';
import type { ChangeLine, MakeChoice } from '../inputs.js';
import { given, type GivenCircumstances, minute, opening } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { changeLine } from './change-line.js';
import { standing } from './given-standing.js';
import { makeChoice } from './make-choice.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const van = (line: Line = {}) => given().shop().customer('c1').vehicle('v1').job('j1').inYard().line('l1', line);
const change = (rows: Rows, input: Partial<ChangeLine>, said: GivenCircumstances = {}) =>
  carryOut(changeLine, rows, { lineId: 'l1', ...input }, { by: 'technician', ...said });
const lineAfter = (line: Line, input: Partial<ChangeLine>) =>
  change(van(line).rows(), input).rows.get('workLine', 'l1');

describe('changeLine', () => {
  it('changes what is said, leaves what is not, and takes away what is null', () => {
    const before = { bookMinutes: 60, equipment: 'flat', price: '80', choiceId: 'c', skill: 'airbags' } as const;
    const input = { title: 'Rear step, new', price: '85.00', equipment: null, choiceId: null } as const;
    const { rows, outcome } = change(van(before).rows(), input);
    expect(rows.get('workLine', 'l1')).toMatchObject({
      ...{ title: 'Rear step, new', price: '85', equipment: null, choiceId: null, bookMinutes: 60, skill: 'airbags' },
      ...{ goAhead: 'given', version: 2 },
    });
    expect(outcome?.facts).toMatchObject({ changed: 'choiceId equipment price title', askedAgain: false });
  });

  it('asks the customer again for a price past what the shop allows on top of what was agreed', () => {
    expect(lineAfter({ price: '100' }, { price: '110' }).goAhead).toBe('given');
    const { rows, outcome } = change(van({ price: '100' }).rows(), { price: '110.01' });
    expect(rows.get('workLine', 'l1')).toMatchObject({ goAhead: 'withCustomer', goAheadUpTo: '100', price: '110.01' });
    expect(rows.list('goAhead')).toMatchObject([{ answer: 'withCustomer', words: null, how: null, upTo: '100' }]);
    expect(outcome?.facts['askedAgain']).toBe(true);
    expect(lineAfter({ price: '100', goAheadUpTo: '200' }, { price: '220' }).goAhead).toBe('given');
    expect(lineAfter({ price: '100', goAheadUpTo: '200' }, { price: '220.01' }).goAhead).toBe('withCustomer');
  });

  it('does not let small steps add up past it', () => {
    const once = change(van({ price: '100' }).rows(), { price: '109' }).rows;
    expect(once.get('workLine', 'l1')).toMatchObject({ goAhead: 'given', goAheadUpTo: '100' });
    expect(change(once, { price: '118' }).rows.get('workLine', 'l1').goAhead).toBe('withCustomer');
  });

  it('asks nobody where no price was agreed, none is said, or it went down', () => {
    expect(lineAfter({ price: null }, { price: '500' }).goAhead).toBe('given');
    expect(lineAfter({ price: '100' }, { price: null }).goAhead).toBe('given');
    expect(lineAfter({ price: '100' }, { price: '10' }).goAhead).toBe('given');
    expect(lineAfter({ price: '100', goAhead: 'deferred' }, { price: '500' }).goAhead).toBe('deferred');
    expect(lineAfter({ price: '300', goAheadUpTo: '100' }, { title: 'Step' }).goAhead).toBe('given');
  });

  it.each(['shop', 'guarantee'] as const)(
    'asks nobody for what the %s pays, until the customer is to pay it',
    (payer) => {
      expect(lineAfter({ price: '100', payer }, { price: '500' }).goAhead).toBe('given');
      expect(lineAfter({ price: '100', payer }, { payer: 'customer' })).toMatchObject({
        goAhead: 'withCustomer',
        goAheadUpTo: '0',
      });
      expect(lineAfter({ price: '100' }, { payer }).goAhead).toBe('given');
    },
  );

  it('lets work that was begun go on while it asks', () => {
    const rows = van({ price: '100', progress: 'started', startedAt: opening }).clock('c1').rows();
    const after = change(rows, { price: '150' }).rows;
    expect(after.get('workLine', 'l1')).toMatchObject({ goAhead: 'withCustomer', progress: 'started' });
    expect(after.get('clock', 'c1').toAt).toBeNull();
  });

  it('asks nobody while a standing go-ahead that the line rests on has enough', () => {
    const resting = (upTo: string, over = {}) =>
      standing(van({ price: '100', standingId: 's1' }), 's1', { upTo, ...over })
        .line('l2', { price: '50', standingId: 's1' })
        .rows();
    const moved = (rows: Rows) => change(rows, { price: '150' }).rows.get('workLine', 'l1').goAhead;
    expect(moved(resting('200'))).toBe('given');
    expect(moved(resting('199.99'))).toBe('withCustomer');
    expect(moved(resting('500', { untilDay: '2026-03-09' }))).toBe('withCustomer');
    expect(moved(resting('500', { endedAt: opening }))).toBe('withCustomer');
  });

  it('leaves a guarded skill to the owner (rule 5), any other to whoever changes lines', () => {
    for (const skill of ['highVoltage', 'refrigerant'] as const) {
      const rows = van({ skill }).rows();
      expect(change(rows, { skill: null }).codes).toEqual(['work.skillGuarded']);
      expect(change(rows, { skill: 'airbags' }, { by: 'manager' }).codes).toEqual(['work.skillGuarded']);
      expect(change(rows, { skill }).codes).toEqual([]);
      expect(change(rows, { skill: null }, { by: 'owner' }).codes).toEqual([]);
    }
    expect(change(van({ skill: 'airbags' }).rows(), { skill: null }).codes).toEqual([]);
    expect(change(van().rows(), { skill: 'highVoltage' }).codes).toEqual([]);
  });

  it('never comes after itself, over however many lines', () => {
    const rows = van().line('l2', { afterLineId: 'l1' }).line('l3', { afterLineId: 'l2' }).line('l4').rows();
    expect(change(rows, { afterLineId: 'l1' }).codes).toEqual(['work.afterItself']);
    expect(change(rows, { afterLineId: 'l3' }).codes).toEqual(['work.afterItself']);
    expect(change(rows, { afterLineId: 'l4' }).codes).toEqual([]);
    expect(change(rows, { lineId: 'l3', afterLineId: null }).rows.get('workLine', 'l3').afterLineId).toBeNull();
  });

  it('refuses references that are not there or of another visit, ended lines and ended visits', () => {
    const rows = van().vehicle('v2').job('j2').concern('k2').line('m2').rows();
    expect(change(rows, { concernId: 'k9' }).codes).toEqual(['row.notFound']);
    expect(change(rows, { causeId: 'k9' }).codes).toEqual(['row.notFound']);
    expect(change(rows, { concernId: 'k2' }).codes).toEqual(['work.otherJob']);
    expect(change(rows, { afterLineId: 'm2' }).codes).toEqual(['work.otherJob']);
    expect(change(rows, { lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(change(van({ progress: 'done' }).rows(), { title: 'x' }).codes).toEqual(['work.lineEnded']);
    const gone = van().but('job', 'j1', { endedAt: opening + minute });
    expect(change(gone.rows(), { title: 'x' }).codes).toEqual(['work.jobEnded']);
  });
});

describe('makeChoice', () => {
  const asked = { goAhead: 'withCustomer' } as const;
  const two = (one: Line = {}, other: Line = {}) => van({ ...asked, ...one }).line('l2', { ...asked, ...other });
  const choose = (rows: Rows, input: Partial<MakeChoice> = {}) =>
    carryOut(makeChoice, rows, { jobId: 'j1', choiceId: 'c', lineIds: ['l1', 'l2'], ...input }, { by: 'technician' });

  it('makes lines ways to the same end, one of which may be given', () => {
    const { rows } = choose(two({ goAhead: 'given' }).rows());
    expect(rows.list('workLine').map((line) => line.choiceId)).toEqual(['c', 'c']);
  });

  it('takes further lines in, and leaves out of it what was there', () => {
    const rows = two({ choiceId: 'c' })
      .line('l3', { ...asked, choiceId: 'c' })
      .rows();
    const after = choose(rows).rows;
    expect(after.list('workLine').map((line) => [line.choiceId, line.version])).toEqual([
      ['c', 1],
      ['c', 2],
      ['c', 1],
    ]);
  });

  it('is between two lines at least, of which one at most is given', () => {
    expect(choose(two().rows(), { lineIds: ['l1', 'l1'] }).codes).toEqual(['work.choiceOfOne']);
    expect(choose(two({ goAhead: 'given' }, { goAhead: 'given' }).rows()).codes).toEqual(['work.choiceGivenTwice']);
    const third = two({ goAhead: 'given' }).line('l3', { choiceId: 'c' });
    expect(choose(third.rows()).codes).toEqual(['work.choiceGivenTwice']);
    expect(choose(third.but('workLine', 'l3', { progress: 'dropped' }).rows()).codes).toEqual([]);
  });

  it('is of open lines of one visit that are in no other choice', () => {
    expect(choose(two({ choiceId: 'd' }).rows()).codes).toEqual(['work.inOtherChoice']);
    expect(choose(two({ progress: 'done' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(choose(two().rows(), { lineIds: ['l1', 'l9'] }).codes).toEqual(['row.notFound']);
    expect(choose(two().job('j2').line('l3').rows(), { lineIds: ['l1', 'l3'] }).codes).toEqual(['work.otherJob']);
    expect(choose(two().rows(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    const gone = two().but('job', 'j1', { endedAt: opening + minute });
    expect(choose(gone.rows()).codes).toEqual(['work.jobEnded']);
  });
});
