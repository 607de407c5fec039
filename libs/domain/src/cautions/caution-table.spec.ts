import { describe, expect, it } from '@jest/globals';
import { recordSecondCheck } from '../outstanding/record-second-check.js';
import { addCaution, endCaution } from '../job/cautions.js';
import { handBack } from '../job/hand-back.js';
import { releaseUnfinished } from '../job/release-unfinished.js';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { takeOnRoadTest } from '../place/road-test.js';
import { takeIntoBay } from '../place/take-into-bay.js';
import { carryOut } from '../settle/carry-out.js';
import { type CautionCode, cautionCodes, type Role, roles } from '../tables/words.js';
import { startWork } from '../work/start-work.js';
import { type Act, acts, forbidsKey, type Verdict, verdictOf } from './caution-table.js';

/**
 * Written a second time by hand, in the order of `acts`: `.` allowed, `r` refused, `f` flagged, `p` not before
 * the points are named, `s` with the skill alone.
 */
const expected: Readonly<Record<CautionCode, string>> = {
  liftingPoint: '......p....',
  electricDrive: '...........',
  gasTank: '.......f...',
  highVoltageLive: 'srr.r....r.',
  highVoltageDead: '.rr.r....r.',
  airbagUnplugged: '..r......r.',
  fuelOpen: '.rr.r..rrr.',
  brakesOpen: '..rrr....r.',
  noOil: '.rr.r....r.',
  wheelsNotTorqued: '..r......r.',
  batteryOff: '..r......r.',
  onStands: '..rrrr...rr',
  hotWork: '..r......r.',
  pitOpen: '..rrrr...rr',
  doNotStart: '.rr.r....r.',
  doNotMove: '..rrrr...rr',
  other: '...........',
};

const letterOf = (verdict: Verdict): string => {
  if (typeof verdict !== 'string') return 's';
  return { allow: '.', flag: 'f', refuse: 'r', points: 'p' }[verdict];
};

const flat = [{ kind: 'flat', inUse: true, grips: null }] as const;
const pit = [{ kind: 'pit', inUse: true, grips: null }] as const;

/** A vehicle in bay 1 with nothing else open, bays of each kind, and a line that waits for somebody to start on it. */
const visit = (code: CautionCode): Given =>
  given()
    .shop()
    .bay('b1', { equipment: flat })
    .bay('b2', { equipment: flat })
    .bay('pit', { equipment: pit })
    .bay('lift')
    .vehicle('v1')
    .job('j1')
    .inBay('b1')
    .caution('x', { code, openedById: 'owner' });
const withLine = (code: CautionCode) => visit(code).line('l1');

const leaving = { jobId: 'j1', receivedBy: 'A Driver', receivedHow: 'there' } as const;
const into = (rows: Rows, bayId: string, by: Role, moved: object = {}) =>
  carryOut(takeIntoBay, rows, { jobId: 'j1', bayId, ...moved }, { by });
const byName = { movedHow: 'dollies', movedByName: 'Ada' } as const;

type Tried = { readonly refusals: readonly Refusal[]; readonly rows: Rows };

/** Each act as the command that does it. Of starting the engine there is none: nobody records that. */
const tries: Readonly<Record<Exclude<Act, 'startEngine'>, (code: CautionCode, by: Role) => Tried>> = {
  startWork: (code, by) => carryOut(startWork, withLine(code).rows(), { lineId: 'l1' }, { by }),
  roadTest: (code, by) => carryOut(takeOnRoadTest, visit(code).rows(), { jobId: 'j1', keepSpot: true }, { by }),
  moveRolling: (code, by) => into(visit(code).rows(), 'b2', by, { movedHow: 'rolled' }),
  moveDriven: (code, by) => into(visit(code).rows(), 'b2', by, { movedHow: 'driven' }),
  moveTowed: (code, by) => into(visit(code).rows(), 'b2', by, byName),
  liftByPoints: (code, by) => into(visit(code).rows(), 'lift', by, byName),
  placeOverPit: (code, by) => into(visit(code).rows(), 'pit', by, byName),
  hotWorkBeside: (code, by) => {
    const welding = withLine(code).vehicle('v2').job('j2').inBay('b2').caution('hot', { code: 'hotWork' });
    return carryOut(startWork, welding.rows(), { lineId: 'l1' }, { by });
  },
  handBackByRoad: (code, by) => carryOut(handBack, visit(code).rows(), { ...leaving, leavesBy: 'road' }, { by }),
  handBackOnTransporter: (code, by) =>
    carryOut(handBack, visit(code).rows(), { ...leaving, leavesBy: 'transporter' }, { by }),
};
const acted = acts.filter((act): act is keyof typeof tries => act !== 'startEngine');
const people = roles.filter((role) => role !== 'wallScreen');

