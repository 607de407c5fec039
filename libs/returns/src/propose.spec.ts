import { describe, expect, it } from '@jest/globals';
import type { OpenFollowUp } from './follow-up-windows.js';
import { proposeReturns } from './propose.js';
import type { ReturnsInput } from './proposal.js';

/** Monday to Friday from Monday 5 October 2026 on. */
const workingDays = [5, 12, 19, 26].flatMap((monday) =>
  [0, 1, 2, 3, 4].map((more) => new Date(Date.UTC(2026, 9, monday + more)).toISOString().slice(0, 10)),
);
const today = '2026-10-05';

const followUp = (followUpId: string, more: Partial<OpenFollowUp> = {}): OpenFollowUp => ({
  followUpId,
  vehicleId: 'van',
  urgency: 'soon',
  bayMinutes: 60,
  parts: [],
  goAhead: 'notNeeded',
  after: [],
  limits: [],
  ...more,
});
const by = (day: string): OpenFollowUp['limits'] => [{ kind: 'day', day }];
const part = (partLineId: string, expected: string | null, shipmentId = partLineId) => ({
  partLineId,
  shipmentId,
  inHand: false,
  expected,
});
const propose = (followUps: readonly OpenFollowUp[], more: Partial<ReturnsInput> = {}) =>
  proposeReturns({ today, workingDays, followUps, ...more });
const daysOf = (followUps: readonly OpenFollowUp[], more: Partial<ReturnsInput> = {}) =>
  propose(followUps, more).returns.map(({ day, followUpIds }) => [day, [...followUpIds].sort().join(' ')]);

describe('returns', () => {
  it('bundle what one day can do, on the earliest such day', () => {
    expect(
      daysOf([
        followUp('lens', { parts: [part('l', '2026-10-12')], limits: by('2026-10-30') }),
        followUp('bracket', { limits: by('2026-10-14') }),
        followUp('bumper', { parts: [part('b', '2026-10-13')] }),
      ]),
    ).toEqual([['2026-10-13', 'bracket bumper lens']]);
  });

  it('never put off what is urgent to bundle it', () => {
    expect(
      daysOf([
        followUp('brakes', { urgency: 'urgent', limits: by('2026-10-30') }),
        followUp('lens', { parts: [part('l', '2026-10-12')], limits: by('2026-10-30') }),
      ]),
    ).toEqual([
      ['2026-10-05', 'brakes'],
      ['2026-10-12', 'lens'],
    ]);
  });

  it('bring forward what an urgent one waits for', () => {
    expect(
      daysOf([
        followUp('align', { urgency: 'urgent', after: ['tyres'], limits: by('2026-10-30') }),
        followUp('tyres', { parts: [part('t', '2026-10-07')], limits: by('2026-10-30') }),
        followUp('wipers', { limits: by('2026-10-06') }),
      ]),
    ).toEqual([
      ['2026-10-05', 'wipers'],
      ['2026-10-07', 'align tyres'],
    ]);
  });

  it('say why there is more than one: windows that lie apart', () => {
    const { apart } = propose([
      followUp('now', { limits: by('2026-10-06') }),
      followUp('later', { parts: [part('p', '2026-10-20')] }),
      followUp('any'),
    ]);
    expect(apart.get('van')).toEqual(['now', 'later']);
  });

  it('fall on working days that suit the customer', () => {
    const customersDays = [{ vehicleId: 'van', weekdays: ['sat', 'thu'] as const, notOn: ['2026-10-08'] }];
    expect(daysOf([followUp('lens')], { customersDays })).toEqual([['2026-10-15', 'lens']]);
  });

  it('state the chance that all parts are there: three shipments at 80 % are 51 %, one shipment is one', () => {
    const parts = [part('a', '2026-10-12'), part('b', '2026-10-12'), part('c', '2026-10-12')];
    const chanceHere = () => 0.8;
    const chance = (more: OpenFollowUp['parts'], given: ReturnsInput['chanceHere'] = chanceHere) =>
      propose([followUp('job', { parts: more })], { chanceHere: given }).returns[0];
    expect(chance(parts)?.chanceAllParts).toBeCloseTo(0.512, 12);
    expect(chance(parts)?.bookable).toBe(false);
    expect(chance(parts.map((one) => ({ ...one, shipmentId: 'together' })))?.chanceAllParts).toBe(0.8);
    expect(chance(parts.map((one) => ({ ...one, inHand: true })))).toMatchObject({ chanceAllParts: 1, bookable: true });
    expect(chance(parts, (shipment) => (shipment === 'b' ? null : 1))?.chanceAllParts).toBeNull();
  });

  it('are not bookable while a go-ahead is open', () => {
    const asked = followUp('job', { goAhead: { expectedOn: '2026-10-08' } });
    expect(propose([asked]).returns[0]).toMatchObject({ day: '2026-10-08', bookable: false });
  });

  it('say between which days they may move', () => {
    const [only] = propose([
      followUp('a', { parts: [part('p', '2026-10-07')], limits: by('2026-10-18') }),
      followUp('b', { limits: by('2026-10-30') }),
    ]).returns;
    expect(only?.between).toEqual({ from: '2026-10-07', to: '2026-10-16' });
  });
});

