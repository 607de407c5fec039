import { describe, expect, it } from '@jest/globals';
import type { OpenHold } from '../inputs.js';
import { given, type GivenCircumstances, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { type HoldReason, holdReasons, type Role } from '../tables/words.js';
import { endHold } from './end-hold.js';
import { openHold } from './open-hold.js';

const van = () =>
  given()
    .shop()
    .vehicle('v1')
    .job('j1')
    .line('l1', { startedAt: tuesdayTen - hour, progress: 'started' })
    .part('p1');
const opening = (
  input: Partial<OpenHold> & { reason: HoldReason },
  said: GivenCircumstances = {},
  rows = van().rows(),
) => carryOut(openHold, rows, { jobId: 'j1', ...input }, { by: 'technician', ...said });

describe('openHold', () => {
  it('records why, since when, for which lines and parts, and whose move it is', () => {
    const { rows, outcome } = opening(
      {
        holdId: 'h1',
        reason: 'parts',
        lineIds: ['l1', 'l1'],
        partLineIds: ['p1'],
        moveOfId: 'partsClerk',
        words: 'Clip',
      },
      { effectiveAt: tuesdayTen - 60_000 },
    );
    expect(rows.get('hold', 'h1')).toMatchObject({
      jobId: 'j1',
      vehicleId: 'v1',
      fromAt: tuesdayTen - 60_000,
      toAt: null,
      openedById: 'technician',
      moveOfId: 'partsClerk',
      moveOf: null,
      words: 'Clip',
      againOfId: null,
    });
    expect(rows.list('holdLine').map((one) => [one.holdId, one.lineId])).toEqual([['h1', 'l1']]);
    expect(rows.list('holdPart').map((one) => [one.holdId, one.partLineId])).toEqual([['h1', 'p1']]);
    expect(outcome).toEqual({
      facts: { jobId: 'j1', holdId: 'h1', reason: 'parts', lines: 1, parts: 1 },
      created: { hold: 'h1' },
    });
  });

  it('leaves the reason to say whose move it is when nobody is named', () => {
    const { rows, outcome } = opening({ reason: 'tool' });
    expect(rows.get('hold', outcome?.created?.['hold'] ?? '')).toMatchObject({ moveOfId: null, moveOf: null });
  });

  it.each<[string, Partial<OpenHold> & { reason: HoldReason }]>([
    ['hold.partsNeeded', { reason: 'parts' }],
    ['hold.partsNeeded', { reason: 'parts', partLineIds: [] }],
    ['hold.partsElsewhere', { reason: 'tool', partLineIds: ['p1'] }],
    ['hold.endMissing', { reason: 'setting' }],
    ['hold.endBeforeStart', { reason: 'setting', endsAt: tuesdayTen }],
    ['hold.wordsMissing', { reason: 'other' }],
    ['row.notFound', { reason: 'tool', jobId: 'j9' }],
    ['row.notFound', { reason: 'tool', lineIds: ['l9'] }],
    ['row.notFound', { reason: 'parts', partLineIds: ['p9'] }],
    ['row.notFound', { reason: 'tool', moveOfId: 'nobody' }],
  ])('is refused with %s for what says nothing that could be kept: %j', (code, input) => {
    expect(opening(input).codes).toEqual([code]);
  });

  it('takes a setting hold with its end and an "other" with words', () => {
    expect(opening({ reason: 'setting', endsAt: tuesdayTen + hour }).codes).toEqual([]);
    expect(opening({ reason: 'other', words: 'Waits for the tide' }).codes).toEqual([]);
  });

  it('is refused for lines of another job and parts of another vehicle', () => {
    const rows = van()
      .job('j2', { endedAt: tuesdayTen })
      .line('l2')
      .vehicle('v2')
      .job('j3')
      .line('l3')
      .part('p3')
      .rows();
    expect(opening({ reason: 'tool', lineIds: ['l2'] }, {}, rows).codes).toEqual(['hold.lineOfOtherJob']);
    expect(opening({ reason: 'parts', partLineIds: ['p3'] }, {}, rows).codes).toEqual(['hold.partOfOtherVehicle']);
  });

  it('is refused for an id that is there already', () => {
    expect(opening({ holdId: 'h1', reason: 'tool' }, {}, van().hold('h1').rows()).codes).toEqual(['hold.alreadyThere']);
  });

  it('is kept for a job that has ended meanwhile, and ends with it', () => {
    const rows = van()
      .but('job', 'j1', { endedAt: tuesdayTen - hour })
      .rows();
    const after = opening({ holdId: 'h1', reason: 'tool' }, { effectiveAt: tuesdayTen - 2 * hour }, rows).rows;
    expect(after.get('hold', 'h1')).toMatchObject({ toAt: tuesdayTen - hour, endedHow: 'handedBack' });
  });

  it('by a parts clerk alone is for parts and information only', () => {
    const by = { by: 'partsClerk' } as const;
    expect(opening({ reason: 'information' }, by).codes).toEqual([]);
    expect(opening({ reason: 'parts', partLineIds: ['p1'] }, by).codes).toEqual([]);
    expect(opening({ reason: 'tool' }, by).codes).toEqual(['hold.mayNotOpen']);
    const both = { personId: 'partsClerk', name: 'Clerk', roles: ['partsClerk', 'desk'] as const };
    expect(opening({ reason: 'tool' }, { by: both }).codes).toEqual([]);
  });
});

describe('endHold', () => {
  const held = (reason: HoldReason) =>
    van()
      .hold('h1', { reason }, [], reason === 'parts' ? ['p1'] : [])
      .rows();
  const ending = (reason: HoldReason, by: Role) =>
    carryOut(endHold, held(reason), { holdId: 'h1', words: 'Goes on without' }, { by });

  it('ends it by hand, with who, when and why', () => {
    expect(ending('parts', 'manager').rows.get('hold', 'h1')).toMatchObject({
      toAt: tuesdayTen,
      endedHow: 'byHand',
      endWords: 'Goes on without',
      endedById: 'manager',
    });
  });

  it('never ends it before it began', () => {
    const rows = van().hold('h1', { fromAt: tuesdayTen }).rows();
    const said = { by: 'technician', effectiveAt: tuesdayTen - hour } as const;
    expect(carryOut(endHold, rows, { holdId: 'h1' }, said).rows.get('hold', 'h1').toAt).toBe(tuesdayTen);
  });

  it('is for each role what the table of roles says', () => {
    const may = (role: Role) => holdReasons.filter((reason) => ending(reason, role).codes.length === 0);
    expect(may('owner')).toEqual(holdReasons);
    expect(may('manager')).toEqual(holdReasons);
    expect(may('desk')).toEqual(['goAhead']);
    expect(may('technician')).toEqual(holdReasons.filter((reason) => reason !== 'parts'));
    expect(may('partsClerk')).toEqual(['parts', 'information']);
    expect(may('wallScreen')).toEqual([]);
    expect(ending('tool', 'desk').codes).toEqual(['hold.mayNotEnd']);
  });

  it("is not for a technician where somebody else's hold is concerned", () => {
    const rows = van().hold('h1', { reason: 'tool', openedById: 'second' }).rows();
    expect(carryOut(endHold, rows, { holdId: 'h1' }, { by: 'technician' }).codes).toEqual(['hold.mayNotEnd']);
  });

  it('needs words while parts are missing', () => {
    const { codes, refusedFor } = carryOut(endHold, held('parts'), { holdId: 'h1' }, { by: 'manager' });
    expect(codes).toEqual(['hold.endWordsMissing']);
    expect(refusedFor).toEqual({ holdId: 'h1', missing: 1 });
  });

  it('is refused for one that has ended, is void or unknown', () => {
    const over = van()
      .hold('h1', { toAt: tuesdayTen - hour, endedHow: 'handedBack' })
      .hold('h2')
      .but('hold', 'h2', { void: true });
    const end = (holdId: string) => carryOut(endHold, over.rows(), { holdId });
    expect(end('h1')).toMatchObject({ codes: ['hold.endedAlready'], refusedFor: { endedHow: 'handedBack' } });
    expect(end('h2').codes).toEqual(['row.notFound']);
    expect(end('h3').codes).toEqual(['row.notFound']);
  });
});
