import { describe, expect, it } from '@jest/globals';
import type { HandBack } from '../inputs.js';
import { type Given, given, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { isReady } from './hand-back-blockers.js';
import { handBack } from './hand-back.js';

/** A visit on which nothing is open any more. */
const ready = () =>
  given()
    .shop()
    .bay('b1')
    .vehicle('v1')
    .job('j1', { number: 7 })
    .concern('s1', { outcome: 'gone', conditions: 'over kerbs', outcomeConditions: 'over kerbs' })
    .inBay('b1')
    .line('l1', { progress: 'done', startedAt: tuesdayTen - hour, endWords: 'Step renewed', concernId: 's1' });

const give = (story: Given, input: Partial<HandBack> = {}, by: 'desk' | 'manager' = 'desk') =>
  carryOut(
    handBack,
    story.rows(),
    { jobId: 'j1', leavesBy: 'road', receivedBy: 'A Driver', receivedHow: 'there', ...input },
    { by },
  );

describe('hand-back', () => {
  it('ends the visit: the vehicle leaves its place and its spot, acknowledged by name', () => {
    const { rows, outcome } = give(ready(), { odometer: 100_010 });
    expect(rows.get('job', 'j1')).toMatchObject({
      endedAt: tuesdayTen,
      endedHow: 'handedBack',
      leftBy: 'road',
      odometerOut: 100_010,
    });
    expect(rows.list('place')[0]?.toAt).toBe(tuesdayTen);
    expect(rows.list('spotUse')[0]?.toAt).toBe(tuesdayTen);
    expect(rows.list('sheet')).toMatchObject([{ receivedBy: 'A Driver', receivedHow: 'there', leavesBy: 'road' }]);
    expect(outcome?.facts).toMatchObject({ number: 7, leavesBy: 'road' });
  });
  it('leaves holds to end with it', () => {
    const { rows } = give(ready().hold('h1'));
    expect(rows.get('hold', 'h1')).toMatchObject({ toAt: tuesdayTen, endedHow: 'handedBack' });
  });
  it('keeps a falling reading in doubt and goes on (rule 15)', () => {
    const { rows, codes } = give(ready().odometer('o1', 100_000), { odometer: 99_000 });
    expect(codes).toEqual([]);
    expect(rows.list('flag').map(({ rule }) => rule)).toEqual(['odometer.falling']);
    expect(rows.list('odometerReading').at(-1)?.doubtful).toBe(true);
  });
  it('is done once, for a job that is there', () => {
    expect(give(ready().but('job', 'j1', { endedAt: tuesdayTen })).codes).toEqual(['job.ended']);
    expect(give(ready(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
  });
});

describe('rule 9: a hand-back is refused while', () => {
  const refusedFor = (story: Given, input: Partial<HandBack> = {}) =>
    give(story, input).refusals.map(({ code, way }) => [code, way?.id]);

  it('a clock runs', () => {
    expect(refusedFor(ready().clock('k1'))).toEqual([['handBack.clockRuns', 'k1']]);
    expect(refusedFor(ready().clock('k1', { toAt: tuesdayTen }))).toEqual([]);
  });
  it.each(['started', 'stopped'] as const)('a line is %s, a follow-up or not', (progress) => {
    const begun = ready().line('l2', { progress, startedAt: tuesdayTen - hour });
    expect(refusedFor(begun)).toEqual([['handBack.lineUnfinished', 'l2']]);
    expect(refusedFor(begun.followUp('f1', { lineId: 'l2' }))).toEqual([['handBack.lineUnfinished', 'l2']]);
  });
  it.each(['given', 'withCustomer'] as const)('a planned line is %s and has no open follow-up', (goAhead) => {
    const planned = () => ready().line('l2', { goAhead });
    expect(refusedFor(planned())).toEqual([['handBack.lineOpen', 'l2']]);
    expect(refusedFor(planned().followUp('f1', { lineId: 'l2' }))).toEqual([]);
    expect(refusedFor(planned().followUp('f1', { lineId: 'l2', state: 'dropped' }))).toEqual([
      ['handBack.lineOpen', 'l2'],
    ]);
    expect(refusedFor(planned().followUp('f1', { lineId: 'l1' }))).toEqual([['handBack.lineOpen', 'l2']]);
  });
  it.each(['deferred', 'declined'] as const)('but not for a planned line that is %s', (goAhead) => {
    expect(refusedFor(ready().line('l2', { goAhead }))).toEqual([]);
  });
  it.each(['carriedOver', 'dropped', 'done'] as const)('nor for a line that is %s', (progress) => {
    expect(refusedFor(ready().line('l2', { progress, startedAt: tuesdayTen - hour }))).toEqual([]);
  });
  it('a caution forbids the door it leaves by; one that does not, or has ended, does not matter', () => {
    expect(refusedFor(ready().caution('x'))).toEqual([['handBack.cautionOpen', 'x']]);
    expect(refusedFor(ready().caution('x'), { leavesBy: 'transporter' })).toEqual([]);
    const stands = () => ready().caution('x', { code: 'onStands' });
    expect(refusedFor(stands(), { leavesBy: 'transporter' })).toEqual([['handBack.cautionOpen', 'x']]);
    expect(refusedFor(ready().caution('x', { standing: true, code: 'gasTank' }))).toEqual([]);
    expect(refusedFor(ready().caution('x', { endedAt: tuesdayTen }))).toEqual([]);
  });
  it('a wheel is off, or on without a torque record, by road; a transporter takes it as it is', () => {
    const wheels = () =>
      ready()
        .followUp('f1', { kind: 'retorque' })
        .wheel('w1', '1L', { onAt: null })
        .wheel('w2', '1R', { onAt: tuesdayTen - hour })
        .wheel('w3', '2L', { onAt: tuesdayTen - hour, torquedAt: tuesdayTen - hour, torque: '120' });
    expect(refusedFor(wheels())).toEqual([
      ['wheel.stillOff', 'w1'],
      ['wheel.notTorqued', 'w2'],
    ]);
    expect(refusedFor(wheels(), { leavesBy: 'transporter' })).toEqual([]);
  });
  it('wheels were off and nobody has put down when they are tightened again, by road', () => {
    const torqued = { onAt: tuesdayTen - hour, torquedAt: tuesdayTen - hour, torque: '120' };
    const story = () => ready().wheel('w1', '1L', torqued);
    expect(refusedFor(story())).toEqual([['handBack.retorqueUntold', 'j1']]);
    expect(refusedFor(story(), { leavesBy: 'transporter' })).toEqual([]);
    expect(refusedFor(story().followUp('f1', { kind: 'retorque' }))).toEqual([]);
    expect(refusedFor(story().followUp('f1', { kind: 'lookAgain' }))).toEqual([['handBack.retorqueUntold', 'j1']]);
  });
  it.each(['vehicleOut', 'componentOut', 'outsiderIn'] as const)('another firm’s work is under way: %s', (form) => {
    expect(refusedFor(ready().sublet('u1', { form, state: 'underWay' }))).toEqual([['handBack.subletUnderWay', 'u1']]);
    expect(refusedFor(ready().sublet('u1', { form, state: 'ended' }))).toEqual([]);
  });
  it('but not for a line whose choice went another way', () => {
    const choice = () =>
      ready().but('workLine', 'l1', { choiceId: 'c1' }).line('l2', { choiceId: 'c1', goAhead: 'withCustomer' });
    expect(refusedFor(choice())).toEqual([]);
    expect(refusedFor(choice().but('workLine', 'l1', { choiceId: null }))).toEqual([['handBack.lineOpen', 'l2']]);
  });
  it('a concern has no outcome', () => {
    expect(refusedFor(ready().concern('s2'))).toEqual([['handBack.concernOpen', 's2']]);
  });
  it.each(['on', 'failed', 'removed'] as const)('a temporary fix is %s and has no open follow-up', (state) => {
    expect(refusedFor(ready().fix('x1', { state }))).toEqual([['handBack.fixWithoutFollowUp', 'x1']]);
    expect(refusedFor(ready().fix('x1', { state, followUpId: 'f1' }).followUp('f1'))).toEqual([]);
    const done = ready().fix('x1', { state, followUpId: 'f1' }).followUp('f1', { state: 'done' });
    expect(refusedFor(done)).toEqual([['handBack.fixWithoutFollowUp', 'x1']]);
  });
  it('but not for a fix that has ended', () => {
    expect(refusedFor(ready().fix('x1', { state: 'ended' }))).toEqual([]);
  });
  it('a fix of an earlier visit counts as well', () => {
    const earlier = ready().fix('x1', { jobId: 'j0', followUpId: null });
    expect(refusedFor(earlier)).toEqual([['handBack.fixWithoutFollowUp', 'x1']]);
  });
  it('a tier-2 fix that is on has no second check (rule 7), however the vehicle leaves', () => {
    const lamp = () => ready().followUp('f1').fix('x1', { system: 'lighting', followUpId: 'f1' });
    expect(refusedFor(lamp())).toEqual([['handBack.secondCheckMissing', 'x1']]);
    expect(refusedFor(lamp(), { leavesBy: 'transporter' })).toEqual([['handBack.secondCheckMissing', 'x1']]);
    expect(refusedFor(lamp().secondCheck('y1'))).toEqual([]);
    expect(refusedFor(lamp().secondCheck('y1', { temporaryFixId: 'x0' }))).toEqual([
      ['handBack.secondCheckMissing', 'x1'],
    ]);
    expect(refusedFor(lamp().but('temporaryFix', 'x1', { state: 'failed' }))).toEqual([]);
    expect(refusedFor(lamp().secondCheck('y1', { samePerson: true }))).toEqual([]);
  });
  it.each(['wanted', 'ordered', 'partArrived', 'arrived'] as const)('a part is %s and has no follow-up', (state) => {
    for (const needed of ['beforeStart', 'beforeRefit', 'mayFollow'] as const) {
      expect(refusedFor(ready().part('p1', { state, needed }))).toEqual([['handBack.partOpen', 'p1']]);
    }
    const ownFollowUp = ready().followUp('f1').part('p1', { state, followUpId: 'f1' });
    expect(refusedFor(ownFollowUp)).toEqual([]);
    expect(refusedFor(ownFollowUp.but('followUp', 'f1', { state: 'done' }))).toEqual([['handBack.partOpen', 'p1']]);
  });
  it.each(['fitted', 'cancelled'] as const)('but not for a part that is %s', (state) => {
    expect(refusedFor(ready().part('p1', { state }))).toEqual([]);
  });
  it('a part that is only wanted is not needed once its line is put off; one on order still is', () => {
    const later = () => ready().line('l2', { goAhead: 'deferred' });
    expect(refusedFor(later().part('p1'))).toEqual([]);
    expect(refusedFor(later().part('p1', { state: 'ordered' }))).toEqual([['handBack.partOpen', 'p1']]);
  });
  it('by road the vehicle may not be driven or does not roll; a transporter takes it', () => {
    const stuck = () => ready().but('vehicle', 'v1', { rolls: false, mayBeDriven: false });
    expect(refusedFor(stuck())).toEqual([
      ['handBack.doesNotRoll', 'v1'],
      ['handBack.mayNotBeDriven', 'v1'],
    ]);
    expect(refusedFor(stuck(), { leavesBy: 'transporter' })).toEqual([]);
  });
  it('all of it at once, each reason with its way; and then the job is not ready', () => {
    const story = ready().clock('k1').line('l2').caution('x').concern('s2').fix('x1').part('p1');
    const ways = refusedFor(story);
    expect(ways.map(([code]) => code)).toEqual([
      'handBack.clockRuns',
      'handBack.lineOpen',
      'handBack.cautionOpen',
      'handBack.concernOpen',
      'handBack.fixWithoutFollowUp',
      'handBack.partOpen',
    ]);
    expect(ways.every(([, id]) => id !== undefined)).toBe(true);
    expect(isReady(story.rows(), 'j1')).toBe(false);
    expect(isReady(ready().rows(), 'j1')).toBe(true);
    expect(isReady(ready().but('job', 'j1', { endedAt: tuesdayTen }).rows(), 'j1')).toBe(false);
  });
  it('another vehicle’s open things do not count', () => {
    const other = ready()
      .vehicle('v2')
      .job('j2')
      .concern('s2')
      .line('l2')
      .clock('k2')
      .caution('x')
      .fix('x1')
      .part('p1');
    expect(refusedFor(other)).toEqual([]);
  });
});

describe('parts of a line that goes on as a follow-up', () => {
  it('are for that follow-up when the vehicle has left', () => {
    const story = ready().line('l2').part('p1', { state: 'ordered' }).followUp('f1', { lineId: 'l2' });
    const { rows } = give(story);
    expect(rows.get('partLine', 'p1')).toMatchObject({ jobId: null, lineId: null, followUpId: 'f1' });
  });
});

describe('rule 7: a tier-1 fix', () => {
  const brakes = () => ready().followUp('f1').fix('x1', { system: 'brakes', followUpId: 'f1', byId: 'technician' });
  const checked = () => brakes().secondCheck('y1');
  const allowed = { temporaryFixId: 'x1', words: 'To the depot, 2 km', receiverSigned: true };

  it('leaves on a transporter', () => {
    expect(give(brakes(), { leavesBy: 'transporter' }).codes).toEqual([]);
  });
  it('leaves by road allowed by manager with words, checked by another, signed for there; all of it is kept', () => {
    const { rows, codes } = give(checked(), { byRoad: [allowed] }, 'manager');
    expect(codes).toEqual([]);
    expect(rows.get('temporaryFix', 'x1')).toMatchObject({
      roadAllowedById: 'manager',
      roadAllowedWords: 'To the depot, 2 km',
      receiverSigned: true,
      state: 'on',
    });
  });
  it('does not leave by road without any one of these', () => {
    const by = (input: Partial<HandBack>, story = checked(), who: 'desk' | 'manager' = 'manager') =>
      give(story, input, who).codes;
    expect(by({})).toEqual(['handBack.roadNotAllowed']);
    expect(by({ byRoad: [allowed] }, brakes())).toEqual(['handBack.secondCheckMissing']);
    expect(by({ byRoad: [allowed] }, checked(), 'desk')).toEqual(['handBack.roadByLeadOnly']);
    expect(by({ byRoad: [{ ...allowed, words: ' ' }] })).toEqual(['handBack.roadWordsMissing']);
    expect(by({ byRoad: [{ ...allowed, receiverSigned: false }] })).toEqual(['handBack.receiverNotSigned']);
    expect(by({ byRoad: [allowed], receivedHow: 'telephone' })).toEqual(['handBack.receivedByTelephone']);
  });
  it('is not checked by who recorded it, nor by the re-check of a shop with one technician', () => {
    const own = brakes().secondCheck('y1', { personId: 'technician' });
    const again = brakes().secondCheck('y1', { samePerson: true });
    expect(give(own, { byRoad: [allowed] }, 'manager').codes).toEqual(['handBack.secondCheckMissing']);
    expect(give(again, { byRoad: [allowed] }, 'manager').codes).toEqual(['handBack.secondCheckMissing']);
  });
  it.each(['failed', 'removed'] as const)('that %s needs the same by road', (state) => {
    const story = checked().but('temporaryFix', 'x1', { state });
    expect(give(story, {}, 'manager').codes).toEqual(['handBack.roadNotAllowed']);
    expect(give(story, { byRoad: [allowed] }, 'manager').codes).toEqual([]);
  });
  it('is allowed each for itself; an allowance for something else is none', () => {
    const two = checked().fix('x2', { system: 'steering', followUpId: 'f1' }).secondCheck('y2');
    expect(give(two, { byRoad: [allowed] }, 'manager').refusals).toMatchObject([
      { code: 'handBack.roadNotAllowed', way: { id: 'x2' } },
    ]);
    const forOther = { ...allowed, temporaryFixId: 'x9' };
    expect(give(checked(), { byRoad: [forOther] }, 'manager').codes).toEqual([
      'handBack.roadNotAllowed',
      'handBack.roadNotNeeded',
    ]);
  });
  it('on a transporter keeps no allowance, even where one is sent', () => {
    const { rows } = give(checked(), { byRoad: [allowed], leavesBy: 'transporter' }, 'manager');
    expect(rows.get('temporaryFix', 'x1')).toMatchObject({ roadAllowedById: null, receiverSigned: false });
  });
});
