import { describe, expect, it } from '@jest/globals';
import { calendarOf, sameHours, weekdays } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import type { JobLine } from './account-input.js';
import { type FlowInput, type Visit, flowOf } from './flow.js';
import { periodsOf } from './periods.js';
import { whoseMove } from './time-here.js';

const visit = (jobId: string, from: number, to: number | null, change: Partial<Visit> = {}): Visit => ({
  jobId,
  vehicleId: `vehicle of ${jobId}`,
  fleet: null,
  kind: 'normal',
  from,
  to,
  ...change,
});
const line = (jobId: string, change: Partial<JobLine> = {}): JobLine => ({
  jobId,
  lineId: `line of ${jobId}`,
  addedAt: 0,
  endedAt: null,
  after: null,
  goAhead: [{ at: 0, answer: 'given' }],
  ...change,
});
const input = (change: Partial<FlowInput> = {}): FlowInput => ({
  window: { from: 0, to: 1000 },
  now: 1000,
  days: Array.from({ length: 10 }, (_, i) => ({ from: i * 100, to: (i + 1) * 100 })),
  open: [{ from: 0, to: 800 }],
  visits: [],
  clocks: [],
  holds: [],
  lines: [],
  storedJobs: [],
  ...change,
});
const clock = (jobId: string, from: number, to: number | null) => ({ jobId, personId: 'Rhona', bench: true, from, to });
const hold = (jobId: string, reason: string, from: number, to: number | null) => ({
  holdId: `${reason} ${from}`,
  jobId,
  lineIds: [],
  reason,
  from,
  to,
});

describe('time here', () => {
  it('is worked, at the bench too; else by whose move it is; outside opening time closed or overtime', () => {
    const { timeMs } = flowOf(
      input({
        visits: [visit('van', 100, 950)],
        lines: [line('van', { goAhead: [{ at: 300, answer: 'given' }], addedAt: 200 })],
        clocks: [clock('van', 300, 400), clock('van', 790, 820)],
        holds: [hold('van', 'parts', 380, 500), hold('van', 'sublet', 600, 700)],
      }),
    );
    expect(timeMs).toEqual({
      worked: 100 + 10,
      overtime: 20,
      us: 100 + 100 + 90, // 100-200 before any line, 500-600, 700-790
      parts: 100, // 400-500
      customer: 100, // 200-300
      others: 100,
      closed: 130,
    });
  });

  it('a finished vehicle that is not collected waits for the customer, a stored one of the shop for us', () => {
    const stored = { jobId: 'own', from: 0, to: null };
    const visits = [visit('van', 0, 500), visit('own', 0, 500, { kind: 'internal' })];
    const { timeMs } = flowOf(input({ visits, holds: [hold('van', 'collection', 0, null)], storedJobs: [stored] }));
    expect(timeMs).toMatchObject({ customer: 500, us: 500 });
  });

  it('each reason of the domain has somebody whose move it is', () => {
    const of = (move: string) =>
      ['parts', 'goAhead', 'sublet', 'information', 'tool', 'bay', 'technician', 'setting', 'conditions', 'assessor']
        .concat('collection', 'other', 'a new word')
        .filter((reason) => whoseMove(reason) === move);
    expect(of('parts')).toEqual(['parts']);
    expect(of('customer')).toEqual(['goAhead', 'collection']);
    expect(of('us')).toEqual(['tool', 'bay', 'technician']);
    expect(of('others')).toHaveLength(7);
  });
});

