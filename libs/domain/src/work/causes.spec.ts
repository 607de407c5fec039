import { describe, expect, it } from '@jest/globals';
import type { ChangeCause, RecordAttempt, RecordCause } from '../inputs.js';
import { recordConcernOutcome } from '../job/record-concern-outcome.js';
import { given, type GivenCircumstances, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { changeCause, recordAttempt, recordCause } from './causes.js';

const van = () => given().shop().vehicle('v1').job('j1').inYard().concern('k1').concern('k2');
const attempt = (rows: Rows, input: Partial<RecordAttempt> = {}, said: GivenCircumstances = {}) =>
  carryOut(
    recordAttempt,
    rows,
    { concernId: 'k1', conditions: 'Cold, over kerbs', appeared: true, ...input },
    { by: 'technician', ...said },
  );
const cause = (rows: Rows, input: Partial<RecordCause> = {}) =>
  carryOut(
    recordCause,
    rows,
    { jobId: 'j1', causeId: 'x1', concernIds: ['k1'], words: 'Worn bush', certainty: 'likely', ...input },
    { by: 'technician' },
  );
const change = (rows: Rows, input: Partial<ChangeCause> = {}) =>
  carryOut(changeCause, rows, { causeId: 'x1', ...input }, { by: 'technician' });
const explained = (rows: Rows) => rows.list('causeConcern').map((one) => one.concernId);

describe('recordAttempt', () => {
  it('keeps conditions, reading and whether it appeared', () => {
    const { rows, outcome } = attempt(van().rows(), { attemptId: 't1', odometer: 42_010, placeId: 'j1-yard' });
    expect(rows.get('attempt', 't1')).toMatchObject({
      ...{ jobId: 'j1', concernId: 'k1', conditions: 'Cold, over kerbs', appeared: true },
      ...{ odometer: 42_010, odometerUnit: 'km', placeId: 'j1-yard', byId: 'technician' },
    });
    expect(outcome?.created).toEqual({ attempt: 't1' });
  });

  it('is in the unit of the vehicle’s instrument where none is said', () => {
    const rows = van().odometer('o1', 26_000, { unit: 'mi' }).rows();
    expect(attempt(rows).rows.list('attempt')[0]?.odometerUnit).toBe('mi');
    expect(attempt(rows, { odometerUnit: 'km' }).rows.list('attempt')[0]?.odometerUnit).toBe('km');
  });

  it('is kept although the visit has ended', () => {
    const ended = van()
      .but('job', 'j1', { endedAt: opening + minute })
      .rows();
    expect(attempt(ended).rows.list('attempt')).toHaveLength(1);
  });

  it('names a concern and a place of its visit, and an id of its own', () => {
    expect(attempt(van().rows(), { concernId: 'k9' }).codes).toEqual(['row.notFound']);
    expect(attempt(van().rows(), { placeId: 'x' }).codes).toEqual(['row.notFound']);
    const two = van().vehicle('v2').job('j2').inYard().rows();
    expect(attempt(two, { placeId: 'j2-yard' }).codes).toEqual(['work.otherJob']);
    const once = attempt(van().rows(), { attemptId: 't1' }).rows;
    expect(attempt(once, { attemptId: 't1' }).codes).toEqual(['work.alreadyRecorded']);
  });
});

describe('a cause', () => {
  it('serves several concerns of its visit', () => {
    const { rows, outcome } = cause(van().rows(), { concernIds: ['k1', 'k2', 'k1'] });
    expect(rows.get('cause', 'x1')).toMatchObject({ jobId: 'j1', words: 'Worn bush', certainty: 'likely' });
    expect(explained(rows)).toEqual(['k1', 'k2']);
    expect(outcome).toMatchObject({ facts: { concerns: 2 }, created: { cause: 'x1' } });
  });

  it('is said anew; its list of concerns is the whole one', () => {
    const rows = cause(van().concern('k3').rows(), { concernIds: ['k1', 'k2'] }).rows;
    const after = change(rows, { certainty: 'found', concernIds: ['k2', 'k3'] }).rows;
    expect(after.get('cause', 'x1')).toMatchObject({ words: 'Worn bush', certainty: 'found' });
    expect(explained(after)).toEqual(['k2', 'k3']);
    expect(after.listAll('causeConcern').filter((one) => one.void)).toHaveLength(1);
    const back = change(after, { words: 'Torn bush', concernIds: ['k1'] }).rows;
    expect([explained(back), back.get('cause', 'x1').words]).toEqual([['k1'], 'Torn bush']);
    expect(explained(change(after, { words: 'Torn bush' }).rows)).toEqual(['k2', 'k3']);
  });

  it('is of concerns that are there, of its own visit', () => {
    const two = van().vehicle('v2').job('j2').concern('m1').rows();
    expect(cause(two, { concernIds: ['m1'] }).codes).toEqual(['work.otherJob']);
    expect(cause(two, { concernIds: ['k9'] }).codes).toEqual(['row.notFound']);
    expect(cause(two, { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    const once = cause(two).rows;
    expect(cause(once).codes).toEqual(['work.alreadyRecorded']);
    expect(change(once, { concernIds: ['m1'] }).codes).toEqual(['work.otherJob']);
    expect(change(once, { causeId: 'x9' }).codes).toEqual(['row.notFound']);
  });

  it('is not changed after the visit', () => {
    const once = cause(van().rows()).rows.fork();
    once.change('job', 'j1', { endedAt: opening + minute });
    expect(change(once, { words: 'Other' }).codes).toEqual(['work.jobEnded']);
  });
});

describe('the outcome of a concern', () => {
  const say = (rows: Rows, outcome: 'gone' | 'couldNotAppear') =>
    carryOut(recordConcernOutcome, rows, { concernId: 'k1', outcome, conditions: 'Cold' }, { by: 'desk' });
  const told = (...tries: [conditions: string, appeared: boolean][]) =>
    tries.reduce(
      (rows, [conditions, appeared], index) =>
        attempt(rows, { conditions, appeared }, { now: tuesdayTen + index * minute }).rows,
      van().rows(),
    );
  const flags = (rows: Rows) => say(rows, 'gone').rows.list('flag');

  it('"could not be made to appear" is flagged where nobody recorded an attempt', () => {
    const rules = (rows: Rows) =>
      say(rows, 'couldNotAppear')
        .rows.list('flag')
        .map(({ rule }) => rule);
    expect(rules(van().rows())).toEqual(['concern.noAttempt']);
    expect(rules(attempt(van().rows(), { concernId: 'k2' }).rows)).toEqual(['concern.noAttempt']);
    expect(rules(told(['Cold', false]))).toEqual([]);
  });

  it('"gone" is flagged where nobody tried again under what had shown it', () => {
    expect(flags(told(['Cold, over kerbs', true]))).toMatchObject([
      { rule: 'concern.goneNotRetried', jobId: 'j1', vehicleId: 'v1', facts: { concernId: 'k1', conditions: 1 } },
    ]);
    expect(flags(told(['Cold', true], ['Warm', false]))).toHaveLength(1);
    expect(flags(told(['Cold', false], ['Cold', true]))).toHaveLength(1);
    expect(flags(told(['Cold', true], ['Cold', false], ['Wet', true]))).toHaveLength(1);
  });

  it('"gone" is not flagged where the last try under each of them found nothing, however it was typed', () => {
    expect(flags(told(['Cold, over kerbs', true], ['cold over KERBS', false]))).toEqual([]);
    expect(flags(told(['Cold', true], ['Cold', true], ['Cold', false]))).toEqual([]);
    expect(flags(told(['Cold', false]))).toEqual([]);
    expect(flags(van().rows())).toEqual([]);
  });
});
