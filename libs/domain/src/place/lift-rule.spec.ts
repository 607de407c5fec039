import { describe, expect, it } from '@jest/globals';
import type { TakeIntoBay } from '../inputs.js';
import type { Outcome } from '../kernel/decision.js';
import { circumstances, type Given, given, hour, opening, tuesdayTen } from '../kernel/given.js';
import { recorded, usual } from '../kernel/given-usual.js';
import { Refused } from '../kernel/refusal.js';
import { allowOverdueLift, recordLiftInspection } from '../lift/inspections.js';
import { nameLiftingPoints } from '../lift/lifting-points.js';
import { carryOut } from '../settle/carry-out.js';
import type { Row } from '../tables/tables.js';
import { swapBays } from './swap-bays.js';
import { takeIntoBay } from './take-into-bay.js';

// Rule 4 whole, on Tuesday 10 March 2026, at a lift that is rated for 3000 kg. What is expected is written down by hand for
// each of mass and load, points, and inspection; the table is every combination of these with both kinds of lift and each
// role that takes vehicles into bays, as an intention and as what stands there already.

type Mass = Pick<Row<'vehicle'>, 'curbKg' | 'grossKg' | 'weighedKg'>;
const kg = (curbKg: number | null, grossKg: number | null, weighedKg: number | null = null): Mass => ({
  curbKg,
  grossKg,
  weighedKg,
});

const loads = {
  unsaid: {},
  empty: { loaded: false },
  loaded: { loaded: true },
  '600 kg': { loadKg: 600 },
  '601 kg': { loadKg: 601 },
} as const satisfies Readonly<Record<string, Partial<TakeIntoBay>>>;

/** In the order of `loads`: `.` passes, `A` above the rating, `?` loaded or empty is asked, `w` the load's weight is asked. */
const masses: readonly (readonly [string, Mass, string])[] = [
  ['curb above', kg(3001, 3500), 'AAAAA'],
  ['weighed above', kg(2000, 2800, 3001), 'AAAAA'],
  ['gross within', kg(2000, 3000), '.....'],
  ['in between', kg(2400, 3500), '?.w.A'],
  ['weighed at the rating', kg(2400, 3500, 3000), '?.w.A'],
  ['gross unknown', kg(2400, null), '?...A'],
  ['all unknown', kg(null, null), '?....'],
];

const points = {
  'no caution': false,
  'not named': true,
  named: false,
  'named on an earlier visit': true,
  'named before a further caution': true,
} as const;

/** What the inspection says, and whether the lift lifts at all. */
const inspections = {
  'none known': '.',
  'in date': '.',
  'on its anniversary': '.',
  'a day over': 'o',
  'over by the facts of the bay': 'o',
  'over, no interval': '.',
  'over, decided until today': '.',
  'over, decision ended yesterday': 'o',
  'over again since the decision': 'o',
  failed: 'out',
  'failed, passed since': '.',
} as const;

const ran = { ...recorded, device: null } as const;
const inspected = (of: Given, id: string, inspectedOn: string, over: Partial<Row<'liftInspection'>> = {}) =>
  of.row('liftInspection', {
    id,
    ...ran,
    bayId: 'b1',
    inspectedOn,
    outcome: 'passed',
    intervalMonths: 12,
    inspector: null,
    words: null,
    ...over,
  });
const decided = (of: Given, inspectedOn: string, untilDay: string) =>
  of.row('liftDecision', { id: 'decision', ...ran, bayId: 'b1', inspectedOn, untilDay, words: 'Booked for Friday' });