describe('work in progress and throughput', () => {
  it('counts who is here over time, who came and who left', () => {
    const flow = flowOf(input({ visits: [visit('a', -50, 200), visit('b', 100, 300), visit('c', 700, null)] }));
    expect(flow.here).toEqual([
      { from: 0, to: 100, count: 1 },
      { from: 100, to: 200, count: 2 },
      { from: 200, to: 300, count: 1 },
      { from: 700, to: 1000, count: 1 },
    ]);
    expect(flow).toMatchObject({ meanHere: 0.7, mostHere: 2, arrived: 2, left: 2, leftPerDay: 0.2 });
  });

  it('what lies after now has not happened', () => {
    const flow = flowOf(input({ now: 400, visits: [visit('a', 300, 900), visit('b', 500, 600)] }));
    expect(flow).toMatchObject({ window: { from: 0, to: 400 }, arrived: 1, left: 0, meanHere: 0.25 });
    expect(flow.little.endsEmpty).toBe(false);
  });

  it('an empty window has no mean', () => {
    expect(flowOf(input({ window: { from: 5, to: 5 } }))).toMatchObject({ meanHere: null, leftPerDay: null });
  });
});

describe('the law of Little', () => {
  it('is asked for where the window starts and ends empty, and then holds to the millisecond', () => {
    const { little } = flowOf(input({ visits: [visit('a', 0, 400), visit('b', 300, 1000)] }));
    expect(little).toMatchObject({ mustHold: true, holds: true, meanHere: 1.1, meanTimeHereMs: 550 });
    expect(little.difference).toBeCloseTo(0, 12);
  });

  it('is not asked for elsewhere, and says which end is not empty', () => {
    const before = flowOf(input({ visits: [visit('a', -100, 400)] })).little;
    expect(before).toMatchObject({ startsEmpty: false, endsEmpty: true, mustHold: false, holds: null });
    expect(before.difference).not.toBe(0);
    expect(flowOf(input({ visits: [visit('a', 100, null)] })).little).toMatchObject({ endsEmpty: false, holds: null });
  });
});

describe('days off the road', () => {
  const detroit = calendarOf({
    zone: 'America/Detroit',
    hours: [
      {
        validFrom: '2020-01-01',
        week: sameHours([...weekdays], [['08:00', '17:00']]),
        breaks: sameHours([...weekdays], []),
      },
    ],
    exceptions: [],
  });
  const days = periodsOf(detroit, '2026-03-06', '2026-03-10', 'day');
  const [first, last] = [days[0]?.from ?? 0, days.at(-1)?.to ?? 0];
  const week = input({ window: { from: first, to: last }, now: last, days, open: detroit.openIntervals(first, last) });
  const at = (date: string, time: string): number => detroit.instantOf(date, time);

  it('are days of the zone: from noon to noon over a clock change is two days, not two less an hour', () => {
    const visits = [visit('a', at('2026-03-07', '12:00'), at('2026-03-09', '12:00'))];
    const [vehicle] = flowOf({ ...week, visits }).vehicles;
    expect(vehicle?.days).toBe(2);
    expect(vehicle?.ms).toBe(47 * 3_600_000);
  });

  it('a vehicle with two jobs at once counts once; a fleet has those of its vehicles', () => {
    const of = (jobId: string, vehicleId: string, from: string, to: string) =>
      visit(jobId, at(from, '00:00'), at(to, '00:00'), { vehicleId, fleet: 'Harbour' });
    const visits = [
      of('a', 'van 1', '2026-03-06', '2026-03-08'),
      of('b', 'van 1', '2026-03-07', '2026-03-09'),
      of('c', 'van 2', '2026-03-09', '2026-03-10'),
    ];
    const flow = flowOf({ ...week, visits });
    expect(flow.vehicles.map(({ vehicleId, days: count }) => [vehicleId, count])).toEqual([
      ['van 1', 3],
      ['van 2', 1],
    ]);
    expect(flow.fleets).toEqual([{ fleet: 'Harbour', ms: 95 * 3_600_000, days: 4, vehicles: 2 }]);
  });

  it('days that do not hold the window are refused', () => {
    expect(() => flowOf({ ...week, days: days.slice(1) })).toThrow(RangeError);
    expect(() => flowOf({ ...week, days: [...days.slice(0, 2), ...days.slice(3)] })).toThrow(RangeError);
    expect(() => flowOf({ ...week, now: 0.5 })).toThrow(RangeError);
  });
});

