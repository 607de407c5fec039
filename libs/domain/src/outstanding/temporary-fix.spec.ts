import { describe, expect, it } from '@jest/globals';
import type { AddTemporaryFix, EndTemporaryFix } from '../inputs.js';
import { type Given, given, type GivenCircumstances, hour, minute, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { addTemporaryFix } from './add-temporary-fix.js';
import { endTemporaryFix } from './end-temporary-fix.js';
import { recordSecondCheck } from './record-second-check.js';

const van = (shop = given().shop()) => shop.vehicle('v1').job('j1').line('l1');

describe('addTemporaryFix', () => {
  const step: AddTemporaryFix = {
    ...{ temporaryFixId: 'x1', jobId: 'j1', kind: 'heldBy', standsInFor: 'Bracket bolt', place: 'Rear left' },
    ...{ system: 'mayDrop', endedByWhat: 'New bracket' },
  };
  const adding = (input: Partial<AddTemporaryFix>, story = van(), said: GivenCircumstances = {}) =>
    carryOut(addTemporaryFix, story.rows(), { ...step, ...input }, { by: 'technician', ...said });

  it('records kind, what it stands in for, system, limits, what ends it, since when and by whom', () => {
    const { rows, outcome } = adding({ beforeOdometer: 90_000, lineId: 'l1' }, van(), {
      effectiveAt: tuesdayTen - hour,
    });
    expect(rows.get('temporaryFix', 'x1')).toMatchObject({
      ...{ vehicleId: 'v1', jobId: 'j1', lineId: 'l1', kind: 'heldBy', standsInFor: 'Bracket bolt', system: 'mayDrop' },
      ...{ since: tuesdayTen - hour, byId: 'technician', beforeOdometer: 90_000, distanceUnit: 'km', state: 'on' },
      ...{ endedByWhat: 'New bracket', followUpId: null, receiverSigned: false },
    });
    expect(rows.list('followUp')).toEqual([]);
    expect(outcome?.facts).toMatchObject({ tier: 2 });
  });

  it('measures in the units of the shop where none are said', () => {
    const us = van(given().shop({ units: 'us' }));
    expect(adding({ withinDistance: 500 }, us).rows.get('temporaryFix', 'x1').distanceUnit).toBe('mi');
    const km = { withinDistance: 500, distanceUnit: 'km' } as const;
    expect(adding(km, us).rows.get('temporaryFix', 'x1').distanceUnit).toBe('km');
  });

  it('needs at least one limit, of whatever kind', () => {
    expect(adding({}).codes).toEqual(['fix.limitMissing']);
    const season = van().season('salt');
    const limits = [
      { beforeDay: '2026-04-01' },
      { beforeOdometer: 0 },
      { withinDistance: 0 },
      { withinDays: 7 },
      { seasonId: 'salt' },
    ];
    for (const limit of limits) expect(adding(limit, season).codes).toEqual([]);
  });

  it('is refused for what is not there, elsewhere, over, or there already', () => {
    const day = { beforeDay: '2026-04-01' };
    expect(adding({ ...day, jobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(adding({ ...day, lineId: 'l9' }).codes).toEqual(['row.notFound']);
    expect(adding({ ...day, followUpId: 'f9' }).codes).toEqual(['row.notFound']);
    expect(adding({ seasonId: 'none' }).codes).toEqual(['row.notFound']);
    const other = van().vehicle('v2').job('j2').line('l2').followUp('f2');
    expect(adding({ ...day, lineId: 'l2' }, other).codes).toEqual(['fix.lineElsewhere']);
    expect(adding({ ...day, followUpId: 'f2' }, other).codes).toEqual(['fix.followUpElsewhere']);
    const over = van().season('salt', { endedOn: '2026-03-10' });
    expect(adding({ seasonId: 'salt' }, over).codes).toEqual(['fix.seasonEnded']);
    expect(adding({ seasonId: 'salt' }, van().season('salt', { endedOn: '2026-03-11' })).codes).toEqual([]);
    expect(adding(day, van().fix('x1')).codes).toEqual(['fix.alreadyThere']);
  });
});

describe('recordSecondCheck', () => {
  const checking = (story: Given, personId: string, said: GivenCircumstances = {}) =>
    carryOut(
      recordSecondCheck,
      story.rows(),
      { secondCheckId: 'c1', temporaryFixId: 'x1' },
      { by: { personId, name: personId, roles: ['technician'] }, ...said },
    );
  const fixed = (over: Parameters<Given['fix']>[1] = {}, shop = given().shop()) =>
    van(shop).fix('x1', { byId: 'technician', system: 'brakes', ...over });

  it('is made by another person with the skill', () => {
    expect(checking(fixed(), 'second').rows.get('secondCheck', 'c1')).toMatchObject({
      ...{ temporaryFixId: 'x1', vehicleId: 'v1', personId: 'second', samePerson: false },
    });
  });

  it('is refused without the skill, or with one whose certificate has ended', () => {
    expect(checking(fixed({ byId: 'second' }), 'technician').codes).toEqual(['fix.checkSkillMissing']);
    const until = (day: string) => fixed().but('personSkill', 'second-secondCheck', { until: day });
    expect(checking(until('2026-03-09'), 'second').codes).toEqual(['fix.checkSkillMissing']);
    expect(checking(until('2026-03-10'), 'second').codes).toEqual([]);
  });

  it('is refused to whoever made the fix', () => {
    const { codes, refusedFor } = checking(fixed({ byId: 'second' }), 'second');
    expect(codes).toEqual(['fix.checkBySamePerson']);
    expect(refusedFor).toEqual({ temporaryFixId: 'x1', tier: 1 });
  });

  const alone = (recheckMinutes: number | null) =>
    given().shop({}, { recheckMinutes }).but('person', 'technician', { active: false });
  const own = { byId: 'second', system: 'lighting', since: tuesdayTen - 30 * minute } as const;

  it('may be made by the only technician of a shop that allows it, on tier 2, after the interval', () => {
    expect(checking(fixed(own, alone(30)), 'second').rows.get('secondCheck', 'c1').samePerson).toBe(true);
    expect(checking(fixed(own, alone(45)), 'second')).toMatchObject({
      ...{ codes: ['fix.recheckTooEarly'], refusedFor: { temporaryFixId: 'x1', minutes: 15 } },
    });
  });

  it('is never made by the same person on tier 1 or 3, with two technicians, or where the shop did not allow it', () => {
    const refused = ['fix.checkBySamePerson'];
    expect(checking(fixed({ ...own, system: 'brakes' }, alone(30)), 'second').codes).toEqual(refused);
    expect(checking(fixed({ ...own, system: 'trim' }, alone(30)), 'second').codes).toEqual(refused);
    expect(checking(fixed(own, alone(null)), 'second').codes).toEqual(refused);
    expect(checking(fixed(own, given().shop({}, { recheckMinutes: 30 })), 'second').codes).toEqual(refused);
    const notTechnician = alone(30)
      .but('person', 'second', { roles: ['manager'] })
      .but('person', 'technician', { active: true });
    expect(checking(fixed(own, notTechnician), 'second').codes).toEqual(refused);
  });

  it('is refused for a fix that is no longer on, not there, or a check that is', () => {
    for (const state of ['failed', 'removed', 'ended'] as const) {
      expect(checking(fixed({ state }), 'second').codes).toEqual(['fix.notOn']);
    }
    expect(checking(van(), 'second').codes).toEqual(['row.notFound']);
    expect(checking(fixed().secondCheck('c1'), 'second').codes).toEqual(['fix.checkAlreadyThere']);
  });
});

describe('endTemporaryFix', () => {
  const fixed = () =>
    van().line('l2', { progress: 'done' }).followUp('f1').fix('x1', { followUpId: 'f1', standsInFor: 'Step' });
  const ending = (input: Omit<EndTemporaryFix, 'temporaryFixId'>, story = fixed()) =>
    carryOut(endTemporaryFix, story.rows(), { temporaryFixId: 'x1', ...input }, { by: 'technician' });

  it.each([
    [{ how: 'repaired', lineId: 'l2' }, 'done'],
    [{ how: 'mendedElsewhere', toldHow: 'seen', words: 'By the dealer' }, 'done'],
    [{ how: 'vehicleGone', words: 'Sold abroad' }, 'dropped'],
    [{ how: 'ownerRefuses', toldHow: 'signed', words: 'Does not want it' }, 'dropped'],
  ] as const)('ends it as %j, and its follow-up with it as %s', (input, state) => {
    const { rows } = ending(input);
    expect(rows.get('temporaryFix', 'x1')).toMatchObject({
      ...{ state: 'ended', endedHow: input.how, endedAt: tuesdayTen, endedById: 'technician' },
      endLineId: input.how === 'repaired' ? 'l2' : null,
    });
    expect(rows.get('followUp', 'f1')).toMatchObject({
      ...{ state, closedAt: tuesdayTen, closeWords: 'words' in input ? input.words : null },
    });
  });

  it('leaves a follow-up open that stands for another fix as well, until that one has ended too', () => {
    const both = fixed().fix('x2', { followUpId: 'f1', state: 'failed' });
    const first = ending({ how: 'repaired', lineId: 'l2' }, both).rows;
    expect(first.get('followUp', 'f1').state).toBe('open');
    const last = carryOut(endTemporaryFix, first, { temporaryFixId: 'x2', how: 'repaired', lineId: 'l2' }).rows;
    expect(last.get('followUp', 'f1').state).toBe('done');
  });

  it.each(['failed', 'removed'] as const)(
    'as %s makes its follow-up urgent, which stays open until a real end',
    (how) => {
      const { rows } = ending({ how, words: 'Tie broken' });
      expect(rows.get('temporaryFix', 'x1')).toMatchObject({ state: how, endedHow: null, endedAt: null });
      expect(rows.get('followUp', 'f1')).toMatchObject({ state: 'open', urgency: 'urgent', words: 'Tie broken' });
      const end = { temporaryFixId: 'x1', how: 'repaired', lineId: 'l2' } as const;
      expect(carryOut(endTemporaryFix, rows, end).rows.get('followUp', 'f1').state).toBe('done');
    },
  );

  it('as failed makes the follow-up where there is none open', () => {
    for (const story of [
      fixed().but('temporaryFix', 'x1', { followUpId: null }),
      fixed().but('followUp', 'f1', { state: 'done' }),
    ]) {
      const { rows, outcome } = ending({ how: 'failed' }, story);
      const id = outcome?.created?.['followUp'] ?? '';
      expect(rows.get('followUp', id)).toMatchObject({
        ...{
          kind: 'permanentRepair',
          title: 'New rear step',
          urgency: 'urgent',
          state: 'open',
          vehicleId: 'v1',
          fromJobId: 'j1',
        },
      });
      expect(rows.get('temporaryFix', 'x1').followUpId).toBe(id);
    }
  });

  it('may be removed after it failed, but is not failed twice', () => {
    const failed = () => fixed().but('temporaryFix', 'x1', { state: 'failed' });
    expect(ending({ how: 'failed' }, failed()).codes).toEqual(['fix.stateAlready']);
    expect(ending({ how: 'removed' }, failed()).codes).toEqual([]);
  });

  it.each<[string, Omit<EndTemporaryFix, 'temporaryFixId'>]>([
    ['fix.lineMissing', { how: 'repaired' }],
    ['row.notFound', { how: 'repaired', lineId: 'l9' }],
    ['fix.lineNotDone', { how: 'repaired', lineId: 'l1' }],
    ['fix.toldHowMissing', { how: 'mendedElsewhere', words: 'Dealer' }],
    ['fix.toldHowMissing', { how: 'mendedElsewhere', words: 'Dealer', toldHow: 'signed' }],
    ['fix.wordsMissing', { how: 'mendedElsewhere', toldHow: 'told' }],
    ['fix.toldHowMissing', { how: 'ownerRefuses', words: 'No', toldHow: 'seen' }],
    ['fix.wordsMissing', { how: 'ownerRefuses', toldHow: 'told' }],
    ['fix.wordsMissing', { how: 'vehicleGone' }],
  ])('is refused with %s for %j', (code, input) => {
    expect(ending(input).codes).toEqual([code]);
  });

  it('is refused for a line of another vehicle, a fix that has ended, and one that is not there', () => {
    const other = fixed().vehicle('v2').job('j2').line('l3', { progress: 'done' });
    expect(ending({ how: 'repaired', lineId: 'l3' }, other).codes).toEqual(['fix.lineElsewhere']);
    const over = fixed().but('temporaryFix', 'x1', { state: 'ended', endedHow: 'repaired' });
    for (const how of ['failed', 'vehicleGone'] as const) {
      expect(ending({ how, words: 'x' }, over)).toMatchObject({
        codes: ['fix.endedAlready'],
        refusedFor: { endedHow: 'repaired' },
      });
    }
    expect(ending({ how: 'failed' }, van()).codes).toEqual(['row.notFound']);
  });
});