describe('a booked return', () => {
  const booked = [{ returnId: 'r', vehicleId: 'van', day: '2026-10-14', followUpIds: ['lens'] }];

  it('takes in what fits its day, and leaves what it has alone', () => {
    const { returns } = propose([followUp('lens'), followUp('bracket', { limits: by('2026-10-16') })], { booked });
    expect(returns).toMatchObject([{ day: '2026-10-14', joins: 'r', followUpIds: ['bracket'] }]);
  });

  it('is not waited for by what is urgent', () => {
    expect(daysOf([followUp('lens'), followUp('brakes', { urgency: 'urgent' })], { booked })).toEqual([
      ['2026-10-05', 'brakes'],
    ]);
  });

  it('bounds what its follow-ups wait for, and what waits for them', () => {
    const waits = [
      followUp('lens', { after: ['wiring'] }),
      followUp('wiring', { parts: [part('w', '2026-10-19')] }),
      followUp('aim', { after: ['lens'] }),
    ];
    const { empty, returns } = propose(waits, { booked });
    expect(empty).toMatchObject([
      { followUpId: 'wiring', limit: { kind: 'booked', day: '2026-10-14' }, daysMissing: 5 },
    ]);
    expect(returns).toMatchObject([{ day: '2026-10-14', followUpIds: ['aim'], joins: 'r' }]);
  });

  it('of a day gone by counts for nothing', () => {
    const gone = [{ returnId: 'r', vehicleId: 'van', day: '2026-10-01', followUpIds: ['lens'] }];
    expect(daysOf([followUp('lens')], { booked: gone })).toEqual([['2026-10-05', 'lens']]);
  });
});

