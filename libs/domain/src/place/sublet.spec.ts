import { describe, expect, it } from '@jest/globals';
import type { ArrangeSublet, BringBack, SendAway } from '../inputs.js';
import { type Given, given, type GivenCircumstances, hour, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { takeIntoBay } from './take-into-bay.js';
import { bringBack, letOutsiderIn, sendAway, sendComponentAway } from './out-and-back.js';
import { arrangeSublet, cancelSublet, changeSublet } from './sublet.js';

const here = () => given().shop().bay('b1').supplier('s1').vehicle('v1').job('j1').inBay('b1').line('l1').line('l2');
const desk = { by: 'desk' } as const;
const later = { by: 'desk', now: tuesdayTen + hour } as const;
const send = (story: Given, input: Partial<SendAway> = {}, said: GivenCircumstances = {}) =>
  carryOut(sendAway, story.rows(), { subletId: 'u1', keepSpot: true, placeId: 'away', ...input }, { ...desk, ...said });
const back = (rows: Rows, input: Partial<BringBack> = {}) =>
  carryOut(bringBack, rows.fork(), { subletId: 'u1', placeId: 'in', ...input }, later);
const uses = (rows: Rows) => rows.list('spotUse').map((use) => [use.kind, use.toAt]);

describe('arranging work of another firm', () => {
  const arrange = (input: Partial<ArrangeSublet> = {}, story = here()) =>
    carryOut(arrangeSublet, story.rows(), { jobId: 'j1', form: 'vehicleOut', firm: 'Harbour Paint', ...input }, desk);

  it('says which firm, for which line, when and for how much, and nothing goes anywhere yet', () => {
    const slotAt = tuesdayTen + 24 * hour;
    const { rows } = arrange({
      subletId: 'u1',
      lineId: 'l1',
      supplierId: 's1',
      slotAt,
      price: '0450.50',
      dueBackAt: slotAt,
    });
    expect(rows.get('sublet', 'u1')).toMatchObject({
      firm: 'Harbour Paint',
      lineId: 'l1',
      price: '450.5',
      slotAt,
      state: 'arranged',
      fromAt: null,
    });
    expect([rows.list('hold'), rows.list('place')]).toMatchObject([[], [{ kind: 'bay' }]]);
  });
  it('refuses what names nothing that is there, or says too little', () => {
    expect(arrange({ subletId: 'u1' }, here().sublet('u1')).codes).toEqual(['sublet.alreadyThere']);
    expect(arrange({ form: 'componentOut' }).codes).toEqual(['sublet.componentMissing']);
    expect(arrange({ lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(arrange({ supplierId: 's9' }).codes).toEqual(['row.notFound']);
    expect(arrange({ lineId: 'l9' }, here().line('l9', { jobId: 'j0' })).codes).toEqual(['sublet.lineOfOtherJob']);
    expect(arrange({}, here().but('job', 'j1', { endedAt: opening + 1 })).codes).toEqual(['place.jobEnded']);
    expect(arrange({ jobId: 'j9' }).codes).toEqual(['row.notFound']);
  });
  it('is said anew, what is left out stays; under way the place and the hold say so too', () => {
    const away = send(here().sublet('u1', { price: '100' })).rows.fork();
    const dueBackAt = tuesdayTen + 48 * hour;
    const { rows } = carryOut(changeSublet, away, { subletId: 'u1', firm: 'Other Paint', dueBackAt }, desk);
    expect(rows.get('sublet', 'u1')).toMatchObject({ firm: 'Other Paint', dueBackAt, price: '100' });
    expect(rows.get('place', 'away').dueBackAt).toBe(dueBackAt);
    expect(rows.list('hold')).toMatchObject([{ moveOf: 'Other Paint', toAt: null }]);
  });
  it.each(['ended', 'cancelled'] as const)('is not said anew when it is %s', (state) => {
    const rows = here().sublet('u1', { state }).rows();
    expect(carryOut(changeSublet, rows, { subletId: 'u1', price: '1' }, desk).codes).toEqual(['sublet.over']);
  });
  it('is called off with words before it begins, and not after', () => {
    const cancel = (story: Given) => carryOut(cancelSublet, story.rows(), { subletId: 'u1', words: 'No slot' }, desk);
    expect(cancel(here().sublet('u1')).rows.get('sublet', 'u1')).toMatchObject({
      state: 'cancelled',
      endWords: 'No slot',
    });
    expect(cancel(here().sublet('u1', { state: 'underWay' })).codes).toEqual(['sublet.notArranged']);
    expect(cancel(here()).codes).toEqual(['row.notFound']);
  });
});

describe('the vehicle goes out', () => {
  it('is away, keeps its spot where that is said, and the whole job is held by the firm', () => {
    const dueBackAt = tuesdayTen + 48 * hour;
    const { rows, outcome } = send(here().sublet('u1', { lineId: 'l1', dueBackAt }));
    expect(rows.get('place', 'away')).toMatchObject({ kind: 'away', subletId: 'u1', dueBackAt, movedHow: 'driven' });
    expect(uses(rows)).toEqual([
      ['stands', tuesdayTen],
      ['kept', null],
    ]);
    expect(rows.get('sublet', 'u1')).toMatchObject({ state: 'underWay', fromAt: tuesdayTen });
    expect(rows.get('hold', outcome?.created?.['hold'] ?? '')).toMatchObject({
      reason: 'sublet',
      subletId: 'u1',
      moveOf: 'Harbour Paint',
      fromAt: tuesdayTen,
    });
    expect(rows.list('holdLine')).toEqual([]);
    expect(uses(send(here().sublet('u1'), { keepSpot: false }).rows)).toEqual([['stands', tuesdayTen]]);
  });
  it('goes by road by the rules of the road, carried by those of a transporter (rule 3)', () => {
    const stuck = () => here().but('vehicle', 'v1', { rolls: false, mayBeDriven: false }).caution('x').sublet('u1');
    const codes = ['place.doesNotRoll', 'place.mayNotBeDriven', 'caution.forbids'];
    expect(send(stuck()).codes).toEqual(codes);
    expect(send(stuck(), { movedHow: 'towed' }).codes).toEqual(codes);
    const towed = { movedHow: 'towed', movedByName: 'Ada' } as const;
    expect(send(stuck(), towed).codes).toEqual([]);
    expect(send(stuck().but('caution', 'x', { code: 'onStands' }), towed).codes).toEqual(['caution.forbids']);
  });
  it('is recorded where it is out already, and flagged', () => {
    const { rows } = send(here().caution('x').sublet('u1'), { alreadyOut: true }, { effectiveAt: tuesdayTen - hour });
    expect(rows.get('place', 'away').fromAt).toBe(tuesdayTen - hour);
    expect(rows.list('flag').map((one) => one.rule)).toEqual(['work.againstCaution']);
    expect(rows.list('report')).toMatchObject([{ kind: 'sendAway', state: 'settled' }]);
  });
  it('is refused from where it is not, in another form, when over, and after the visit', () => {
    expect(send(given().shop().vehicle('v1').job('j1').sublet('u1')).codes).toContain('place.notHere');
    expect(send(here().sublet('u1', { form: 'componentOut' })).codes).toEqual(['sublet.otherForm']);
    expect(send(here().sublet('u1', { state: 'ended' })).codes).toEqual(['sublet.notArranged']);
    expect(
      send(
        here()
          .sublet('u1')
          .but('job', 'j1', { endedAt: opening + 1 }),
      ).codes,
    ).toEqual(['place.jobEnded']);
    expect(send(here().sublet('u1'), { placeId: 'j1-b1' }).codes).toEqual(['place.alreadyRecorded']);
    expect(send(here()).codes).toEqual(['row.notFound']);
    const twice = send(here().sublet('u1')).rows.with({ sublet: [here().sublet('u2').rows().get('sublet', 'u2')] });
    expect(carryOut(sendAway, twice, { subletId: 'u2', keepSpot: false, alreadyOut: true }, desk).codes).toEqual([
      'place.notHere',
    ]);
  });

  const away = () => send(here().sublet('u1', { price: '100' })).rows;
  it('comes back into the spot that was kept: hold and place end, its line stays open', () => {
    const { rows } = back(away(), { intoKeptSpot: true, price: '120', words: 'Runs at the sill' });
    expect(rows.get('place', 'away').toAt).toBe(later.now);
    expect(rows.get('place', 'in')).toMatchObject({ kind: 'bay', bayId: 'b1', spot: 1 });
    expect(rows.list('hold')).toMatchObject([{ toAt: later.now, endedHow: 'byHand', endedById: 'desk' }]);
    expect(rows.get('sublet', 'u1')).toMatchObject({
      state: 'ended',
      toAt: later.now,
      price: '120',
      endWords: 'Runs at the sill',
    });
    expect(rows.get('workLine', 'l1').progress).toBe('planned');
    expect(rows.list('report').at(-1)).toMatchObject({ kind: 'bringBack', state: 'settled' });
  });
  it('comes back to the yard else, and its spot is free; the price stays where none is said', () => {
    const { rows } = back(away(), { yardSpot: '7' });
    expect(rows.get('place', 'in')).toMatchObject({ kind: 'yard', yardSpot: '7' });
    expect(uses(rows).every(([, toAt]) => toAt !== null)).toBe(true);
    expect(rows.get('sublet', 'u1').price).toBe('100');
  });
  it('is refused into a spot that was not kept, and when nothing is under way', () => {
    const free = send(here().sublet('u1'), { keepSpot: false }).rows;
    expect(back(free, { intoKeptSpot: true }).codes).toEqual(['place.spotNotKept']);
    expect(back(here().sublet('u1').rows()).codes).toEqual(['sublet.notUnderWay']);
    expect(back(here().rows()).codes).toEqual(['row.notFound']);
    expect(back(away(), { placeId: 'away' }).codes).toEqual(['place.alreadyRecorded']);
  });
  it('that somebody has put into a bay meanwhile is not moved again', () => {
    const inside = carryOut(takeIntoBay, away().fork(), { jobId: 'j1', bayId: 'b1' }, later).rows;
    expect(uses(inside).at(-1)).toEqual(['stands', null]);
    const { rows } = back(inside);
    expect(rows.find('place', 'in')).toBeUndefined();
    expect(rows.get('sublet', 'u1').state).toBe('ended');
  });
});

describe('a component goes out', () => {
  const sendPart = (story: Given) => carryOut(sendComponentAway, story.rows(), { subletId: 'u1' }, desk);
  const bumper = { form: 'componentOut', component: 'Bumper' } as const;

  it('the vehicle keeps its bay, and the line, else the job, waits for the firm', () => {
    const { rows } = sendPart(here().sublet('u1', { ...bumper, lineId: 'l1' }));
    expect(rows.list('place')).toMatchObject([{ kind: 'bay', toAt: null }]);
    expect(rows.list('hold')).toMatchObject([{ reason: 'sublet', words: 'Bumper', subletId: 'u1' }]);
    expect(rows.list('holdLine').map((one) => one.lineId)).toEqual(['l1']);
    expect(sendPart(here().sublet('u1', bumper)).rows.list('holdLine')).toEqual([]);
  });
  it('comes back without moving the vehicle, also after a release', () => {
    const out = sendPart(here().sublet('u1', bumper)).rows;
    const { rows } = back(out);
    expect([rows.list('place').length, rows.list('hold')[0]?.toAt]).toEqual([1, later.now]);
    const gone = here()
      .sublet('u1', { ...bumper, state: 'underWay', fromAt: opening })
      .but('job', 'j1', { endedAt: opening + 1 });
    expect(back(gone.rows()).rows.get('sublet', 'u1').state).toBe('ended');
  });
  it('is not how a vehicle goes out', () => {
    expect(sendPart(here().sublet('u1')).codes).toEqual(['sublet.otherForm']);
  });
});

describe('somebody comes in', () => {
  const letIn = (story: Given) => carryOut(letOutsiderIn, story.rows(), { subletId: 'u1' }, desk);
  const glass = () => here().sublet('u1', { form: 'outsiderIn' });

  it('works here while it is under way, and holds nothing up', () => {
    const { rows } = letIn(glass());
    expect(rows.get('sublet', 'u1')).toMatchObject({ state: 'underWay', fromAt: tuesdayTen, toAt: null });
    expect(rows.list('hold')).toEqual([]);
    expect(back(rows).rows.get('sublet', 'u1')).toMatchObject({ state: 'ended', toAt: later.now });
  });
  it('beside live high voltage is flagged: nobody here knows the skill of somebody from outside', () => {
    const { rows, codes } = letIn(glass().caution('x', { code: 'highVoltageLive' }));
    expect([codes, rows.list('flag').map((one) => one.rule)]).toEqual([[], ['work.againstCaution']]);
  });
  it('is not how a component goes out', () => {
    expect(letIn(here().sublet('u1')).codes).toEqual(['sublet.otherForm']);
  });
});
