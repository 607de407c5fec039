import { describe, expect, it } from '@jest/globals';
import type { SwapBays } from '../inputs.js';
import { type Given, given, opening, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { overlap } from '../timeline/timeline.js';
import { swapBays } from './swap-bays.js';

const flat = [{ kind: 'flat', inUse: true, grips: null }] as const;
const two = () =>
  given()
    .shop()
    .bay('b1')
    .bay('b2', { equipment: flat })
    .vehicle('v1')
    .job('j1')
    .inBay('b1')
    .vehicle('v2')
    .job('j2')
    .inBay('b2');
const swap = (story: Given, input: Partial<SwapBays> = {}) =>
  carryOut(swapBays, story.rows(), { jobIds: ['j1', 'j2'], ...input }, { by: 'technician' });

describe('swapBays', () => {
  it('puts each where the other stood, at one instant, and no spot has two', () => {
    const { rows, outcome } = swap(two());
    const now = (jobId: string) => rows.list('place', (one) => one.jobId === jobId && one.toAt === null);
    expect(now('j1')).toMatchObject([{ bayId: 'b2', fromAt: tuesdayTen }]);
    expect(now('j2')).toMatchObject([{ bayId: 'b1', fromAt: tuesdayTen }]);
    const uses = rows.list('spotUse');
    expect(uses).toHaveLength(4);
    for (const one of uses) {
      const same = uses.filter((other) => other.id !== one.id && other.bayId === one.bayId && other.spot === one.spot);
      expect(same.some((other) => overlap(one, other))).toBe(false);
    }
    expect(outcome?.facts).toMatchObject({ jobId: 'j1', otherJobId: 'j2', bayId: 'b2', otherBayId: 'b1' });
  });
  it('moves both as soon after the last place of either as that allows', () => {
    const { rows } = swap(
      two().but('place', 'j2-b2', { fromAt: tuesdayTen }).but('spotUse', 'j2-b2-use', { fromAt: tuesdayTen }),
    );
    expect(rows.list('place', (one) => one.toAt === null).map((one) => one.fromAt)).toEqual([
      tuesdayTen + 1,
      tuesdayTen + 1,
    ]);
  });
  it('is refused for each by the rules of its new bay, and says of which visit', () => {
    const heavy = two().but('vehicle', 'v2', { curbKg: 3200 }).but('vehicle', 'v1', { rolls: false });
    expect(swap(heavy).refusals).toMatchObject([
      { code: 'place.doesNotRoll', facts: { jobId: 'j1', jobNumber: 1 } },
      { code: 'place.aboveCapacity', facts: { jobId: 'j2', jobNumber: 2, massKg: 3200 } },
    ]);
  });
  it('asks for each whether it is loaded', () => {
    const unknown = () => two().but('vehicle', 'v2', { grossKg: null });
    expect(swap(unknown()).codes).toEqual(['place.loadAsked']);
    expect(swap(unknown(), { loaded: [{ jobId: 'j1', loaded: false }] }).codes).toEqual(['place.loadAsked']);
    const { rows } = swap(unknown(), { loaded: [{ jobId: 'j2', loaded: true, loadKg: 200 }] });
    expect(rows.list('place', (one) => one.jobId === 'j2' && one.toAt === null)).toMatchObject([
      { loaded: true, loadKg: 200, loadAnsweredById: 'technician' },
    ]);
  });
  it('is refused against cautions and with wheels off', () => {
    expect(swap(two().caution('x', { code: 'onStands' })).codes).toEqual(['caution.forbids']);
    expect(swap(two().wheel('w1', '1L')).codes).toEqual(['wheel.stillOff']);
  });
  it('is between two vehicles that stand in bays, on visits that go on', () => {
    const yard = two().vehicle('v3').job('j3').inYard();
    expect(swap(yard, { jobIds: ['j1', 'j3'] }).codes).toEqual(['place.notInBay']);
    expect(swap(two(), { jobIds: ['j1', 'j1'] }).codes).toEqual(['place.swapWithItself']);
    expect(swap(two(), { jobIds: ['j1', 'j9'] }).codes).toEqual(['row.notFound']);
    expect(swap(two().but('job', 'j2', { endedAt: opening + 1 })).codes).toEqual(['place.jobEnded']);
  });
});
