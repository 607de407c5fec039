/** Against every choice of days there is, on small cases, and laws for cases of any size. */
import { describe, expect, it } from '@jest/globals';
import { addDays } from '@holdfast/shop-calendar';
import fc from 'fast-check';
import { type OpenFollowUp, firstLimit } from './follow-up-windows.js';
import { proposeReturns } from './propose.js';
import type { ReturnsInput, ReturnsProposal } from './proposal.js';

const today = '2026-10-05';
const horizon = 7;
const day = (at: number): string => addDays(today, at);
const workingDays = Array.from({ length: horizon }, (_, at) => day(at));

interface Small {
  readonly from: number;
  readonly length: number | null;
  readonly minutes: number;
  readonly urgent: boolean;
  readonly after: readonly number[];
  readonly vehicle: number;
}

const small = (vehicles: number, urgent: boolean) =>
  fc.record({
    from: fc.nat(horizon - 1),
    length: fc.option(fc.nat(4)),
    minutes: fc.integer({ min: 1, max: 3 }),
    urgent: urgent ? fc.boolean() : fc.constant(false),
    after: fc.uniqueArray(fc.nat(5), { maxLength: 2 }),
    vehicle: fc.nat(vehicles - 1),
  });

/** Links to earlier ones of the same vehicle only: no circles. */
function followUpsOf(rows: readonly Small[]): OpenFollowUp[] {
  return rows.map((row, at) => ({
    followUpId: String(at),
    vehicleId: `v${row.vehicle}`,
    urgency: row.urgent ? 'urgent' : 'soon',
    bayMinutes: row.minutes,
    parts: [{ partLineId: `p${at}`, shipmentId: `p${at}`, inHand: false, expected: day(row.from) }],
    goAhead: 'notNeeded',
    after: row.after.filter((other) => other < at && rows[other]?.vehicle === row.vehicle).map(String),
    limits: row.length === null ? [] : [{ kind: 'day', day: day(row.from + row.length) }],
  }));
}

const placedOf = (proposal: ReturnsProposal): Map<string, string> =>
  new Map(proposal.returns.flatMap((one) => one.followUpIds.map((id) => [id, one.day] as const)));

/** What holds for every proposal. */
function expectLawful(input: ReturnsInput, proposal: ReturnsProposal): void {
  const { empty, returns, notPlanned } = proposal;
  const ids = [...empty, ...notPlanned].map(({ followUpId }) => followUpId);
  ids.push(...returns.flatMap(({ followUpIds }) => followUpIds));
  expect(ids.sort()).toEqual(input.followUps.map(({ followUpId }) => followUpId).sort());
  const placed = placedOf(proposal);
  for (const one of input.followUps) {
    const on = placed.get(one.followUpId);
    if (on === undefined) continue;
    expect(input.workingDays).toContain(on);
    for (const { expected } of one.parts) expect(on >= (expected ?? '')).toBe(true);
    expect(on <= (firstLimit(one.limits)?.day ?? on)).toBe(true);
    for (const other of one.after) expect((placed.get(other) ?? '9') <= on).toBe(true);
  }
  const comes = returns.map(({ vehicleId, day: on }) => `${vehicleId} ${on}`);
  expect(new Set(comes).size).toBe(comes.length);
  for (const [on, free] of input.freeBayMinutes ?? []) {
    const used = returns.filter((one) => one.day === on).reduce((sum, one) => sum + one.bayMinutes, 0);
    expect(used).toBeLessThanOrEqual(free);
  }
}

/** Every way to give each of these a day that keeps windows, links and room; calls back with the days. */
function everyWay(
  followUps: readonly OpenFollowUp[],
  allowed: (one: OpenFollowUp, on: number) => boolean,
  free: readonly number[] | null,
  found: (days: readonly number[]) => void,
): void {
  const days: number[] = [];
  const left = free === null ? null : [...free];
  const at = new Map(followUps.map((one, index) => [one.followUpId, index]));
  const next = (index: number): void => {
    const one = followUps[index];
    if (one === undefined) {
      found(days);
      return;
    }
    const least = Math.max(0, ...one.after.map((id) => days[at.get(id) ?? -1] ?? 0));
    for (let on = least; on < horizon; on += 1) {
      if (!allowed(one, on) || (left !== null && (left[on] ?? 0) < one.bayMinutes)) continue;
      days[index] = on;
      if (left !== null) left[on] = (left[on] ?? 0) - one.bayMinutes;
      next(index + 1);
      if (left !== null) left[on] = (left[on] ?? 0) + one.bayMinutes;
    }
  };
  next(0);
}

const withinWindow = (one: OpenFollowUp, on: number): boolean =>
  day(on) >= (one.parts[0]?.expected ?? '') && day(on) <= (firstLimit(one.limits)?.day ?? day(on));
