import { describe, expect, it } from '@jest/globals';
import type { AddLine, CarryOverLine, FinishLine, RecordGoAhead } from '../inputs.js';
import { given, type GivenCircumstances, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { addLine } from './add-line.js';
import { carryOverLine, dropLine, finishLine } from './end-line.js';
import { recordGoAhead } from './record-go-ahead.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const van = (line: Line = {}) => given().shop().vehicle('v1').job('j1').inYard().line('l1', line);
const started = { progress: 'started', startedAt: opening } as const;
const gone = (rows = van()) => rows.but('job', 'j1', { endedAt: opening + minute }).rows();

describe('addLine', () => {
  const add = (rows: Rows, input: Partial<AddLine> = {}) =>
    carryOut(addLine, rows, { lineId: 'l9', jobId: 'j1', title: 'Rear lamp', ...input }, { by: 'technician' });
  const waiting = () => van().followUp('f1').part('p1', { lineId: null, jobId: null, followUpId: 'f1' });

  it('plans it as the last line, with the customer, the price as one decimal', () => {
    const { rows, outcome } = add(van().rows(), { price: '120.50', choiceId: 'choice' });
    expect(rows.get('workLine', 'l9')).toMatchObject({
      ...{ position: 2, progress: 'planned', goAhead: 'withCustomer', payer: 'customer', price: '120.5' },
      ...{ choiceId: 'choice', startedAt: null, vehicleId: 'v1' },
    });
    expect(outcome?.created).toEqual({ workLine: 'l9' });
  });

  it.each([
    ['normal', 'customer'],
    ['guarantee', 'guarantee'],
    ['comeback', 'shop'],
    ['internal', 'shop'],
  ] as const)('has the usual payer of a %s job where nobody is named', (kind, payer) => {
    const rows = van().but('job', 'j1', { kind }).rows();
    expect(add(rows).rows.get('workLine', 'l9').payer).toBe(payer);
    expect(add(rows, { payer: 'insurer' }).rows.get('workLine', 'l9').payer).toBe('insurer');
  });

  it('takes the part lines of a follow-up along, but not those fitted or cancelled', () => {
    const rows = waiting()
      .part('p2', { lineId: null, jobId: null, followUpId: 'f1', state: 'cancelled' })
      .part('p3', { lineId: null, jobId: null, followUpId: 'f1', state: 'fitted' })
      .rows();
    const after = add(rows, { fromFollowUpId: 'f1' }).rows;
    expect(after.get('partLine', 'p1')).toMatchObject({ lineId: 'l9', jobId: 'j1', followUpId: null });
    expect(after.get('partLine', 'p2').followUpId).toBe('f1');
    expect(after.get('partLine', 'p3').followUpId).toBe('f1');
    expect(after.get('workLine', 'l9').fromFollowUpId).toBe('f1');
  });

  it('takes up a follow-up once, while it is open, and of this vehicle', () => {
    const twice = waiting().line('l2', { fromFollowUpId: 'f1' });
    expect(add(twice.rows(), { fromFollowUpId: 'f1' }).codes).toEqual(['work.followUpTaken']);
    expect(add(twice.but('workLine', 'l2', { progress: 'dropped' }).rows(), { fromFollowUpId: 'f1' }).codes).toEqual(
      [],
    );
    const closed = waiting().but('followUp', 'f1', { state: 'done' }).rows();
    expect(add(closed, { fromFollowUpId: 'f1' }).codes).toEqual(['work.followUpTaken']);
    const others = waiting().but('followUp', 'f1', { vehicleId: 'v2' }).rows();
    expect(add(others, { fromFollowUpId: 'f1' }).codes).toEqual(['row.notFound']);
  });

  it('refuses references that are not there or belong to another visit', () => {
    expect(add(van().rows(), { concernId: 'x' }).codes).toEqual(['row.notFound']);
    const two = van().vehicle('v2').job('j2').concern('k2').finding('n2').line('m2').rows();
    expect(add(two, { concernId: 'k2' }).codes).toEqual(['work.otherJob']);
    expect(add(two, { findingId: 'n2' }).codes).toEqual(['work.otherJob']);
    expect(add(two, { afterLineId: 'm2' }).codes).toEqual(['work.otherJob']);
    expect(add(two, { afterLineId: 'l1' }).codes).toEqual([]);
  });

  it('refuses after the visit, an unknown job and an id in use', () => {
    expect(add(gone()).codes).toEqual(['work.jobEnded']);
    expect(add(van().rows(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(add(van().rows(), { lineId: 'l1' }).codes).toEqual(['work.alreadyRecorded']);
  });
});

describe('recordGoAhead', () => {
  const asked = (line: Line = {}) => van({ goAhead: 'withCustomer', ...line });
  const yes = { answer: 'given', byName: 'Mrs Hale', how: 'telephone' } as const;
  const answer = (rows: Rows, input: Partial<RecordGoAhead> = {}, said: GivenCircumstances = {}) =>
    carryOut(recordGoAhead, rows, { lineId: 'l1', ...yes, ...input }, { by: 'desk', ...said });

  it('keeps each answer with its day, the line holds the last one', () => {
    const first = answer(asked().rows(), { upTo: '200.00' }).rows;
    const { rows } = answer(first, { answer: 'deferred' });
    expect(first.get('workLine', 'l1')).toMatchObject({ goAhead: 'given', goAheadUpTo: '200' });
    expect(rows.get('workLine', 'l1')).toMatchObject({ goAhead: 'deferred', goAheadUpTo: null });
    expect(rows.list('goAhead').map((one) => one.answer)).toEqual(['given', 'deferred']);
  });

  it('needs a name and a way when it is given', () => {
    expect(answer(asked().rows(), { byName: undefined }).codes).toEqual(['work.goAheadByWhom']);
    expect(answer(asked().rows(), { how: undefined }).codes).toEqual(['work.goAheadByWhom']);
    expect(answer(asked().rows(), { answer: 'declined', byName: undefined, how: undefined }).codes).toEqual([]);
  });

  it('is the floor’s to record only where the shop says so', () => {
    const closed = given()
      .shop({}, { floorRecordsGoAheads: false })
      .vehicle('v1')
      .job('j1')
      .line('l1', { goAhead: 'withCustomer' })
      .rows();
    for (const by of ['technician', 'partsClerk'] as const) {
      expect(answer(closed, {}, { by }).codes).toEqual(['work.goAheadNotYours']);
      expect(answer(asked().rows(), {}, { by }).codes).toEqual([]);
    }
    expect(answer(closed, {}, { by: 'desk' }).codes).toEqual([]);
    const both = { personId: 'technician', name: 'Both', roles: ['technician', 'desk'] } as const;
    expect(answer(closed, {}, { by: both }).codes).toEqual([]);
  });

  it('is the shop’s own for what it pays or a comeback, through manager or owner', () => {
    const shops = { how: 'shop', byName: undefined } as const;
    expect(answer(asked().rows(), shops, { by: 'owner' }).codes).toEqual(['work.goAheadOfShop']);
    expect(answer(asked({ payer: 'shop' }).rows(), shops, { by: 'desk' }).codes).toEqual(['work.goAheadOfShop']);
    expect(answer(asked({ payer: 'shop' }).rows(), shops, { by: 'manager' }).codes).toEqual([]);
    expect(answer(asked({ payer: 'guarantee' }).rows(), shops, { by: 'manager' }).codes).toEqual([]);
    const comeback = asked().but('job', 'j1', { kind: 'comeback' }).rows();
    expect(answer(comeback, shops, { by: 'owner' }).codes).toEqual([]);
  });

  it('covers the price within what the shop allows on top', () => {
    expect(answer(asked({ price: '110' }).rows(), { upTo: '100' }).codes).toEqual([]);
    const { codes, refusedFor } = answer(asked({ price: '110.01' }).rows(), { upTo: '100' });
    expect(codes).toEqual(['work.amountBelowPrice']);
    expect(refusedFor).toEqual({ price: '110.01', upTo: '100', tolerancePercent: '10' });
    expect(answer(asked({ price: '110.01' }).rows()).codes).toEqual([]);
  });

  it('is given to at most one line of a choice', () => {
    const choice = asked({ choiceId: 'c' }).line('l2', { choiceId: 'c', goAhead: 'given' });
    const { codes, refusedFor } = answer(choice.rows());
    expect([codes, refusedFor]).toEqual([['work.choiceTaken'], { lineId: 'l2' }]);
    expect(answer(choice.rows(), { answer: 'declined' }).codes).toEqual([]);
    expect(answer(choice.but('workLine', 'l2', { progress: 'dropped' }).rows()).codes).toEqual([]);
    expect(answer(asked().line('l2', { goAhead: 'given' }).rows()).codes).toEqual([]);
  });

  it.each(['deferred', 'declined'] as const)('is not %s once work has started: finish or drop it', (changed) => {
    const rows = van({ progress: 'stopped', startedAt: opening }).rows();
    expect(answer(rows, { answer: changed }).codes).toEqual(['work.startedAlready']);
    expect(answer(van().rows(), { answer: changed }).codes).toEqual([]);
    expect(answer(rows, { answer: 'withCustomer' }).codes).toEqual([]);
  });

  it('refuses ended lines, ended visits and unknown lines', () => {
    expect(answer(van({ progress: 'dropped' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(answer(gone()).codes).toEqual(['work.jobEnded']);
    expect(answer(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
  });
});

describe('finishLine', () => {
  const finish = (rows: Rows, input: Partial<FinishLine> = {}, said: GivenCircumstances = {}) =>
    carryOut(finishLine, rows, { lineId: 'l1', ...input }, { by: 'technician', ...said });

  it('ends the line and every clock on it', () => {
    const rows = van(started).clock('c1').clock('c2', { personId: 'second' }).line('l2', started);
    const after = finish(rows.clock('c3', { personId: 'owner' }).rows(), {}, { effectiveAt: tuesdayTen - minute }).rows;
    expect(after.get('workLine', 'l1')).toMatchObject({ progress: 'done', endedAt: tuesdayTen - minute });
    expect(after.list('clock').map((clock) => clock.toAt)).toEqual([tuesdayTen - minute, tuesdayTen - minute, null]);
  });

  it('never ends before a clock on it does', () => {
    const rows = van(started)
      .clock('c1', { fromAt: tuesdayTen - minute })
      .rows();
    const after = finish(rows, {}, { effectiveAt: opening }).rows;
    expect(after.get('workLine', 'l1').endedAt).toBe(tuesdayTen - minute + 1);
  });

  it('needs words, and the go-ahead, where nobody was ever on its clock', () => {
    expect(finish(van().rows()).codes).toEqual(['work.neverStarted']);
    expect(finish(van().rows(), { words: 'Done with line 2' }).rows.get('workLine', 'l1').endWords).toBe(
      'Done with line 2',
    );
    expect(finish(van({ goAhead: 'withCustomer' }).rows(), { words: 'Done' }).codes).toEqual(['work.noGoAhead']);
  });

  it('waits for the line that comes first (rule 10)', () => {
    const rows = van({ ...started, afterLineId: 'l0' }).line('l0');
    expect(finish(rows.rows()).codes).toEqual(['work.afterUnfinished']);
    expect(finish(rows.but('workLine', 'l0', { progress: 'done' }).rows()).codes).toEqual([]);
  });

  it('refuses ended lines, ended visits and unknown lines', () => {
    expect(finish(van({ progress: 'done' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(finish(gone()).codes).toEqual(['work.jobEnded']);
    expect(finish(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
  });
});

describe('carryOverLine', () => {
  const carry = (rows: Rows, input: Partial<CarryOverLine> = {}) =>
    carryOut(carryOverLine, rows, { lineId: 'l1', done: 'Step off', remaining: 'Fit it', followUpId: 'f9', ...input });

  it('ends the line with its clocks, and a follow-up has what remains, its time and its part lines', () => {
    const rows = van(started).clock('c1').part('p1').part('p2', { state: 'fitted', fitted: '1' }).rows();
    const { rows: after, outcome } = carry(rows, { remainingMinutes: 90, limits: { beforeDay: '2026-04-01' } });
    expect(after.get('workLine', 'l1')).toMatchObject({
      progress: 'carriedOver',
      endWords: 'Step off',
      toFollowUpId: 'f9',
    });
    expect(after.get('followUp', 'f9')).toMatchObject({
      ...{ kind: 'carriedOver', vehicleId: 'v1', fromJobId: 'j1', lineId: 'l1', words: 'Fit it', state: 'open' },
      ...{ remainingMinutes: 90, beforeDay: '2026-04-01', distanceUnit: 'km', urgency: 'soon' },
    });
    expect(after.get('clock', 'c1').toAt).toBe(tuesdayTen);
    expect(after.get('partLine', 'p1')).toMatchObject({ lineId: null, jobId: null, followUpId: 'f9', state: 'wanted' });
    expect(after.get('partLine', 'p2')).toMatchObject({ lineId: 'l1', followUpId: null });
    expect(outcome?.created).toEqual({ followUp: 'f9' });
  });

  it('is for started lines only, and names rows that are there', () => {
    expect(carry(van().rows()).codes).toEqual(['work.notStarted']);
    expect(carry(van({ ...started, progress: 'done' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(carry(gone(van(started))).codes).toEqual(['work.jobEnded']);
    expect(carry(van(started).followUp('f9').rows()).codes).toEqual(['work.alreadyRecorded']);
    expect(carry(van(started).rows(), { limits: { seasonId: 'x' } }).codes).toEqual(['row.notFound']);
    expect(carry(van(started).season('x').rows(), { limits: { seasonId: 'x' } }).codes).toEqual([]);
  });
});

describe('dropLine', () => {
  const drop = (rows: Rows) => carryOut(dropLine, rows, { lineId: 'l1', words: 'Not worth it' }, { by: 'technician' });

  it('ends it with words; parts only wanted are cancelled, the others stay with the vehicle', () => {
    const rows = van(started).part('p1').part('p2', { state: 'ordered' }).rows();
    const after = drop(rows).rows;
    expect(after.get('workLine', 'l1')).toMatchObject({
      progress: 'dropped',
      endedAt: tuesdayTen,
      endWords: 'Not worth it',
    });
    expect(after.get('partLine', 'p1')).toMatchObject({ state: 'cancelled', endWords: 'Not worth it' });
    expect(after.get('partLine', 'p2')).toMatchObject({ state: 'ordered', lineId: 'l1' });
  });

  it('gives the parts of a follow-up back to it', () => {
    const rows = van().followUp('f1').but('workLine', 'l1', { fromFollowUpId: 'f1' }).part('p1').rows();
    expect(drop(rows).rows.get('partLine', 'p1')).toMatchObject({ state: 'wanted', followUpId: 'f1', lineId: null });
  });

  it('refuses while a clock runs on it, ended lines and ended visits', () => {
    expect(drop(van(started).clock('c1').rows()).codes).toEqual(['work.clockRuns']);
    expect(drop(van({ progress: 'carriedOver' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(drop(gone()).codes).toEqual(['work.jobEnded']);
  });
});
