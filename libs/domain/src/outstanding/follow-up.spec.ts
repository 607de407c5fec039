import { describe, expect, it } from '@jest/globals';
import type { AddFollowUp, CloseFollowUp } from '../inputs.js';
import { given, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { addFollowUp } from './add-follow-up.js';
import { closeFollowUp } from './close-follow-up.js';

const van = () => given().shop().supplier('s1').vehicle('v1').job('j1').line('l1');

describe('addFollowUp', () => {
  const adding = (input: Partial<AddFollowUp>, story = van()) =>
    carryOut(
      addFollowUp,
      story.rows(),
      { followUpId: 'f1', vehicleId: 'v1', kind: 'deferred', title: 'Renew step', ...input },
      { by: 'desk' },
    );

  it('records what, its limits and needs; soon where nothing else is said', () => {
    const needs = { needsGoAhead: true, needsFollowUpId: 'f0', remainingMinutes: 90, withinDays: 30 };
    const { rows, outcome } = adding({ jobId: 'j1', lineId: 'l1', ...needs }, van().followUp('f0'));
    expect(rows.get('followUp', 'f1')).toMatchObject({
      ...{
        vehicleId: 'v1',
        fromJobId: 'j1',
        lineId: 'l1',
        kind: 'deferred',
        urgency: 'soon',
        state: 'open',
        distanceUnit: 'km',
      },
      ...needs,
    });
    expect(outcome?.created).toEqual({ followUp: 'f1' });
  });

  it('is linked to its fix, and urgent for one on a system of tier 1', () => {
    const { rows } = adding({ temporaryFixId: 'x1' }, van().fix('x1', { system: 'steering' }));
    expect(rows.get('temporaryFix', 'x1').followUpId).toBe('f1');
    expect(rows.get('followUp', 'f1').urgency).toBe('urgent');
    expect(adding({ temporaryFixId: 'x1' }, van().fix('x1')).rows.get('followUp', 'f1').urgency).toBe('soon');
    const later = adding({ urgency: 'whenItSuits' }, van()).rows;
    expect(later.get('followUp', 'f1').urgency).toBe('whenItSuits');
  });

  it('leaves a fix with the open follow-up that it has, but takes the place of a closed one', () => {
    const linked = (state: 'open' | 'dropped') => van().followUp('f0', { state }).fix('x1', { followUpId: 'f0' });
    expect(adding({ temporaryFixId: 'x1' }, linked('open')).rows.get('temporaryFix', 'x1').followUpId).toBe('f0');
    expect(adding({ temporaryFixId: 'x1' }, linked('dropped')).rows.get('temporaryFix', 'x1').followUpId).toBe('f1');
    const over = adding({ temporaryFixId: 'x1' }, linked('dropped').but('temporaryFix', 'x1', { state: 'ended' }));
    expect(over.rows.get('temporaryFix', 'x1').followUpId).toBe('f0');
  });

  const parts = { partLineIds: ['p1'] };
  it.each([
    ['of a done line', van().but('workLine', 'l1', { progress: 'done' })],
    ['of a line put off', van().but('workLine', 'l1', { goAhead: 'deferred' })],
    ['of a visit that is over', van().but('job', 'j1', { endedAt: tuesdayTen - hour })],
  ] as const)('takes along the part lines %s', (_of, story) => {
    const moved = adding(parts, story.part('p1', { state: 'ordered' })).rows.get('partLine', 'p1');
    expect(moved).toMatchObject({ jobId: null, lineId: null, followUpId: 'f1', state: 'ordered', vehicleId: 'v1' });
  });

  it('takes over a line that nobody has started with its parts', () => {
    const story = van().part('p1');
    expect(adding({ ...parts, lineId: 'l1' }, story).rows.get('partLine', 'p1').followUpId).toBe('f1');
  });

  it('is refused for parts of a line that goes on', () => {
    const { codes, refusedFor } = adding(parts, van().part('p1'));
    expect(codes).toEqual(['followUp.partStillWanted']);
    expect(refusedFor).toEqual({ partLineId: 'p1', lineId: 'l1' });
    const started = van()
      .but('workLine', 'l1', { progress: 'started', startedAt: tuesdayTen - hour })
      .part('p1');
    expect(adding({ ...parts, lineId: 'l1' }, started).codes).toEqual(['followUp.partStillWanted']);
  });

  it('leaves fitted and cancelled parts where they are', () => {
    for (const state of ['fitted', 'cancelled'] as const) {
      expect(adding(parts, van().part('p1', { state })).rows.get('partLine', 'p1')).toMatchObject({
        lineId: 'l1',
        followUpId: null,
      });
    }
  });

  it.each<[Partial<AddFollowUp>]>([
    [{ vehicleId: 'v9' }],
    [{ jobId: 'j9' }],
    [{ lineId: 'l9' }],
    [{ temporaryFixId: 'x9' }],
    [{ needsFollowUpId: 'f9' }],
    [{ seasonId: 'none' }],
    [{ partLineIds: ['p9'] }],
  ])('is refused for what is not there: %j', (input) => {
    expect(adding(input).codes).toEqual(['row.notFound']);
  });

  it.each<[Partial<AddFollowUp>]>([
    [{ jobId: 'j2' }],
    [{ lineId: 'l2' }],
    [{ temporaryFixId: 'x2' }],
    [{ needsFollowUpId: 'f2' }],
    [{ partLineIds: ['p2'] }],
  ])('is refused for what is on another vehicle: %j', (input) => {
    const two = van().vehicle('v2').job('j2').line('l2').part('p2').fix('x2').followUp('f2');
    expect(adding(input, two).codes).toEqual(['followUp.ofOtherVehicle']);
  });

  it('for tightening wheels again says within what distance, and where that comes from', () => {
    const told = { kind: 'retorque', withinDistance: 50, words: 'Wheel maker: 50 km' } as const;
    expect(adding(told).rows.get('followUp', 'f1')).toMatchObject({ kind: 'retorque', withinDistance: 50 });
    for (const lacking of [{ withinDistance: undefined }, { words: undefined }]) {
      expect(adding({ ...told, ...lacking }).codes).toEqual(['outstanding.retorqueNeedsDistance']);
    }
    expect(adding({ kind: 'deferred' }).codes).toEqual([]);
  });

  it('is refused for a season that the shop ended and for an id that is there', () => {
    const over = van().season('salt', { endedOn: '2026-03-01' });
    expect(adding({ seasonId: 'salt' }, over).codes).toEqual(['followUp.seasonEnded']);
    expect(adding({}, van().followUp('f1')).codes).toEqual(['followUp.alreadyThere']);
  });
});

describe('closeFollowUp', () => {
  const owed = () => van().line('l2', { progress: 'done' }).followUp('f1');
  const closing = (input: Omit<CloseFollowUp, 'followUpId'>, story = owed()) =>
    carryOut(closeFollowUp, story.rows(), { followUpId: 'f1', ...input }, { by: 'desk' });

  it('is done, by a done line where one is named, or dropped with words', () => {
    expect(closing({ how: 'done', lineId: 'l2' }).rows.get('followUp', 'f1')).toMatchObject({
      ...{ state: 'done', closeLineId: 'l2', closedAt: tuesdayTen, closedById: 'desk' },
    });
    expect(closing({ how: 'done' }).codes).toEqual([]);
    expect(closing({ how: 'dropped', words: 'Sold' }).rows.get('followUp', 'f1')).toMatchObject({
      ...{ state: 'dropped', closeWords: 'Sold', closeLineId: null },
    });
    expect(closing({ how: 'dropped' }).codes).toEqual(['followUp.wordsMissing']);
  });

  it.each(['on', 'failed', 'removed'] as const)('is refused while its temporary fix is %s', (state) => {
    const { codes, refusedFor } = closing({ how: 'done' }, owed().fix('x1', { followUpId: 'f1', state }));
    expect(codes).toEqual(['followUp.fixStillOn']);
    expect(refusedFor).toEqual({ followUpId: 'f1', temporaryFixId: 'x1', state });
    expect(closing({ how: 'done' }, owed().fix('x1', { followUpId: 'f1', state: 'ended' })).codes).toEqual([]);
    expect(closing({ how: 'done' }, owed().fix('x1', { state })).codes).toEqual([]);
  });

  it('cancels what was only wanted for it; what is ordered or here stays', () => {
    const of = { jobId: null, lineId: null, followUpId: 'f1' } as const;
    const story = owed()
      .part('p1', of)
      .part('p2', { ...of, state: 'ordered' })
      .part('p3', { ...of, here: '1' })
      .part('p4');
    const { rows } = closing({ how: 'dropped', words: 'Sold' }, story);
    const states = ['p1', 'p2', 'p3', 'p4'].map((id) => rows.get('partLine', id).state);
    expect(states).toEqual(['cancelled', 'ordered', 'wanted', 'wanted']);
    expect(rows.get('partLine', 'p1').endWords).toBe('Sold');
  });

  it('is refused for a line that is not done, not there or elsewhere', () => {
    expect(closing({ how: 'done', lineId: 'l1' }).codes).toEqual(['followUp.lineNotDone']);
    expect(closing({ how: 'done', lineId: 'l9' }).codes).toEqual(['row.notFound']);
    const other = owed().vehicle('v2').job('j2').line('l3', { progress: 'done' });
    expect(closing({ how: 'done', lineId: 'l3' }, other).codes).toEqual(['followUp.ofOtherVehicle']);
  });

  it('is refused for one that is closed or not there', () => {
    expect(closing({ how: 'done' }, van().followUp('f1', { state: 'dropped' })).codes).toEqual([
      'followUp.closedAlready',
    ]);
    expect(closing({ how: 'done' }, van()).codes).toEqual(['row.notFound']);
  });
});