const returnsIn = (followUps: readonly OpenFollowUp[], days: readonly number[]): number =>
  new Set(followUps.map(({ vehicleId }, at) => `${vehicleId} ${days[at] ?? ''}`)).size;

describe('returns without bounds on the days', () => {
  it('are as few as any choice of days allows, and each as early, with what is urgent on its first day', () => {
    fc.assert(
      fc.property(fc.array(small(1, true), { maxLength: 5 }), (rows) => {
        const followUps = followUpsOf(rows);
        const proposal = proposeReturns({ today, workingDays, followUps });
        expectLawful({ today, workingDays, followUps }, proposal);
        const placed = placedOf(proposal);
        const planned = followUps.filter(({ followUpId }) => placed.has(followUpId));
        // The first day that its own needs and those of what it waits for allow.
        const first = new Map<string, number>();
        for (const one of planned) {
          const own = workingDays.findIndex((on) => on >= (one.parts[0]?.expected ?? ''));
          first.set(one.followUpId, Math.max(own, ...one.after.map((id) => first.get(id) ?? 0)));
        }
        let fewest = Number.POSITIVE_INFINITY;
        const best: number[][] = [];
        const allowed = (one: OpenFollowUp, on: number): boolean =>
          withinWindow(one, on) && (one.urgency !== 'urgent' || on === first.get(one.followUpId));
        everyWay(planned, allowed, null, (days) => {
          const count = returnsIn(planned, days);
          if (count < fewest) best.length = 0;
          fewest = Math.min(fewest, count);
          if (count === fewest) best.push([...new Set(days)].sort((a, b) => a - b));
        });
        const comesOn = proposal.returns.map((one) => workingDays.indexOf(one.day));
        expect(comesOn).toHaveLength(planned.length === 0 ? 0 : fewest);
        for (const days of best) days.forEach((on, at) => expect(comesOn[at]).toBeLessThanOrEqual(on));
      }),
      { numRuns: 200 },
    );
  });

  it('are lawful for many vehicles and any links', () => {
    fc.assert(
      fc.property(fc.array(small(4, true), { maxLength: 40 }), (rows) => {
        const input = { today, workingDays, followUps: followUpsOf(rows) };
        expectLawful(input, proposeReturns(input));
      }),
    );
  });
});

describe('returns with bounds on the days', () => {
  const bounded = fc.tuple(
    fc.array(small(2, false), { maxLength: 5 }),
    fc.array(fc.nat(6), { minLength: horizon, maxLength: horizon }),
  );

  it('never overfill a day and lose nothing, whatever the bounds', () => {
    fc.assert(
      fc.property(
        fc.array(small(4, true), { maxLength: 30 }),
        fc.array(fc.nat(12), { minLength: horizon, maxLength: horizon }),
        (rows, free) => {
          const input = {
            today,
            workingDays,
            followUps: followUpsOf(rows),
            freeBayMinutes: new Map(free.map((one, at) => [day(at), one])),
          };
          expectLawful(input, proposeReturns(input));
        },
      ),
    );
  });

  it('come near the best of all choices: everything placed and as few in nearly all of 600 small cases', () => {
    let possible = 0;
    let allPlaced = 0;
    let asFew = 0;
    for (const [rows, free] of fc.sample(bounded, { numRuns: 600, seed: 20_261_125 })) {
      const followUps = followUpsOf(rows);
      const freeBayMinutes = new Map(free.map((one, at) => [day(at), one]));
      const proposal = proposeReturns({ today, workingDays, followUps, freeBayMinutes });
      const out = new Set(
        [...proposal.empty, ...proposal.notPlanned.filter(({ why }) => why !== 'noRoom')].map((one) => one.followUpId),
      );
      const inReach = followUps.filter(({ followUpId }) => !out.has(followUpId));
      let fewest = Number.POSITIVE_INFINITY;
      everyWay(inReach, withinWindow, free, (days) => {
        fewest = Math.min(fewest, returnsIn(inReach, days));
      });
      if (fewest === Number.POSITIVE_INFINITY || inReach.length === 0) continue;
      possible += 1;
      if (placedOf(proposal).size < inReach.length) continue;
      allPlaced += 1;
      expect(proposal.returns.length).toBeGreaterThanOrEqual(fewest);
      if (proposal.returns.length === fewest) asFew += 1;
    }
    console.log(
      `Bounded returns: of ${possible} solvable cases ${allPlaced} wholly placed, ${asFew} with the fewest returns.`,
    );
    expect(possible).toBeGreaterThan(200);
    expect(allPlaced / possible).toBeGreaterThan(0.95);
    expect(asFew / allPlaced).toBeGreaterThan(0.95);
  });
});
