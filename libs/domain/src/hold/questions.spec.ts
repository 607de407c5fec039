import { describe, expect, it } from '@jest/globals';
import { clearFlag } from '../any/clear-flag.js';
import type { AskQuestion, ChangeHold } from '../inputs.js';
import { flag } from '../kernel/flags.js';
import { circumstances, given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { changeHold } from './change-hold.js';
import { answerQuestion, askQuestion } from './questions.js';

const van = () => given().shop().vehicle('v1').job('j1').line('l1');

describe('changeHold', () => {
  const change = (rows: Rows, input: Partial<ChangeHold>) =>
    carryOut(changeHold, rows, { holdId: 'h1', ...input }, { by: 'technician' });
  const held = (over: Parameters<ReturnType<typeof given>['hold']>[1] = {}) => van().hold('h1', over).rows();

  it('says anew what it waits for, and leaves what is not said', () => {
    const { rows } = change(held({ words: 'Old', moveOf: 'Firm' }), { words: 'New' });
    expect(rows.get('hold', 'h1')).toMatchObject({ words: 'New', moveOf: 'Firm', fromAt: opening });
    expect(change(held({ words: 'Old' }), { words: null }).rows.get('hold', 'h1').words).toBeNull();
  });

  it('is one person’s move, or somebody’s outside', () => {
    const inside = change(held({ moveOf: 'Firm' }), { moveOfId: 'desk' }).rows.get('hold', 'h1');
    expect([inside.moveOfId, inside.moveOf]).toEqual(['desk', null]);
    const outside = change(held({ moveOfId: 'desk' }), { moveOf: 'Firm' }).rows.get('hold', 'h1');
    expect([outside.moveOfId, outside.moveOf]).toEqual([null, 'Firm']);
    expect(change(held({ moveOfId: 'desk' }), { moveOfId: null }).rows.get('hold', 'h1').moveOfId).toBeNull();
  });

  it('moves the end of what sets, charges or cools, never before it began', () => {
    const setting = held({ reason: 'setting', endsAt: tuesdayTen });
    expect(change(setting, { endsAt: tuesdayTen + hour }).rows.get('hold', 'h1').endsAt).toBe(tuesdayTen + hour);
    expect(change(setting, { endsAt: opening }).codes).toEqual(['hold.endBeforeStart']);
    expect(change(held({ reason: 'tool' }), { endsAt: tuesdayTen }).codes).toEqual(['hold.endNotSaid']);
  });

  it('is refused for an ended one, an unknown one, somebody who is not here, and "other" without words', () => {
    expect(change(held({ toAt: tuesdayTen, endedHow: 'byHand' }), { words: 'x' }).codes).toEqual(['hold.endedAlready']);
    expect(change(held(), { holdId: 'h9' }).codes).toEqual(['row.notFound']);
    expect(change(held(), { moveOfId: 'p9' }).codes).toEqual(['row.notFound']);
    const left = van().but('person', 'desk', { active: false }).hold('h1').rows();
    expect(change(left, { moveOfId: 'desk' }).codes).toEqual(['hold.personLeft']);
    expect(change(held({ reason: 'other', words: 'Tide' }), { words: null }).codes).toEqual(['hold.wordsMissing']);
  });
});

describe('a question', () => {
  const ask = (rows: Rows, input: Partial<AskQuestion> = {}) =>
    carryOut(
      askQuestion,
      rows,
      { jobId: 'j1', questionId: 'q1', toId: 'desk', words: 'Keep the step?', ...input },
      { by: 'technician' },
    );
  const answer = (rows: Rows, said: GivenCircumstances, questionId = 'q1') =>
    carryOut(answerQuestion, rows, { questionId, answer: 'Yes' }, said);

  it('waits for a named person and holds nothing up', () => {
    const { rows, outcome } = ask(van().rows(), { lineId: 'l1' });
    const asked = { jobId: 'j1', lineId: 'l1', askedById: 'technician', toId: 'desk', words: 'Keep the step?' };
    expect(rows.get('question', 'q1')).toMatchObject({ ...asked, answer: null, answeredAt: null });
    expect([rows.list('hold'), outcome?.created]).toEqual([[], { question: 'q1' }]);
  });

  it('is to somebody who works here, on a line of the visit', () => {
    expect(ask(van().rows(), { toId: 'p9' }).codes).toEqual(['row.notFound']);
    expect(ask(van().but('person', 'desk', { active: false }).rows()).codes).toEqual(['question.personLeft']);
    expect(ask(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(ask(van().job('j2').line('l2').rows(), { lineId: 'l2' }).codes).toEqual(['hold.lineOfOtherJob']);
    expect(ask(van().rows(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(ask(ask(van().rows()).rows).codes).toEqual(['question.alreadyThere']);
  });

  it('is answered once, by whom it was put to or by a lead in their place', () => {
    const rows = ask(van().rows()).rows;
    const { rows: after } = answer(rows, { by: 'desk' });
    expect(after.get('question', 'q1')).toMatchObject({ answer: 'Yes', answeredById: 'desk', answeredAt: tuesdayTen });
    expect(answer(rows, { by: 'manager' }).codes).toEqual([]);
    expect(answer(rows, { by: 'technician' }).codes).toEqual(['question.notYours']);
    expect(answer(after, { by: 'desk' }).codes).toEqual(['question.answeredAlready']);
    expect(answer(rows, { by: 'desk' }, 'q9').codes).toEqual(['row.notFound']);
  });
});

describe('a flag', () => {
  const flagged = () => {
    const rows = van().rows().fork();
    flag(rows, circumstances({ ids: 'f', now: tuesdayTen - minute }), 'work.noGoAhead', { jobId: 'j1' });
    return rows;
  };
  it('stays, and says who looked at it and what they found', () => {
    const said = { by: 'manager' } as const;
    const { rows } = carryOut(clearFlag, flagged(), { flagId: 'f-1', words: 'Rang her' }, said);
    expect(rows.list('flag')).toMatchObject([
      { clearedAt: tuesdayTen, clearedById: 'manager', clearWords: 'Rang her', rule: 'work.noGoAhead' },
    ]);
    expect(carryOut(clearFlag, rows, { flagId: 'f-1', words: 'Twice' }, said).codes).toEqual(['flag.clearedAlready']);
    expect(carryOut(clearFlag, rows, { flagId: 'f-9', words: 'x' }, said).codes).toEqual(['row.notFound']);
  });
});
