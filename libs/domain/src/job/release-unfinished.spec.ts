import { describe, expect, it } from '@jest/globals';
import type { ReleaseUnfinished } from '../inputs.js';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { releaseUnfinished } from './release-unfinished.js';
import type { SheetContent } from './sheet-content.js';

const here = () => given().shop().bay('b1').vehicle('v1').job('j1').inBay('b1');
const release = (story: Given, input: Partial<ReleaseUnfinished> = {}) =>
  carryOut(
    releaseUnfinished,
    story.rows(),
    {
      jobId: 'j1',
      leavesBy: 'transporter',
      receivedBy: 'A Driver',
      receivedHow: 'there',
      words: 'Owner takes it home apart',
      ...input,
    },
    { by: 'manager' },
  );
const started = { progress: 'stopped', startedAt: tuesdayTen - hour } as const;

describe('releaseUnfinished', () => {
  it('ends the visit on a sheet of its own kind, with the words of who let it go', () => {
    const { rows, outcome } = release(here().hold('h1'), { odometer: 52_000 });
    expect(rows.get('job', 'j1')).toMatchObject({
      endedAt: tuesdayTen,
      endedHow: 'released',
      endWords: 'Owner takes it home apart',
      leftBy: 'transporter',
      odometerOut: 52_000,
    });
    expect(rows.list('sheet')).toMatchObject([{ kind: 'release', words: 'Owner takes it home apart' }]);
    const content = rows.list('sheet')[0]?.content as SheetContent;
    expect(content.release).toEqual({ words: 'Owner takes it home apart', by: 'The manager' });
    expect(rows.list('spotUse')[0]?.toAt).toBe(tuesdayTen);
    expect(rows.get('hold', 'h1')).toMatchObject({ toAt: tuesdayTen, endedHow: 'handedBack' });
    expect(outcome?.facts).toMatchObject({ leavesBy: 'transporter', followUps: 0 });
  });
  it('carries over what was begun with the minutes that are left and its parts', () => {
    const story = here()
      .line('l1', { ...started, bookMinutes: 120, title: 'Rear step', handover: 'Left bolts out' })
      .part('p1', { state: 'ordered' })
      .clock('k1', { fromAt: tuesdayTen - hour, toAt: tuesdayTen - 15 * minute })
      .line('l2', { ...started, bookMinutes: 30 })
      .clock('k2', { fromAt: tuesdayTen - hour, toAt: tuesdayTen })
      .line('l3', started);
    const { rows } = release(story);
    const of = (lineId: string) => rows.list('followUp', (one) => one.lineId === lineId)[0];
    expect(of('l1')).toMatchObject({
      kind: 'carriedOver',
      title: 'Rear step',
      words: 'Left bolts out',
      remainingMinutes: 75,
      needsGoAhead: false,
      fromJobId: 'j1',
      state: 'open',
    });
    expect([of('l2')?.remainingMinutes, of('l3')?.remainingMinutes]).toEqual([0, null]);
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'carriedOver', toFollowUpId: of('l1')?.id });
    expect(rows.get('partLine', 'p1')).toMatchObject({ jobId: null, lineId: null, followUpId: of('l1')?.id });
  });
  it.each(['given', 'withCustomer'] as const)('puts off a line that is %s and not begun', (goAhead) => {
    const { rows } = release(here().line('l1', { goAhead, bookMinutes: 60 }).part('p1'));
    const [followUp] = rows.list('followUp');
    expect(followUp).toMatchObject({ kind: 'deferred', remainingMinutes: 60, needsGoAhead: goAhead !== 'given' });
    expect(rows.get('workLine', 'l1')).toMatchObject({ progress: 'planned', toFollowUpId: followUp?.id });
    expect(rows.get('partLine', 'p1').followUpId).toBe(followUp?.id);
  });
  it('makes no second follow-up, and none for what was turned down, done, or another way of a choice', () => {
    const story = here()
      .line('l1', { goAhead: 'declined' })
      .line('l2', { goAhead: 'deferred' })
      .line('l3', { progress: 'done', choiceId: 'c1' })
      .line('l4', { choiceId: 'c1', goAhead: 'withCustomer' })
      .line('l5')
      .followUp('f1', { lineId: 'l5' });
    const { rows } = release(story);
    expect(rows.list('followUp').map((one) => one.id)).toEqual(['f1']);
    expect(rows.get('workLine', 'l5').toFollowUpId).toBe('f1');
  });
  it('carries over a begun line even where the customer put it off since', () => {
    const { rows } = release(here().line('l1', { ...started, goAhead: 'declined' }));
    expect(rows.list('followUp')).toMatchObject([{ kind: 'carriedOver', needsGoAhead: true }]);
  });
  it('gives each fix that is not ended its permanent repair, within the limits of the fix', () => {
    const story = here()
      .fix('x1', { system: 'brakes', endedByWhat: 'New hose' })
      .fix('x2', { system: 'body', beforeDay: '2026-04-01', endedByWhat: 'New step' })
      .fix('x3', { system: 'body', state: 'ended' });
    const { rows } = release(story);
    expect(rows.list('followUp')).toMatchObject([
      { kind: 'permanentRepair', title: 'New hose', urgency: 'urgent' },
      { kind: 'permanentRepair', title: 'New step', urgency: 'soon', beforeDay: '2026-04-01' },
    ]);
    expect(rows.get('temporaryFix', 'x2').followUpId).toBe(rows.list('followUp')[1]?.id);
    expect(rows.get('temporaryFix', 'x3').followUpId).toBeNull();
  });
  it('loses no part: of a line that is over they go together, one for nothing for itself', () => {
    const story = here()
      .line('l1', { progress: 'done', title: 'Lamps' })
      .part('p1', { state: 'arrived' })
      .part('p2', { state: 'ordered' })
      .part('p3', { state: 'ordered', lineId: null, description: 'Clips' })
      .part('p4', { state: 'fitted' });
    const { rows } = release(story);
    expect(rows.list('followUp').map((one) => [one.kind, one.title])).toEqual([
      ['deferred', 'Lamps'],
      ['deferred', 'Clips'],
    ]);
    const purposes = ['p1', 'p2', 'p3'].map((id) => rows.get('partLine', id));
    expect(purposes.every((part) => part.followUpId !== null && part.lineId === null && part.jobId === null)).toBe(
      true,
    );
    expect(rows.get('partLine', 'p4').followUpId).toBeNull();
  });
  it('says of a concern without outcome that it was not tried, and why', () => {
    const { rows } = release(here().concern('s1').concern('s2', { outcome: 'gone' }));
    expect(rows.get('concern', 's1')).toMatchObject({ outcome: 'notTried', outcomeWords: 'Owner takes it home apart' });
    expect(rows.get('concern', 's2').outcome).toBe('gone');
  });
  it('leaves a component with the other firm and keeps it in sight; a vehicle there, or somebody here, comes first', () => {
    const under = { state: 'underWay', fromAt: tuesdayTen - hour } as const;
    const { rows } = release(here().sublet('u1', { ...under, form: 'componentOut', component: 'Bumper' }));
    expect(rows.list('followUp')).toMatchObject([{ kind: 'deferred', title: 'Bumper' }]);
    expect(rows.get('sublet', 'u1').state).toBe('underWay');
    for (const form of ['vehicleOut', 'outsiderIn'] as const) {
      expect(release(here().sublet('u1', { ...under, form })).codes).toEqual(['handBack.subletUnderWay']);
    }
  });

  it('stops no clock, and needs words', () => {
    const { codes, refusals } = release(here().line('l1', { progress: 'started', startedAt: tuesdayTen }).clock('k1'));
    expect([codes, refusals[0]?.way]).toEqual([['handBack.clockRuns'], { table: 'clock', id: 'k1' }]);
    expect(release(here(), { words: ' ' }).codes).toEqual(['release.wordsMissing']);
  });
  it('goes by road only as a hand-back would: rule 3, cautions, wheels and rule 7', () => {
    const apart = () =>
      here()
        .but('vehicle', 'v1', { mayBeDriven: false })
        .caution('c1')
        .wheel('w1', '1L')
        .fix('x1', { system: 'lighting' })
        .fix('x2', { system: 'brakes' });
    expect(release(apart(), { leavesBy: 'road' }).codes).toEqual([
      'handBack.cautionOpen',
      'wheel.stillOff',
      'handBack.retorqueUntold',
      'handBack.mayNotBeDriven',
      'handBack.secondCheckMissing',
      'handBack.secondCheckMissing',
      'handBack.roadNotAllowed',
    ]);
    expect(release(apart()).codes).toEqual([]);
  });
  it('is for a visit that is here', () => {
    expect(release(here(), { jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(release(here().but('job', 'j1', { endedAt: tuesdayTen })).codes).toEqual(['job.ended']);
    expect(release(here().but('job', 'j1', { arrivedAt: null })).codes).toEqual(['handBack.notArrived']);
  });
});