describe('comebacks', () => {
  it('are those among a hundred jobs that left, internal ones apart', () => {
    const visits = [
      visit('a', 0, 100),
      visit('b', 0, 200, { kind: 'comeback' }),
      visit('c', 0, 300, { kind: 'guarantee' }),
      visit('d', 0, 400),
      visit('e', 0, 400, { kind: 'internal' }),
      visit('f', 0, null, { kind: 'comeback' }),
    ];
    expect(flowOf(input({ visits })).comebacks).toEqual({ comebacks: 1, jobs: 4, perHundred: 25 });
    expect(flowOf(input()).comebacks.perHundred).toBeNull();
  });
});

describe('the flow, for any input', () => {
  const instant = fc.integer({ min: -20, max: 120 });
  const kinds = fc.constantFrom<Visit['kind']>('normal', 'comeback', 'internal');
  const visits = fc
    .array(fc.tuple(instant, fc.option(fc.integer({ min: 0, max: 80 }), { freq: 4 }), kinds), { maxLength: 6 })
    .map((all) =>
      all.map(([from, ms, kind], i) =>
        visit(`j${i}`, from, ms === null ? null : from + ms, {
          kind,
          vehicleId: `v${i % 3}`,
          fleet: i % 2 ? 'f' : null,
        }),
      ),
    );
  const job = fc.constantFrom('j0', 'j1', 'j2');
  const spans = fc.array(fc.tuple(job, instant, fc.integer({ min: 1, max: 40 })), { maxLength: 5 });
  const given = fc.record({ visits, clocks: spans, holds: spans, open: spans }).map((all) =>
    input({
      window: { from: 0, to: 100 },
      now: 110,
      days: [
        { from: -10, to: 30 },
        { from: 30, to: 120 },
      ],
      visits: all.visits,
      open: all.open.map(([, from, ms]) => ({ from, to: from + ms })),
      lines: [line('j0'), line('j1'), line('j2')],
      clocks: all.clocks.map(([id, from, ms]) => clock(id, from, from + ms)),
      holds: all.holds.map(([id, from, ms], i) => hold(id, i % 2 ? 'parts' : 'goAhead', from, from + ms)),
    }),
  );
  const area = (flow: ReturnType<typeof flowOf>): number =>
    flow.here.reduce((sum, { from, to, count }) => sum + count * (to - from), 0);

  it('the parts of the time here add up to the number here over time, exactly', () => {
    fc.assert(
      fc.property(given, (all) => {
        const flow = flowOf(all);
        expect(Object.values(flow.timeMs).reduce((a, b) => a + b, 0)).toBe(area(flow));
        if (flow.little.mustHold) expect(flow.little.holds).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  it('adds up over a window cut in two, whatever the order of the rows', () => {
    fc.assert(
      fc.property(given, fc.integer({ min: 0, max: 100 }), (all, cut) => {
        const whole = flowOf(all);
        const pieces = [
          { from: 0, to: cut },
          { from: cut, to: 100 },
        ].map((window) =>
          flowOf({ ...all, window, visits: [...all.visits].reverse(), holds: [...all.holds].reverse() }),
        );
        const sum = (of: (flow: ReturnType<typeof flowOf>) => number): number =>
          pieces.reduce((total, flow) => total + of(flow), 0);
        for (const name of ['worked', 'overtime', 'us', 'parts', 'customer', 'others', 'closed'] as const) {
          expect(sum((flow) => flow.timeMs[name])).toBe(whole.timeMs[name]);
        }
        expect([sum((flow) => flow.arrived), sum((flow) => flow.left), sum(area)]).toEqual([
          whole.arrived,
          whole.left,
          area(whole),
        ]);
        const off = (flow: ReturnType<typeof flowOf>): number =>
          flow.vehicles.reduce((total, { days }) => total + days, 0);
        expect(sum(off)).toBeCloseTo(off(whole), 9);
      }),
      { numRuns: 400 },
    );
  });
});