/** Refusals that name a caution, be it at a door, beside hot work, or anywhere else. */
const named = ({ refusals }: Tried, id = 'x') => refusals.filter((one) => one.way?.id === id);

describe('the table of cautions', () => {
  it.each(cautionCodes)('says of %s, for every act, what is written here', (code) => {
    expect(acts.map((act) => letterOf(verdictOf(code, act))).join('')).toBe(expected[code]);
    expect(forbidsKey(code)).toBe(`caution.${code}.forbids`);
  });

  describe.each(cautionCodes)('%s', (code) => {
    it.each(acted)('%s, by every role, as the table says and no other way', (act) => {
      for (const by of people) {
        const tried = tries[act](code, by);
        const refused = named(tried, act === 'hotWorkBeside' ? 'hot' : 'x').length > 0;
        const flagged = tried.rows.list('flag', (one) => one.facts['cautionId'] === 'x').length > 0;
        // Where one act is done together with another one (a move into a pit bay is a move), that one is forbidden too.
        const besides = act === 'placeOverPit' || act === 'liftByPoints' ? verdictOf(code, 'moveTowed') : 'allow';
        const verdict = verdictOf(code, act);
        const wanted =
          besides === 'refuse' || verdict === 'refuse' || verdict === 'points' || typeof verdict !== 'string';
        expect([by, refused, flagged]).toEqual([by, wanted, verdict === 'flag' && !wanted]);
      }
    });

    it.each(['road', 'transporter'] as const)('a release by %s is forbidden by the same row', (leavesBy) => {
      const act = leavesBy === 'road' ? 'handBackByRoad' : 'handBackOnTransporter';
      for (const by of people) {
        const tried = carryOut(releaseUnfinished, visit(code).rows(), { ...leaving, leavesBy, words: 'Sold' }, { by });
        expect([by, named(tried).length > 0]).toEqual([by, verdictOf(code, act) === 'refuse']);
      }
    });
  });

  it('is for owner and manager too: no role has an override', () => {
    for (const by of ['owner', 'manager'] as const) expect(named(tries.roadTest('noOil', by))).toHaveLength(1);
  });

  it('lets a person with the skill start where high voltage is live, as long as it holds', () => {
    const start = (until: string | null) =>
      carryOut(
        startWork,
        withLine('highVoltageLive').skill('technician', 'highVoltage', { until }).rows(),
        { lineId: 'l1' },
        { by: 'technician' },
      ).codes;
    expect(start(null)).toEqual([]);
    expect(start('2026-03-10')).toEqual([]);
    expect(start('2026-03-09')).toEqual(['caution.forbids']);
  });

  it('asks the skill of whose clock it is, not of who sends it', () => {
    const rows = withLine('highVoltageLive').skill('manager', 'highVoltage').rows();
    expect(carryOut(startWork, rows, { lineId: 'l1', personId: 'technician' }, { by: 'manager' }).codes).toEqual([
      'caution.forbids',
    ]);
  });

  it.each(cautionCodes)('what has happened against %s is recorded, and flagged', (code) => {
    const there = into(visit(code).rows(), 'b2', 'technician', { alreadyThere: true, movedHow: 'driven' });
    expect(there.codes).toEqual([]);
    const flags = there.rows.list('flag').map(({ rule, facts }) => [rule, facts['code'], facts['act']]);
    const wanted = verdictOf(code, 'moveDriven') === 'refuse' ? [['work.againstCaution', code, 'moveDriven']] : [];
    expect(flags).toEqual(wanted);
    const begun = carryOut(
      startWork,
      withLine(code).rows(),
      { lineId: 'l1', alreadyStarted: true },
      { by: 'technician' },
    );
    expect(begun.rows.list('flag')).toHaveLength(typeof verdictOf(code, 'startWork') === 'string' ? 0 : 1);
    expect(begun.rows.list('clock')).toHaveLength(1);
  });
});