const withInspection: Readonly<Record<keyof typeof inspections, (of: Given) => Given>> = {
  'none known': (of) => of,
  'in date': (of) => inspected(of, 'i1', '2025-06-01'),
  'on its anniversary': (of) => inspected(of, 'i1', '2025-03-10'),
  'a day over': (of) => inspected(of, 'i1', '2025-03-09'),
  'over by the facts of the bay': (of) =>
    of.but('baySpec', 'b1-spec', { inspectedOn: '2025-03-09', inspectionIntervalMonths: 12 }),
  'over, no interval': (of) => inspected(of, 'i1', '2020-01-01', { intervalMonths: null }),
  'over, decided until today': (of) => decided(inspected(of, 'i1', '2025-03-01'), '2025-03-01', '2026-03-10'),
  'over, decision ended yesterday': (of) => decided(inspected(of, 'i1', '2025-03-01'), '2025-03-01', '2026-03-09'),
  'over again since the decision': (of) =>
    decided(inspected(inspected(of, 'i1', '2024-03-01'), 'i2', '2025-03-01'), '2024-03-01', '2026-03-20'),
  failed: (of) => inspected(inspected(of, 'i1', '2026-01-01'), 'i2', '2026-03-02', { outcome: 'failed' }),
  'failed, passed since': (of) =>
    inspected(inspected(of, 'i1', '2026-03-02', { outcome: 'failed' }), 'i2', '2026-03-09'),
};

const caution = (of: Given, id: string, over: Partial<Row<'caution'>> = {}) =>
  of.caution(id, { code: 'liftingPoint', standing: true, jobId: null, openedById: 'owner', ...over });
const namedPoints = (of: Given, jobId: string) =>
  of.row('liftingPoints', { id: 'points', ...ran, jobId, vehicleId: 'v1', words: 'Front ones and the rear beam' });
const withPoints: Readonly<Record<keyof typeof points, (of: Given) => Given>> = {
  'no caution': (of) => of,
  'not named': (of) => caution(of, 'x'),
  named: (of) => namedPoints(caution(of, 'x'), 'j1'),
  'named on an earlier visit': (of) =>
    namedPoints(
      caution(of, 'x').row('job', {
        id: 'j0',
        ...usual.job,
        number: 1,
        vehicleId: 'v1',
        customerId: null,
        endedAt: opening,
      }),
      'j0',
    ),
  'named before a further caution': (of) => namedPoints(caution(of, 'x', { recordedAt: opening + hour }), 'j1'),
};

const codesOf = (outcome: Outcome | Refused) =>
  outcome instanceof Refused ? outcome.refusals.map(({ code }) => code) : [];

const kinds = { points: 'twoPostLift', wheels: 'fourPostLift' } as const;
const bayWith = (grips: keyof typeof kinds, mass: Mass) =>
  given()
    .shop()
    .bay('b1', { equipment: [{ kind: kinds[grips], inUse: true, grips }] })
    .vehicle('v1', mass)
    .job('j1', { number: 2 })
    .inYard();

const refusedFor = { A: 'place.aboveCapacity', '?': 'place.loadAsked', w: 'place.loadWeightAsked' } as const;
const flaggedFor = { A: 'place.aboveCapacity', '?': 'place.loadNotAsked', w: 'place.loadNotAsked' } as const;

/** What each part of the rule says by itself, put together; a lift that is out of use lifts nothing. */
function expectedOf(letter: keyof typeof refusedFor | '.', isHeld: boolean, inspection: string) {
  if (inspection === 'out') return { codes: [], flags: [] };
  const overdue = inspection === 'o' ? ['lift.overdue'] : [];
  return {
    codes: [...(isHeld ? ['lift.pointsNotNamed'] : []), ...overdue, ...(letter === '.' ? [] : [refusedFor[letter]])],
    flags: [...(isHeld ? ['work.againstCaution'] : []), ...overdue, ...(letter === '.' ? [] : [flaggedFor[letter]])],
  };
}

