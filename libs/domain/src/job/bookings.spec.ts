import { describe, expect, it } from '@jest/globals';
import type { BookJob, ChangeBooking, CheckIn, RecordArrival } from '../inputs.js';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { standing } from '../work/given-standing.js';
import { bookJob, changeBooking, recordArrival } from './bookings.js';
import { checkIn } from './check-in.js';

const noon = tuesdayTen + 2 * hour;
const known = () => given().shop().customer('c1').contact('k1').vehicle('v1');
const booked = (over: object = {}) => known().booked('j1', { contactId: 'k1', ...over });
const concerns = [{ words: 'Hums', conditions: 'above 80 km/h' }];

describe('a booking', () => {
  const book = (input: Partial<BookJob> = {}, story: Given = known()) =>
    carryOut(bookJob, story.rows(), { vehicleId: 'v1', expectedAt: noon, ...input }, { by: 'desk' });

  it('makes a visit that is expected, with its number, concerns and lines, and stands nowhere', () => {
    const lines = [{ lineId: 'l7', title: 'Look for the hum', bookMinutes: 60, price: '090.00' }, { title: 'Service' }];
    const { rows, outcome } = book({ jobId: 'j7', concerns, lines, contactId: 'k1', waitsHere: true });
    expect(rows.get('job', 'j7')).toMatchObject({
      number: 101,
      customerId: 'c1',
      contactId: 'k1',
      expectedAt: noon,
      arrivedAt: null,
      checkedInAt: null,
      waitsHere: true,
    });
    expect(rows.list('concern')).toMatchObject([{ jobId: 'j7', position: 1, words: 'Hums' }]);
    expect(rows.list('workLine')).toMatchObject([
      { id: 'l7', jobId: 'j7', vehicleId: 'v1', position: 1, price: '90', goAhead: 'withCustomer', payer: 'customer' },
      { position: 2, title: 'Service', price: null },
    ]);
    expect(rows.list('place')).toEqual([]);
    expect(outcome?.created).toEqual({ job: 'j7' });
  });
  it('is made for a vehicle that is here or booked already', () => {
    expect(book({}, booked()).codes).toEqual([]);
    expect(book({}, known().job('j0').inYard()).codes).toEqual([]);
  });
  it('is for today, whatever the hour, or a later day of the shop', () => {
    expect(book({ expectedAt: tuesdayTen - 10 * hour }).codes).toEqual([]);
    expect(book({ expectedAt: tuesdayTen - 10 * hour - 1 }).codes).toEqual(['job.expectedInPast']);
  });
  it('takes customer, comeback and promise as a check-in does', () => {
    const stray = () => known().but('vehicle', 'v1', { customerId: null });
    expect(book({}, stray()).codes).toEqual(['job.customerMissing']);
    expect(book({ customer: { customerId: 'c9', name: 'N' } }, stray()).rows.get('vehicle', 'v1').customerId).toBe(
      'c9',
    );
    expect(book({ customer: { name: ' ' } }).codes).toEqual(['customer.nameBlank']);
    expect(book({ contact: { name: ' ' } }).codes).toEqual(['contact.nameBlank']);
    expect(book({ kind: 'comeback' }).codes).toEqual(['job.comebackLineMissing']);
    expect(book({ promisedAt: tuesdayTen - 1 }).codes).toEqual(['job.promisedInPast']);
    const back = book(
      { jobId: 'j7', comebackOfLineId: 'l0', lines: [{ title: 'Again' }] },
      known().job('j0').line('l0'),
    );
    expect(back.rows.get('job', 'j7').kind).toBe('comeback');
    expect(back.rows.list('workLine', (line) => line.jobId === 'j7')).toMatchObject([{ payer: 'shop' }]);
  });
  it('is refused under ids that are taken, and for a vehicle that is not there', () => {
    expect(book({ jobId: 'j1' }, booked()).codes).toEqual(['job.alreadyThere']);
    expect(book({ concerns: [{ concernId: 's1', words: 'W' }] }, booked().concern('s1')).codes).toEqual([
      'concern.alreadyThere',
    ]);
    expect(book({ lines: [{ lineId: 'l1', title: 'T' }] }, booked().line('l1')).codes).toEqual([
      'work.alreadyRecorded',
    ]);
    expect(book({ vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
  });

  const change = (input: Partial<ChangeBooking>, story: Given = booked({ promisedAt: noon + hour })) =>
    carryOut(changeBooking, story.rows(), { jobId: 'j1', ...input }, { by: 'desk' });
  it('moves, and what is not said stays', () => {
    expect(change({ expectedAt: noon + hour }).rows.get('job', 'j1')).toMatchObject({
      expectedAt: noon + hour,
      promisedAt: noon + hour,
    });
    expect(change({ promisedAt: null, waitsHere: true }).rows.get('job', 'j1')).toMatchObject({
      expectedAt: noon,
      promisedAt: null,
      waitsHere: true,
    });
  });
  it('moves to no day that is over, and not once the vehicle came or the visit ended', () => {
    expect(change({ expectedAt: tuesdayTen - 24 * hour }).codes).toEqual(['job.expectedInPast']);
    expect(change({ promisedAt: tuesdayTen - 1 }).codes).toEqual(['job.promisedInPast']);
    expect(change({}, booked({ arrivedAt: tuesdayTen })).codes).toEqual(['job.alreadyHere']);
    expect(change({}, booked({ endedAt: tuesdayTen, endedHow: 'cancelled' })).codes).toEqual(['job.ended']);
    expect(change({ jobId: 'j9' }).codes).toEqual(['row.notFound']);
  });
});

describe('a vehicle that arrives', () => {
  const left = tuesdayTen - 3 * hour;
  const arrive = (input: Partial<RecordArrival> = {}, story: Given = booked()) =>
    carryOut(recordArrival, story.rows(), { jobId: 'j1', ...input }, { by: 'desk', effectiveAt: left });

  it('stands in the yard from when it came, and nobody has checked it in', () => {
    const { rows, outcome } = arrive({ placeId: 'p9', yardSpot: 'Y7', keyTag: 'K1' });
    expect(rows.get('job', 'j1')).toMatchObject({ arrivedAt: left, checkedInAt: null, keyTag: 'K1' });
    expect(rows.get('place', 'p9')).toMatchObject({ kind: 'yard', yardSpot: 'Y7', fromAt: left, toAt: null });
    expect(outcome?.created).toEqual({ place: 'p9' });
  });
  it('is not here on two visits at once: the other one is named', () => {
    const twice = known().job('j0', { number: 42 }).inYard().booked('j1');
    expect(arrive({}, twice).refusals).toMatchObject([
      { code: 'job.alreadyHere', facts: { number: 42 }, way: { table: 'job', id: 'j0' } },
    ]);
  });
  it('arrives once, on a visit that was not called off', () => {
    expect(arrive({}, booked({ arrivedAt: left })).codes).toEqual(['job.alreadyHere']);
    expect(arrive({}, booked({ endedAt: left, endedHow: 'cancelled' })).codes).toEqual(['job.ended']);
    expect(arrive({ jobId: 'j9' }).codes).toEqual(['row.notFound']);
    const before = known().job('j0', { endedAt: left }).inYard({ toAt: left }).booked('j1');
    expect(arrive({ placeId: 'j0-yard' }, before).codes).toEqual(['place.alreadyRecorded']);
  });
});

describe('a booked visit that is checked in', () => {
  const come = (
    input: Partial<CheckIn> = {},
    story: Given = booked({ promisedAt: noon + hour })
      .concern('s1')
      .line('l1'),
  ) =>
    carryOut(checkIn, story.rows(), { vehicleId: 'v1', expectedJobId: 'j1', concerns: [], ...input }, { by: 'desk' });

  it('goes on with its number, lines and concerns, and takes what is told now after them', () => {
    const { rows, outcome } = come({ concerns, yardSpot: 'Y3', keyTag: '17' });
    expect(rows.list('job')).toHaveLength(1);
    expect(rows.get('job', 'j1')).toMatchObject({
      number: 1,
      expectedAt: noon,
      arrivedAt: tuesdayTen,
      checkedInAt: tuesdayTen,
      promisedAt: noon + hour,
      contactId: 'k1',
      keyTag: '17',
    });
    expect(rows.list('concern').map(({ position, words }) => [position, words])).toEqual([
      [1, 'Rattles at the rear'],
      [2, 'Hums'],
    ]);
    expect(rows.get('counter', 'counter').value).toBe(100);
    expect(rows.list('place')).toMatchObject([{ jobId: 'j1', kind: 'yard', yardSpot: 'Y3' }]);
    expect(outcome?.created).toEqual({ job: 'j1' });
  });
  it('stands where it stands when it had arrived; its spot may be said now', () => {
    const there = () =>
      booked({ arrivedAt: tuesdayTen - hour, keyTag: 'K1' })
        .concern('s1')
        .inYard({ yardSpot: 'Y1', fromAt: tuesdayTen - hour });
    const { rows } = come({ yardSpot: 'Y9' }, there());
    expect(rows.list('place')).toMatchObject([
      { id: 'j1-yard', yardSpot: 'Y9', fromAt: tuesdayTen - hour, toAt: null },
    ]);
    expect(rows.get('job', 'j1')).toMatchObject({
      arrivedAt: tuesdayTen - hour,
      checkedInAt: tuesdayTen,
      keyTag: 'K1',
    });
    expect(come({}, there()).rows.get('place', 'j1-yard').yardSpot).toBe('Y1');
  });
  it('takes who is said now, and keeps the booked contact while the customer stays', () => {
    const other = () => booked().concern('s1').customer('c2').contact('k2').contact('k3', { customerId: 'c1' });
    const party = (input: Partial<CheckIn>, story = other()) => {
      const { customerId, contactId } = come(input, story).rows.get('job', 'j1');
      return [customerId, contactId];
    };
    expect(party({})).toEqual(['c1', 'k1']);
    expect(party({ customerId: 'c2' })).toEqual(['c2', null]);
    expect(party({ contactId: 'k3' })).toEqual(['c1', 'k3']);
    expect(party({ contactId: 'k2', customerId: 'c2' })).toEqual(['c2', 'k2']);
    const lent = other().but('job', 'j1', { customerId: 'c2', contactId: null });
    expect(party({ contactId: 'k2' }, lent)).toEqual(['c2', 'k2']);
  });
  it('stays the comeback it was booked as', () => {
    const back = () => booked({ kind: 'comeback', comebackOfLineId: 'l0' }).concern('s1');
    for (const input of [{}, { kind: 'comeback' as const }]) {
      const { rows, codes } = come(input, back());
      expect(codes).toEqual([]);
      expect(rows.get('job', 'j1')).toMatchObject({
        kind: 'comeback',
        comebackOfLineId: 'l0',
        checkedInAt: tuesdayTen,
      });
    }
    expect(come({ kind: 'normal' }, back()).rows.get('job', 'j1').kind).toBe('normal');
  });
  it('begins with at least one concern, booked or told now; so does one that nobody booked', () => {
    expect(come({}, booked()).codes).toEqual(['job.concernMissing']);
    expect(come({ concerns }, booked()).codes).toEqual([]);
    expect(come({ expectedJobId: undefined }, known()).codes).toEqual(['job.concernMissing']);
  });
  it('is of this vehicle, not checked in yet and not called off; and no other visit of it is here', () => {
    expect(come({ expectedJobId: 'j9' }).codes).toEqual(['row.notFound']);
    expect(come({ vehicleId: 'v2' }, booked().concern('s1').vehicle('v2')).codes).toEqual(['row.notFound']);
    expect(come({}, booked({ endedAt: tuesdayTen, endedHow: 'cancelled' }).concern('s1')).codes).toEqual([
      'job.calledOff',
    ]);
    expect(come({}, booked({ arrivedAt: tuesdayTen, checkedInAt: tuesdayTen }).concern('s1')).codes).toEqual([
      'job.alreadyHere',
    ]);
    const here = booked().concern('s1').job('j0', { number: 42 }).inYard();
    expect(come({}, here).refusals).toMatchObject([{ code: 'job.alreadyHere', facts: { number: 42 } }]);
    const unbooked = come({ expectedJobId: undefined, concerns }, booked({ arrivedAt: tuesdayTen - minute }).inYard());
    expect(unbooked.refusals).toMatchObject([{ code: 'job.alreadyHere', way: { table: 'job', id: 'j1' } }]);
  });
  it('brings what the customer agrees to in advance, which needs a customer', () => {
    const said = [{ kind: 'lookForFault', upTo: '120.00', byName: 'Ida' }] as const;
    const { rows } = come({ standingGoAheads: [...said] });
    expect(rows.list('standingGoAhead')).toMatchObject([{ customerId: 'c1', jobId: 'j1', upTo: '120' }]);
    const fleet = [{ kind: 'fleetLimit', upTo: '500', orderNumber: 'SK', byName: 'Ida' }] as const;
    expect(come({ standingGoAheads: [...fleet] }).rows.list('standingGoAhead')[0]?.jobId).toBeNull();
    const taken = standing(booked().concern('s1'), 'g1');
    expect(come({ standingGoAheads: [{ ...said[0], standingGoAheadId: 'g1' }] }, taken).codes).toEqual([
      'standing.alreadyThere',
    ]);
    const nobody = known().but('vehicle', 'v1', { customerId: null });
    const internal = { expectedJobId: undefined, kind: 'internal' as const, concerns, standingGoAheads: [...said] };
    expect(come(internal, nobody).codes).toEqual(['job.customerMissing']);
  });
});