describe('hot work and open fuel', () => {
  /** The vehicle with its fuel open in bay 2 of five in the order of the building, hot work in the bay named. */
  const row = (hotIn: string, endedOn: string | null = null) => {
    const story = given().shop();
    for (const id of ['b1', 'b2', 'b3', 'b4']) story.bay(id, { equipment: flat, spots: 2 });
    return story
      .but('bay', 'b3', { endedOn })
      .vehicle('v1')
      .job('j1')
      .line('l1')
      .inBay('b2')
      .caution('fuel', { code: 'fuelOpen' })
      .vehicle('v2')
      .job('j2')
      .line('l2')
      .inBay(hotIn, { spot: 2 })
      .caution('hot', { code: 'hotWork' });
  };
  const start = (story: Given, lineId = 'l1') => carryOut(startWork, story.rows(), { lineId }, { by: 'technician' });

  it.each(['b1', 'b2', 'b3'])('stop each other in the same bay and in the next on either side: %s', (bay) => {
    const { codes, refusals } = start(row(bay));
    expect([codes, refusals[0]?.way]).toEqual([['caution.hotWorkNear'], { table: 'caution', id: 'hot' }]);
    expect(start(row(bay), 'l2').refusals[0]?.way).toEqual({ table: 'caution', id: 'fuel' });
  });
  it('do not over one bay between, nor from the yard, nor when one of them is over', () => {
    expect(start(row('b4')).codes).toEqual([]);
    expect(start(row('b1').but('spotUse', 'j2-b1-use', { toAt: tuesdayTen - 1 })).codes).toEqual([]);
    expect(start(row('b1').but('caution', 'hot', { endedAt: tuesdayTen - 1 })).codes).toEqual([]);
  });
  it('are neighbours across a bay that is no more', () => {
    expect(start(row('b4', '2026-01-01')).codes).toEqual(['caution.hotWorkNear']);
  });
  it('are not put beside each other; what stands there already is flagged', () => {
    const apart = row('b4');
    const input = { jobId: 'j1', bayId: 'b3', ...byName };
    expect(carryOut(takeIntoBay, apart.rows(), input, { by: 'technician' }).codes).toEqual(['caution.hotWorkNear']);
    const { rows } = carryOut(takeIntoBay, apart.rows(), { ...input, alreadyThere: true }, { by: 'technician' });
    expect(rows.list('flag').map((one) => [one.rule, one.bayId])).toEqual([['place.hotWorkNearFuel', 'b3']]);
  });
  it('are flagged when the second of them is said, and when work is begun beside', () => {
    const rows = row('b1')
      .but('caution', 'hot', { endedAt: tuesdayTen - 1 })
      .rows();
    const input = { vehicleId: 'v2', standing: false, code: 'hotWork' } as const;
    expect(carryOut(addCaution, rows, input, { by: 'technician' }).rows.list('flag')).toMatchObject([
      { rule: 'place.hotWorkNearFuel', jobId: 'j2', bayId: 'b1', facts: { cautionId: 'fuel', code: 'fuelOpen' } },
    ]);
    const begun = carryOut(startWork, row('b1').rows(), { lineId: 'l1', alreadyStarted: true }, { by: 'technician' });
    expect(begun.rows.list('flag').map((one) => one.rule)).toEqual(['place.hotWorkNearFuel']);
  });
});

describe('a shop with one technician', () => {
  const alone = () =>
    given()
      .shop({}, { recheckMinutes: 30 })
      .but('person', 'second', { active: false })
      .skill('technician', 'secondCheck')
      .vehicle('v1')
      .job('j1')
      .inYard();
  const mine = { by: 'technician' } as const;

  it('lets the technician end the own caution', () => {
    const rows = alone().caution('x', { openedById: 'technician' }).rows();
    expect(carryOut(endCaution, rows, { cautionId: 'x' }, mine).codes).toEqual([]);
  });
  it('takes a tier-2 check by the same person after the interval, and then the vehicle leaves by road', () => {
    const lamp = () =>
      alone()
        .followUp('f1')
        .fix('n1', { system: 'lighting', followUpId: 'f1', byId: 'technician', since: tuesdayTen - hour });
    const early = { ...mine, now: tuesdayTen - hour + 29 * minute };
    expect(carryOut(recordSecondCheck, lamp().rows(), { temporaryFixId: 'n1' }, early).codes).toEqual([
      'fix.recheckTooEarly',
    ]);
    const { rows, codes } = carryOut(recordSecondCheck, lamp().rows(), { temporaryFixId: 'n1' }, mine);
    expect(codes).toEqual([]);
    expect(carryOut(handBack, rows.fork(), { ...leaving, leavesBy: 'road' }, { by: 'manager' }).codes).toEqual([]);
  });
  it('refuses a tier-1 fix by road, whoever allows it: nobody else can check it', () => {
    const brakes = alone().followUp('f1').fix('n1', { system: 'brakes', followUpId: 'f1', byId: 'technician' }).rows();
    expect(carryOut(recordSecondCheck, brakes, { temporaryFixId: 'n1' }, mine).codes).toEqual([
      'fix.checkBySamePerson',
    ]);
    const byRoad = [{ temporaryFixId: 'n1', words: 'To the depot', receiverSigned: true }];
    const out = { ...leaving, leavesBy: 'road', byRoad } as const;
    expect(carryOut(handBack, brakes, out, { by: 'owner' }).codes).toEqual(['handBack.secondCheckMissing']);
    expect(carryOut(releaseUnfinished, brakes, { ...out, words: 'Sold' }, { by: 'owner' }).codes).toEqual([
      'handBack.secondCheckMissing',
    ]);
  });
});
