import { describe, expect, it } from '@jest/globals';
import type { RecordContact } from '../inputs.js';
import { type Given, given, type GivenCircumstances, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { recordContact } from './contact-log.js';

const shop = () => {
  const other = given().shop().customer('c2').vehicle('v2').job('j2').followUp('f2').call('t2', { jobId: 'j2' });
  const here = other.customer('c1').contact('k1').vehicle('v1').job('j1').followUp('f1');
  return here.line('l1', { goAhead: 'withCustomer' }).call('t1', { jobId: 'j1', followUpId: 'f1' });
};
const spoke = (input: Partial<RecordContact> = {}, said: GivenCircumstances = {}, story: Given = shop()) =>
  carryOut(
    recordContact,
    story.rows(),
    { vehicleId: 'v1', way: 'telephone', reached: true, answer: 'Thinks it over', moveOf: 'customer', ...input },
    { by: 'desk', ...said },
  );
const call = (input: Partial<RecordContact>) => spoke({ callId: 't1', ...input }).rows.get('call', 't1');

describe('an entry of the contact log', () => {
  it('is kept with the visit and follow-up of its call', () => {
    const { rows, outcome } = spoke({ contactEntryId: 'e1', callId: 't1', contactId: 'k1', withName: 'Ida' });
    expect(rows.get('contactEntry', 'e1')).toMatchObject({
      jobId: 'j1',
      followUpId: 'f1',
      callId: 't1',
      contactId: 'k1',
      withName: 'Ida',
      moveOf: 'customer',
    });
    expect(outcome?.created).toEqual({ contactEntry: 'e1' });
    expect(spoke().rows.list('contactEntry')).toMatchObject([{ jobId: null, followUpId: null, callId: null }]);
  });
  it('ends its call when somebody was reached and no next try was agreed', () => {
    expect(call({})).toMatchObject({ endedAt: tuesdayTen, endedHow: 'logged' });
  });
  it('leaves the call open with its next try, where nobody was reached or one was agreed', () => {
    const nextTryAt = tuesdayTen + hour;
    expect(call({ nextTryAt })).toMatchObject({ endedAt: null, nextTryAt });
    expect(call({ reached: false, nextTryAt })).toMatchObject({ endedAt: null, nextTryAt });
    expect(call({ reached: false, answer: undefined })).toMatchObject({ endedAt: null, nextTryAt: null });
  });
  it('is kept too when its call had ended meanwhile, and leaves that as it ended', () => {
    const ended = shop().but('call', 't1', { endedAt: tuesdayTen - hour, endedHow: 'noLongerNeeded' });
    const { rows } = spoke({ callId: 't1' }, {}, ended);
    expect(rows.list('contactEntry')).toMatchObject([{ callId: 't1' }]);
    expect(rows.get('call', 't1')).toMatchObject({ endedAt: tuesdayTen - hour, endedHow: 'noLongerNeeded' });
  });
  it('names what is of its vehicle', () => {
    for (const [table, named] of [
      ['job', { jobId: 'j2' }],
      ['followUp', { followUpId: 'f2' }],
      ['call', { callId: 't2' }],
    ] as const) {
      expect(spoke(named).refusals).toMatchObject([{ code: 'contactEntry.ofOtherVehicle', facts: { table } }]);
    }
    for (const missing of [
      { vehicleId: 'v9' },
      { jobId: 'j9' },
      { followUpId: 'f9' },
      { callId: 't9' },
      { contactId: 'k9' },
    ]) {
      expect(spoke(missing).codes).toEqual(['row.notFound']);
    }
  });
  it('says what was answered, and a next try that is not over', () => {
    expect(spoke({ answer: undefined }).codes).toEqual(['contactEntry.answerMissing']);
    expect(spoke({ nextTryAt: tuesdayTen - 1 }).codes).toEqual(['contactEntry.nextTryPast']);
    const { rows } = spoke({ contactEntryId: 'e1' });
    expect(carryOut(recordContact, rows, { ...spoken, contactEntryId: 'e1' }, { by: 'desk' }).codes).toEqual([
      'contactEntry.alreadyThere',
    ]);
  });
  const spoken: RecordContact = { vehicleId: 'v1', way: 'message', reached: false, moveOf: 'nobody' };
  it('is the floor’s only where the shop says so', () => {
    const shut = () => shop().but('shopSetting', 'setting', { floorRecordsGoAheads: false });
    for (const by of ['technician', 'partsClerk'] as const) {
      expect(spoke({}, { by }).codes).toEqual([]);
      expect(spoke({}, { by }, shut()).codes).toEqual(['contactEntry.notYours']);
    }
    for (const by of ['owner', 'manager', 'desk'] as const) expect(spoke({}, { by }, shut()).codes).toEqual([]);
  });
});