describe('rule 4', () => {
  it.each(Object.keys(inspections) as (keyof typeof inspections)[])('inspection: %s', (inspection) => {
    const told: string[] = [];
    const wanted: string[] = [];
    for (const [named, isHeld] of Object.entries(points) as [keyof typeof points, boolean][])
      for (const [massName, mass, letters] of masses)
        for (const grips of ['points', 'wheels'] as const) {
          const rows = withPoints[named](withInspection[inspection](bayWith(grips, mass))).rows();
          for (const [place, [loadName, load]] of Object.entries(loads).entries())
            for (const by of ['owner', 'manager', 'technician'] as const) {
              const input = { jobId: 'j1', bayId: 'b1', ...load };
              const at = circumstances({ by });
              const asked = codesOf(takeIntoBay.decide(rows.fork(), input, at));
              const seen = rows.fork();
              const refused = codesOf(takeIntoBay.decide(seen, { ...input, alreadyThere: true }, at));
              const row = [named, massName, loadName, grips, by];
              told.push(JSON.stringify([...row, asked, refused, seen.list('flag').map(({ rule }) => rule)]));
              const letter = letters[place] as keyof typeof refusedFor | '.';
              const { codes, flags } = expectedOf(letter, isHeld && grips === 'points', inspections[inspection]);
              wanted.push(JSON.stringify([...row, codes, [], flags]));
            }
        }
    expect(told).toEqual(wanted);
    expect(told).toHaveLength(5 * 7 * 5 * 2 * 3);
  });

  it('says until when the inspection counted, and leads to the bay', () => {
    const { refusals } = carryOut(takeIntoBay, withInspection['a day over'](bayWith('wheels', kg(2000, 2800))).rows(), {
      jobId: 'j1',
      bayId: 'b1',
    });
    expect(refusals).toEqual([
      { code: 'lift.overdue', facts: { dueOn: '2026-03-09' }, way: { table: 'bay', id: 'b1' } },
    ]);
  });

  it('holds for both who change bays', () => {
    const two = withInspection['a day over'](bayWith('points', kg(2000, 2800)))
      .inBay('b1')
      .but('place', 'j1-yard', { toAt: opening, fromAt: opening - hour })
      .bay('b2', { equipment: [{ kind: 'flat', inUse: true, grips: null }] })
      .vehicle('v2')
      .job('j2', { number: 3 })
      .inBay('b2');
    const swapped = carryOut(swapBays, two.rows(), { jobIds: ['j1', 'j2'] });
    expect(swapped.refusals).toMatchObject([{ code: 'lift.overdue', facts: { jobNumber: 3 } }]);
  });

  it('is opened by the decision and by the named points, in the words of those who may', () => {
    const held = caution(withInspection['a day over'](bayWith('points', kg(2000, 2800))), 'x').rows();
    const input = { jobId: 'j1', bayId: 'b1' };
    expect(carryOut(takeIntoBay, held, input).codes).toEqual(['lift.pointsNotNamed', 'lift.overdue']);
    const allowed = carryOut(allowOverdueLift, held, {
      bayId: 'b1',
      untilDay: '2026-03-24',
      words: 'Inspector on Friday',
    });
    const pointed = carryOut(nameLiftingPoints, allowed.rows, { jobId: 'j1', words: 'Front points, rear beam' });
    expect(carryOut(takeIntoBay, pointed.rows, input, { by: 'technician' }).codes).toEqual([]);
    const failed = { bayId: 'b1', inspectedOn: '2026-03-10', outcome: 'failed' } as const;
    const out = carryOut(recordLiftInspection, pointed.rows, failed);
    expect(carryOut(takeIntoBay, out.rows, { ...input, loadKg: 9_000 }, { by: 'technician' }).codes).toEqual([]);
  });
});

// Reference: ANSI/ALI rule "never above the rated capacity on the nameplate"; 1 lb = 0.45359237 kg exactly (1959).
describe('a plate in pounds', () => {
  it.each([
    [4535, []],
    [4536, ['place.aboveCapacity']],
  ])('10 000 lb and %i kg', (curbKg, codes) => {
    const rows = bayWith('wheels', kg(curbKg, curbKg)).but('baySpec', 'b1-spec', {
      capacity: '10000',
      capacityUnit: 'lb',
    });
    expect(carryOut(takeIntoBay, rows.rows(), { jobId: 'j1', bayId: 'b1' }, { now: tuesdayTen }).codes).toEqual(codes);
  });
});
