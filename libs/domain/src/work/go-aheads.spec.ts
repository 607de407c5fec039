import { describe, expect, it } from '@jest/globals';
import type { DropLine, RecordGoAhead, ReopenLine, WithdrawGoAhead } from '../inputs.js';
import { given, type Given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { totalsOf } from '../questions/totals.js';
import { carryOut } from '../settle/carry-out.js';
import { carryOverLine, dropLine, finishLine } from './end-line.js';
import { standing } from './given-standing.js';
import { recordGoAhead } from './record-go-ahead.js';
import { reopenLine } from './reopen-line.js';
import { startWork } from './start-work.js';
import { withdrawGoAhead } from './withdraw-go-ahead.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const van = (line: Line = {}, shop: Parameters<Given['shop']>[1] = {}) =>
  given().shop({}, shop).customer('c1').vehicle('v1').job('j1').inYard().line('l1', line);
const asked = (line: Line = {}) => van({ goAhead: 'withCustomer', price: '100', ...line });
const begun = { progress: 'started', startedAt: opening } as const;
const gone = (rows = van()) => rows.but('job', 'j1', { endedAt: opening + minute }).rows();
const give = (rows: Rows, input: Partial<RecordGoAhead> = {}, said: GivenCircumstances = {}) =>
  carryOut(recordGoAhead, rows, { lineId: 'l1', answer: 'given', ...input }, { by: 'desk', ...said });

describe('a line that rests on a standing go-ahead', () => {
  const rest = (rows: Rows, input: Partial<RecordGoAhead> = {}, said: GivenCircumstances = {}) =>
    give(rows, { how: 'standing', standingGoAheadId: 's1', ...input }, said);

  it('is given by who gave that, and says so', () => {
    const { rows } = rest(standing(asked(), 's1').rows());
    expect(rows.get('workLine', 'l1')).toMatchObject({ goAhead: 'given', standingId: 's1' });
    expect(rows.list('goAhead')).toMatchObject([{ how: 'standing', byName: 'Mr Ashby', standingId: 's1' }]);
  });

  it('is the floor’s to record, whatever the shop says of other go-aheads', () => {
    const closed = standing(
      van({ goAhead: 'withCustomer', price: '100' }, { floorRecordsGoAheads: false }),
      's1',
    ).rows();
    for (const by of ['technician', 'partsClerk'] as const) {
      expect(rest(closed, {}, { by }).codes).toEqual([]);
      expect(give(closed, { how: 'telephone', byName: 'Mrs Hale' }, { by }).codes).toEqual(['work.goAheadNotYours']);
    }
  });

  it('needs enough left for its price, which has to be known', () => {
    const other = (price: string, over: Line = {}) =>
      standing(asked(), 's1', { upTo: '150' }).line('l2', { price, standingId: 's1', ...over });
    expect(rest(other('50').rows()).codes).toEqual([]);
    const { codes, refusedFor } = rest(other('50.01').rows());
    expect([codes, refusedFor]).toEqual([['work.standingUsedUp'], { left: '99.99', price: '100' }]);
    expect(rest(other('80', { progress: 'dropped' }).rows()).codes).toEqual([]);
    expect(rest(standing(asked({ price: null }), 's1').rows()).codes).toEqual(['work.standingNeedsPrice']);
    expect(rest(standing(asked({ standingId: 's1' }), 's1', { upTo: '100' }).rows()).codes).toEqual([]);
  });

  it.each([
    ['has ended', { endedAt: opening }],
    ['ran out', { untilDay: '2026-03-09' }],
    ['is for another vehicle', { vehicleId: 'v2' }],
    ['is for another visit', { jobId: 'j2' }],
    ['is another customer’s', { customerId: 'c2' }],
  ])('finds none that %s', (_, over) => {
    expect(rest(standing(asked(), 's1', over).rows()).codes).toEqual(['work.standingNotForThis']);
  });

  it('names it, and names none otherwise', () => {
    const rows = standing(asked(), 's1').rows();
    expect(rest(rows, { standingGoAheadId: undefined }).codes).toEqual(['work.standingMissing']);
    expect(rest(rows, { how: 'telephone', byName: 'Mrs Hale' }).codes).toEqual(['work.standingMissing']);
    expect(rest(rows, { answer: 'declined' }).codes).toEqual(['work.standingMissing']);
    const after = give(rest(rows).rows, { how: 'there', byName: 'Mrs Hale' }).rows;
    expect(after.get('workLine', 'l1').standingId).toBeNull();
  });
});

describe('a go-ahead by a contact of the customer', () => {
  const contact = (over: Parameters<Given['contact']>[1], line: Line = {}) =>
    given()
      .shop()
      .customer('c1')
      .contact('Jo Reed', { mayAgreeAny: false, ...over })
      .vehicle('v1')
      .job('j1')
      .line('l1', { goAhead: 'withCustomer', price: '100', ...line })
      .rows();
  const byJo = { how: 'telephone', byName: 'jo reed' } as const;

  it('holds up to what they may agree to, amount before price', () => {
    expect(give(contact({ mayAgreeUpTo: '100' }), byJo).codes).toEqual([]);
    const { codes, refusedFor } = give(contact({ mayAgreeUpTo: '99.50' }), byJo);
    expect([codes, refusedFor]).toEqual([['work.contactMayNotAgree'], { limit: '99.5', amount: '100' }]);
    expect(give(contact({ mayAgreeUpTo: '100' }), { ...byJo, upTo: '150' }).codes).toEqual(['work.contactMayNotAgree']);
    expect(give(contact({ mayAgreeAny: true }), { ...byJo, upTo: '9000' }).codes).toEqual([]);
  });

  it('is nothing from whom may agree to nothing, or is a contact no longer', () => {
    expect(give(contact({}), byJo).refusedFor).toEqual({ limit: '0', amount: '100' });
    expect(give(contact({ mayAgreeAny: true, endedAt: opening }), byJo).codes).toEqual(['work.contactMayNotAgree']);
    expect(give(contact({}), { ...byJo, answer: 'declined' }).codes).toEqual([]);
    expect(give(contact({}), { ...byJo, byName: 'Mrs Hale' }).codes).toEqual([]);
  });

  it('beyond that is recorded and flagged where the desk or a lead answers for it in words', () => {
    const words = 'Mr Ashby nods beside her';
    const { rows } = give(contact({ mayAgreeUpTo: '50' }), { ...byJo, words });
    expect(rows.get('workLine', 'l1').goAhead).toBe('given');
    expect(rows.list('flag')).toMatchObject([
      { rule: 'work.goAheadBeyondContact', jobId: 'j1', facts: { lineId: 'l1', limit: '50', amount: '100' } },
    ]);
    expect(give(contact({}), { ...byJo, words }, { by: 'owner' }).codes).toEqual([]);
    expect(give(contact({}), { ...byJo, words }, { by: 'technician' }).codes).toEqual(['work.contactMayNotAgree']);
  });

  it('to a line without a price is up to their limit', () => {
    const { rows } = give(contact({ mayAgreeUpTo: '80' }, { price: null }), byJo);
    expect(rows.get('workLine', 'l1')).toMatchObject({ goAhead: 'given', goAheadUpTo: '80' });
    const any = give(contact({ mayAgreeAny: true, mayAgreeUpTo: '80' }, { price: null }), byJo).rows;
    expect(any.get('workLine', 'l1').goAheadUpTo).toBeNull();
  });
});

const withdraw = (rows: Rows, input: Partial<WithdrawGoAhead> = {}, said: GivenCircumstances = {}) =>
  carryOut(
    withdrawGoAhead,
    rows,
    { lineId: 'l1', byName: 'Mrs Hale', how: 'telephone', ...input },
    { by: 'desk', ...said },
  );
const drop = (rows: Rows, input: Partial<DropLine> = {}) =>
  carryOut(dropLine, rows, { lineId: 'l1', words: 'Put back', ...input }, { by: 'technician' });

describe('withdrawGoAhead', () => {
  it('declines a line that was not begun', () => {
    const { rows } = withdraw(van({ standingId: 's1', goAheadUpTo: '100' }).rows(), { words: 'Sells it' });
    const after = { goAhead: 'declined', goAheadUpTo: null, standingId: null, progress: 'planned' };
    expect(rows.get('workLine', 'l1')).toMatchObject({ ...after, withdrawnAt: tuesdayTen });
    expect(rows.list('goAhead')).toMatchObject([
      { answer: 'declined', byName: 'Mrs Hale', how: 'telephone', words: 'Sells it', standingId: 's1' },
    ]);
    expect(carryOut(startWork, rows, { lineId: 'l1' }, { by: 'technician' }).codes).toEqual(['work.noGoAhead']);
    expect(drop(rows, { charge: '5' }).codes).toEqual(['work.chargeNotDue']);
    expect(drop(rows).codes).toEqual([]);
  });

  it('stops a line that was begun, with every clock on it', () => {
    const rows = van(begun).clock('c1').clock('c2', { personId: 'second' }).line('l2', begun);
    const after = withdraw(
      rows.clock('c3', { personId: 'owner' }).rows(),
      {},
      { effectiveAt: tuesdayTen - minute },
    ).rows;
    expect(after.list('clock').map((clock) => clock.toAt)).toEqual([tuesdayTen - minute, tuesdayTen - minute, null]);
    expect(after.get('workLine', 'l1')).toMatchObject({ progress: 'stopped', goAhead: 'declined' });
  });

  it('lets it be put back, but not be finished as if nothing had happened', () => {
    const rows = withdraw(van(begun).rows()).rows;
    expect(carryOut(startWork, rows, { lineId: 'l1' }, { by: 'technician' }).codes).toEqual([]);
    expect(carryOut(finishLine, rows, { lineId: 'l1' }).codes).toEqual(['work.goAheadWithdrawn']);
    const carried = carryOut(carryOverLine, rows, { lineId: 'l1', done: 'Off', remaining: 'Rest', followUpId: 'f9' });
    expect(carried.rows.get('followUp', 'f9').needsGoAhead).toBe(true);
  });

  it('ends with what is charged for it, which may be nothing', () => {
    const rows = withdraw(van({ ...begun, price: '300' }).rows()).rows;
    expect(drop(rows).codes).toEqual(['work.chargeMissing']);
    const after = drop(rows, { charge: '45.00' }).rows;
    expect(after.get('workLine', 'l1')).toMatchObject({ progress: 'dropped', price: '45', endWords: 'Put back' });
    expect(totalsOf(after.list('workLine'))).toMatchObject({ soFar: '45', charged: '45' });
    expect(drop(rows, { charge: '0' }).rows.get('workLine', 'l1').price).toBe('0');
    expect(drop(van(begun).rows(), { charge: '45' }).codes).toEqual(['work.chargeNotDue']);
  });

  it('is the way out of a begun line that was asked again, too', () => {
    expect(withdraw(van({ ...begun, goAhead: 'withCustomer' }).rows()).codes).toEqual([]);
    for (const goAhead of ['withCustomer', 'deferred', 'declined'] as const) {
      const { codes, refusedFor } = withdraw(van({ goAhead }).rows());
      expect([codes, refusedFor]).toEqual([['work.notGiven'], { goAhead }]);
    }
  });

  it('is over when the line is given again', () => {
    const rows = withdraw(van(begun).rows()).rows;
    const { rows: after } = give(rows, { how: 'there', byName: 'Mrs Hale' });
    expect(after.get('workLine', 'l1')).toMatchObject({ goAhead: 'given', withdrawnAt: null });
    expect(carryOut(finishLine, after, { lineId: 'l1' }).codes).toEqual([]);
  });

  it('is recorded by whom go-aheads are, the shop’s own by a lead', () => {
    const closed = van({}, { floorRecordsGoAheads: false }).rows();
    expect(withdraw(closed, {}, { by: 'technician' }).codes).toEqual(['work.goAheadNotYours']);
    expect(withdraw(van().rows(), {}, { by: 'technician' }).codes).toEqual([]);
    expect(withdraw(van().rows(), { how: 'shop' }).codes).toEqual(['work.goAheadOfShop']);
    expect(withdraw(van().rows(), { how: 'shop' }, { by: 'manager' }).codes).toEqual([]);
    expect(withdraw(van().rows(), { how: 'standing' }).codes).toEqual(['work.goAheadByWhom']);
  });

  it('refuses ended lines, ended visits and unknown lines', () => {
    expect(withdraw(van({ progress: 'done' }).rows()).codes).toEqual(['work.lineEnded']);
    expect(withdraw(gone()).codes).toEqual(['work.jobEnded']);
    expect(withdraw(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
  });
});

describe('a hold for a go-ahead', () => {
  it('ends when one line of a choice is given: the others are settled', () => {
    const rows = asked({ choiceId: 'c' })
      .line('l2', { choiceId: 'c', goAhead: 'withCustomer' })
      .hold('h1', { reason: 'goAhead' })
      .rows();
    const after = give(rows, { how: 'there', byName: 'Mrs Hale' }).rows;
    expect(after.get('hold', 'h1')).toMatchObject({ endedHow: 'goAheadAnswered' });
    const named = asked({ choiceId: 'c' })
      .line('l2', { choiceId: 'c', goAhead: 'withCustomer' })
      .hold('h1', { reason: 'goAhead' }, ['l2'])
      .rows();
    expect(give(named, { how: 'there', byName: 'Mrs Hale' }).rows.get('hold', 'h1').toAt).not.toBeNull();
  });
});

describe('reopenLine', () => {
  const reopen = (rows: Rows, input: Partial<ReopenLine> = {}) =>
    carryOut(reopenLine, rows, { lineId: 'l1', words: 'Still rattles', ...input }, { by: 'technician' });
  const ended = { endedAt: opening + hour, endWords: 'Bolted' } as const;

  it('puts it back where it was, and says why to whoever starts next', () => {
    const { rows } = reopen(van({ ...begun, ...ended, progress: 'done', handover: 'Mind the loom' }).rows());
    expect(rows.get('workLine', 'l1')).toMatchObject({
      ...{ progress: 'stopped', endedAt: null, endWords: null, startedAt: opening, goAhead: 'given' },
      handover: 'Mind the loom\nBolted\nStill rattles',
    });
    expect(reopen(van({ ...ended, progress: 'dropped' }).rows()).rows.get('workLine', 'l1').progress).toBe('planned');
  });

  it('takes the charge of what was put back away again', () => {
    const rows = drop(withdraw(van({ ...begun, price: '300' }).rows()).rows, { charge: '45' }).rows;
    expect(reopen(rows).rows.get('workLine', 'l1')).toMatchObject({ price: null, progress: 'stopped' });
    expect(reopen(van({ ...ended, progress: 'dropped', price: '300' }).rows()).rows.get('workLine', 'l1').price).toBe(
      '300',
    );
  });

  const carried = () => {
    const rows = van(begun).part('p1').rows();
    return carryOut(carryOverLine, rows, { lineId: 'l1', done: 'Off', remaining: 'Fit', followUpId: 'f9' }).rows;
  };

  it('brings back what was carried over, its part lines with it', () => {
    const { rows } = reopen(carried());
    expect(rows.get('followUp', 'f9')).toMatchObject({ state: 'dropped', closeWords: 'Still rattles' });
    expect(rows.get('partLine', 'p1')).toMatchObject({ state: 'wanted', lineId: 'l1', jobId: 'j1', followUpId: null });
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'stopped', toFollowUpId: null });
  });

  it('does not, once something has come of the follow-up', () => {
    const but = (change: (rows: Rows) => void) => {
      const rows = carried().fork();
      change(rows);
      return reopen(rows).codes;
    };
    expect(but((rows) => rows.change('followUp', 'f9', { state: 'done' }))).toEqual(['work.followUpGoesOn']);
    const taken = carried().with(given().job('j2').line('l7', { fromFollowUpId: 'f9' }).rows().content());
    expect(reopen(taken.with({ job: carried().list('job') })).codes).toEqual(['work.followUpGoesOn']);
    const waits = carried().with(given().vehicle('v1').job('j1').fix('x1', { followUpId: 'f9' }).rows().content());
    expect(reopen(waits.with({ job: carried().list('job') })).codes).toEqual(['work.followUpGoesOn']);
  });

  it('is refused for an open line, an ended visit, a choice that was made otherwise, an unknown line', () => {
    expect(reopen(van().rows()).codes).toEqual(['work.lineOpen']);
    expect(reopen(gone(van({ progress: 'done' }))).codes).toEqual(['work.jobEnded']);
    expect(reopen(van().rows(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
    const choice = van({ progress: 'dropped', choiceId: 'c' }).line('l2', { choiceId: 'c' }).rows();
    expect(reopen(choice).codes).toEqual(['work.choiceTaken']);
  });
});