describe('an empty window', () => {
  it('comes with the days missing, whose need and which limit, and what can be done', () => {
    const { empty, returns } = propose([
      followUp('bumper', {
        parts: [part('early', '2026-10-07'), part('late', '2026-10-20')],
        limits: [
          { kind: 'season', day: '2026-10-14' },
          { kind: 'odometer', day: '2026-10-28' },
        ],
      }),
    ]);
    expect(returns).toEqual([]);
    expect(empty).toEqual([
      {
        followUpId: 'bumper',
        vehicleId: 'van',
        why: 'needAfterLimit',
        first: { day: '2026-10-20', because: { kind: 'part', partLineId: 'late' } },
        limit: { kind: 'season', day: '2026-10-14' },
        daysMissing: 6,
        canBeDone: ['earlierOffer', 'otherSource', 'newMeasureAndLimit'],
      },
    ]);
  });

  it('is closed by a new limit', () => {
    expect(daysOf([followUp('bumper', { parts: [part('late', '2026-10-20')], limits: by('2026-10-23') })])).toEqual([
      ['2026-10-20', 'bumper'],
    ]);
  });

  it('comes before others by how bad it is: limits passed, dates unknown, days missing', () => {
    const { empty } = propose([
      followUp('two', { parts: [part('a', '2026-10-09')], limits: by('2026-10-07') }),
      followUp('five', { parts: [part('a', '2026-10-12')], limits: by('2026-10-07') }),
      followUp('never', { parts: [part('a', null)], limits: by('2026-10-07') }),
      followUp('gone', { limits: by('2026-10-01') }),
      followUp('longGone', { limits: by('2026-09-01') }),
    ]);
    expect(empty.map(({ followUpId, daysMissing }) => [followUpId, daysMissing])).toEqual([
      ['longGone', 34],
      ['gone', 4],
      ['never', null],
      ['five', 5],
      ['two', 2],
    ]);
  });

  it('is there too where no day within it suits the customer', () => {
    const customersDays = [{ vehicleId: 'van', weekdays: ['fri'] as const, notOn: [] }];
    expect(propose([followUp('lens', { limits: by('2026-10-08') })], { customersDays }).empty).toMatchObject([
      { why: 'noDaySuits', daysMissing: 1, canBeDone: ['otherDayWithCustomer', 'newMeasureAndLimit'] },
    ]);
  });

  it('leaves what waits for it unplanned, by name', () => {
    const { empty, notPlanned } = propose([
      followUp('aim', { after: ['lamp'] }),
      followUp('lamp', { parts: [part('l', '2026-10-20')], limits: by('2026-10-07') }),
    ]);
    expect(empty.map(({ followUpId }) => followUpId)).toEqual(['lamp']);
    expect(notPlanned).toEqual([{ followUpId: 'aim', why: 'waitsFor', other: 'lamp' }]);
  });
});

describe('not planned is', () => {
  it('whoever waits for himself in a circle, and whoever waits for the circle; the rest of the shop is planned', () => {
    const { notPlanned, returns } = propose([
      followUp('a', { after: ['b'] }),
      followUp('b', { after: ['c'] }),
      followUp('c', { after: ['a'] }),
      followUp('d', { after: ['a'] }),
      followUp('e', { vehicleId: 'estate' }),
    ]);
    expect(notPlanned).toEqual([
      { followUpId: 'a', why: 'circle', circle: ['a', 'b', 'c'] },
      { followUpId: 'b', why: 'circle', circle: ['a', 'b', 'c'] },
      { followUpId: 'c', why: 'circle', circle: ['a', 'b', 'c'] },
      { followUpId: 'd', why: 'waitsFor', other: 'a' },
    ]);
    expect(returns.map(({ vehicleId }) => vehicleId)).toEqual(['estate']);
  });

  it('what has no date, and what lies beyond the days given', () => {
    expect(
      propose([followUp('some', { parts: [part('p', null)] }), followUp('far', { parts: [part('p', '2027-03-01')] })])
        .notPlanned,
    ).toEqual([
      { followUpId: 'some', why: 'noDate' },
      { followUpId: 'far', why: 'beyondHorizon' },
    ]);
  });

  it('what has no room on any day of its window; days that are full are passed over', () => {
    const freeBayMinutes = new Map(workingDays.map((day, at) => [day, at < 3 ? 30 : 120]));
    const rows = [followUp('soon', { limits: by('2026-10-07') }), followUp('a'), followUp('b', { vehicleId: 'w' })];
    const { notPlanned, returns } = propose(rows, { freeBayMinutes });
    expect(notPlanned).toEqual([{ followUpId: 'soon', why: 'noRoom' }]);
    expect(returns.map(({ day }) => day)).toEqual(['2026-10-08', '2026-10-08']);
    expect(daysOf([followUp('long', { bayMinutes: 121 })], { freeBayMinutes })).toEqual([]);
  });

  it('a link to another vehicle, which is named and left out', () => {
    const { otherVehicle, returns } = propose([
      followUp('a', { after: ['b'] }),
      followUp('b', { vehicleId: 'estate' }),
    ]);
    expect(otherVehicle).toEqual([{ followUpId: 'a', after: 'b' }]);
    expect(returns).toHaveLength(2);
  });
});

describe('working days', () => {
  it('have to rise and begin today or later', () => {
    expect(() => propose([], { workingDays: ['2026-10-06', '2026-10-06'] })).toThrow(RangeError);
    expect(() => propose([], { workingDays: ['2026-10-02'] })).toThrow(RangeError);
  });
});
