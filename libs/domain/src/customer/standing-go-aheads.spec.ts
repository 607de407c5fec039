import { describe, expect, it } from '@jest/globals';
import type { GiveStandingGoAhead } from '../inputs.js';
import { type Given, given, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { standing } from '../work/given-standing.js';
import { standingFor } from './standing.js';
import { endStandingGoAhead, giveStandingGoAhead } from './standing-go-aheads.js';

/** Of customer c1 two vans, one of them here; of c2 a third one that is here too. */
const shop = () => {
  const mine = given().shop().customer('c1').vehicle('v2').vehicle('v1').job('j1');
  return mine.customer('c2').vehicle('v3').job('j3');
};
const give = (input: Partial<GiveStandingGoAhead>, story: Given = shop()) =>
  carryOut(giveStandingGoAhead, story.rows(), {
    customerId: 'c1',
    kind: 'lookForFault',
    upTo: '0120.00',
    byName: 'Ida',
    ...input,
  });

describe('a standing go-ahead', () => {
  it('is for a visit, a vehicle, or where neither is named for all visits of the customer', () => {
    const of = (input: Partial<GiveStandingGoAhead>) => give(input).rows.list('standingGoAhead')[0];
    expect(of({})).toMatchObject({ customerId: 'c1', vehicleId: null, jobId: null, upTo: '120', untilDay: null });
    expect(of({ vehicleId: 'v2' })).toMatchObject({ vehicleId: 'v2', jobId: null });
    expect(of({ jobId: 'j1', vehicleId: 'v1' })).toMatchObject({ vehicleId: 'v1', jobId: 'j1' });
    expect(give({ standingGoAheadId: 's9' }).outcome?.created).toEqual({ standingGoAhead: 's9' });
  });
  it('is never for what is another customer’s, nor for a visit that is over', () => {
    expect(give({ jobId: 'j3' }).refusals).toMatchObject([
      { code: 'standing.ofOtherCustomer', facts: { table: 'job' } },
    ]);
    expect(give({ vehicleId: 'v3' }).refusals).toMatchObject([
      { code: 'standing.ofOtherCustomer', facts: { table: 'vehicle' } },
    ]);
    expect(give({ vehicleId: 'v2', jobId: 'j1' }).codes).toEqual(['standing.jobOfOtherVehicle']);
    expect(give({ jobId: 'j1' }, shop().but('job', 'j1', { endedAt: tuesdayTen })).codes).toEqual(['job.ended']);
    for (const missing of [{ customerId: 'c9' }, { vehicleId: 'v9' }, { jobId: 'j9' }]) {
      expect(give(missing).codes).toEqual(['row.notFound']);
    }
  });
  it('holds on its last day and not with one that is over; a fleet limit has its order number', () => {
    expect(give({ untilDay: '2026-03-10' }).codes).toEqual([]);
    expect(give({ untilDay: '2026-03-09' }).codes).toEqual(['standing.dayPast']);
    expect(give({ kind: 'fleetLimit' }).codes).toEqual(['standing.orderNumberMissing']);
    expect(give({ kind: 'fleetLimit', orderNumber: 'SK-7' }).codes).toEqual([]);
    expect(give({ standingGoAheadId: 's1' }, standing(shop(), 's1')).codes).toEqual(['standing.alreadyThere']);
  });
  it('ends once, with words', () => {
    const end = (standingGoAheadId: string, rows = standing(shop(), 's1').rows()) =>
      carryOut(endStandingGoAhead, rows, { standingGoAheadId, words: 'Used up' });
    const ended = end('s1').rows;
    expect(ended.get('standingGoAhead', 's1')).toMatchObject({ endedAt: tuesdayTen, endWords: 'Used up' });
    expect(end('s1', ended).codes).toEqual(['standing.ended']);
    expect(end('s9').codes).toEqual(['row.notFound']);
  });
});

describe('what covers a visit', () => {
  const day = '2026-03-10';
  const covering = (over: object, line: string | null = null) => {
    const rows = standing(shop().but('job', 'j1', {}), 's1', over).rows();
    return standingFor(rows, rows.get('job', 'j1'), line === null ? null : { id: line }, day).map(
      (one) => one.standing.id,
    );
  };
  it('is what the customer gave for it, for its vehicle or for all, while that holds', () => {
    expect(covering({})).toEqual(['s1']);
    expect(covering({ vehicleId: 'v1' })).toEqual(['s1']);
    expect(covering({ jobId: 'j1' })).toEqual(['s1']);
    expect(covering({ untilDay: day })).toEqual(['s1']);
    expect(covering({ vehicleId: 'v2' })).toEqual([]);
    expect(covering({ jobId: 'j3' })).toEqual([]);
    expect(covering({ customerId: 'c2' })).toEqual([]);
    expect(covering({ untilDay: '2026-03-09' })).toEqual([]);
    expect(covering({ endedAt: tuesdayTen })).toEqual([]);
  });
  it('says what lines of this visit took, but the line asked about and those dropped or declined', () => {
    const on = { standingId: 's1', price: '100', jobId: 'j1', vehicleId: 'v1' } as const;
    const story = standing(shop(), 's1', { upTo: '250' })
      .line('l1', on)
      .line('l2', { ...on, price: '30.50' })
      .line('l3', { ...on, progress: 'dropped' })
      .line('l4', { ...on, goAhead: 'declined' })
      .line('l5', { ...on, jobId: 'j3', vehicleId: 'v3' });
    const rows = story.rows();
    const left = (line: string | null) =>
      standingFor(rows, rows.get('job', 'j1'), line === null ? null : { id: line }, day).map(({ used, left }) => [
        used,
        left,
      ]);
    expect(left(null)).toEqual([['130.5', '119.5']]);
    expect(left('l2')).toEqual([['100', '150']]);
  });
});
