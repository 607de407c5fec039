import { describe, expect, it } from '@jest/globals';
import type { AddVehicle, CheckIn } from '../inputs.js';
import { type Given, given, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { addVehicle } from './add-vehicle.js';
import { changePromisedTime } from './change-promised-time.js';
import { checkIn } from './check-in.js';

const van: AddVehicle = { plate: 'qy 12-é', description: 'Panel van', kind: 'light', drive: 'combustion' };
const concerns = [{ words: 'Rattles', conditions: 'over kerbs' }];

describe('a vehicle that the shop has not seen', () => {
  const add = (input: Partial<AddVehicle>, story: Given = given().shop()) =>
    carryOut(addVehicle, story.rows(), { ...van, ...input });

  it('is found by its plate however it is typed, and rolls unless somebody says otherwise', () => {
    const { rows, outcome } = add({});
    const vehicle = rows.get('vehicle', outcome?.created?.['vehicle'] ?? '');
    expect(vehicle).toMatchObject({
      plate: 'qy 12-é',
      plateKey: 'QY12E',
      rolls: true,
      mayBeDriven: true,
      curbKg: null,
    });
  });
  it('that does not roll may not be driven either, unless that is said', () => {
    expect(add({ rolls: false }).rows.list('vehicle')[0]).toMatchObject({ rolls: false, mayBeDriven: false });
    expect(add({ mayBeDriven: false }).rows.list('vehicle')[0]).toMatchObject({ rolls: true, mayBeDriven: false });
  });
  it('keeps a doubtful VIN as it was read, and flags it (rule 15)', () => {
    const { rows } = add({ vin: ' 1m8gdm9axkp04278 ' });
    expect(rows.list('vehicle')[0]?.vin).toBe('1M8GDM9AXKP04278');
    expect(rows.list('flag').map(({ rule, facts }) => [rule, facts])).toEqual([['vin.doubtful', { characters: 16 }]]);
  });
  it('has no flag with a whole VIN or none', () => {
    expect(add({ vin: '1M8GDM9AXKP042788' }).rows.list('flag')).toEqual([]);
    expect(add({}).rows.list('flag')).toEqual([]);
  });
  it('keeps where a mass comes from; one without a source was told', () => {
    const { rows } = add({ curbKg: 2000, grossKg: 3500, grossSource: 'plate' });
    expect(rows.list('vehicle')[0]).toMatchObject({ curbSource: 'told', grossSource: 'plate' });
  });
  it('is kept beside another one with its plate, and the log names that one', () => {
    const { outcome } = add({}, given().shop().vehicle('old', { plateKey: 'QY12E' }));
    expect(outcome?.facts['samePlateAs']).toBe('old');
  });
  it('is refused under an id that is taken, or for a customer that is not there', () => {
    expect(add({ vehicleId: 'old' }, given().shop().vehicle('old')).codes).toEqual(['vehicle.alreadyThere']);
    expect(add({ customerId: 'nobody' }).codes).toEqual(['row.notFound']);
  });
});

describe('check-in', () => {
  const known = () => given().shop().customer('c1').contact('k1').vehicle('v1', { customerId: 'c1' });
  const come = (input: Partial<CheckIn> = {}, story: Given = known()) =>
    carryOut(checkIn, story.rows(), { vehicleId: 'v1', concerns, ...input });

  it('makes the job with the next number, its concerns in order, and puts the vehicle in the yard now', () => {
    const two = [...concerns, { words: 'Pulls left' }];
    const { rows, outcome } = come({ concerns: two, yardSpot: 'Y3', keyTag: '17', promisedAt: tuesdayTen + hour });
    const jobId = outcome?.created?.['job'] ?? '';
    expect(rows.get('job', jobId)).toMatchObject({
      number: 101,
      customerId: 'c1',
      kind: 'normal',
      keyTag: '17',
      checkedInAt: tuesdayTen,
      promisedAt: tuesdayTen + hour,
    });
    expect(rows.get('counter', 'counter').value).toBe(101);
    expect(rows.list('concern').map(({ position, words, outcome: none }) => [position, words, none])).toEqual([
      [1, 'Rattles', null],
      [2, 'Pulls left', null],
    ]);
    expect(rows.list('place')).toMatchObject([
      { jobId, kind: 'yard', yardSpot: 'Y3', movedHow: 'driven', fromAt: tuesdayTen, toAt: null },
    ]);
  });
  it('starts to count at 1 where no counter is there', () => {
    const story = known().but('counter', 'counter', { void: true });
    expect(come({}, story).rows.list('job')[0]?.number).toBe(1);
  });
  it('is refused while the vehicle is here, with the way to that job', () => {
    const here = come({}, known().job('j1', { number: 42 }));
    expect(here.refusals).toMatchObject([
      { code: 'job.alreadyHere', facts: { number: 42 }, way: { table: 'job', id: 'j1' } },
    ]);
    expect(come({}, known().job('j1', { endedAt: tuesdayTen - hour })).codes).toEqual([]);
  });
  it('takes the vehicle’s own customer, a known one or a new one; only an internal job goes without', () => {
    const stray = () => given().shop().vehicle('v1', { customerId: null });
    expect(come({}, stray()).codes).toEqual(['job.customerMissing']);
    expect(come({ kind: 'internal' }, stray()).rows.list('job')[0]?.customerId).toBeNull();
    const fresh = come({ customer: { customerId: 'c9', name: 'Dünn Haulage' } }, stray());
    expect(fresh.rows.get('customer', 'c9').nameKey).toBe('DUNNHAULAGE');
    expect(fresh.rows.get('vehicle', 'v1').customerId).toBe('c9');
    expect(fresh.outcome?.created?.['customer']).toBe('c9');
  });
  it('leaves the vehicle with the customer it had', () => {
    const { rows } = come({ customer: { name: 'Driver' } });
    expect(rows.get('vehicle', 'v1').customerId).toBe('c1');
    expect(rows.list('job')[0]?.customerId).not.toBe('c1');
  });
  it('takes one customer and one contact, and the contact is the customer’s', () => {
    const twoCustomers = known().customer('c2').contact('k2');
    expect(come({ customerId: 'c1', customer: { name: 'N' } }).codes).toEqual(['customer.twice']);
    expect(come({ customer: { customerId: 'c1', name: 'N' } }).codes).toEqual(['customer.alreadyThere']);
    expect(come({ customerId: 'nobody' }).codes).toEqual(['row.notFound']);
    expect(come({ contactId: 'k1', contact: { name: 'N' } }).codes).toEqual(['contact.twice']);
    expect(come({ contact: { contactId: 'k1', name: 'N' } }).codes).toEqual(['contact.alreadyThere']);
    expect(come({ contactId: 'k2' }, twoCustomers).codes).toEqual(['contact.ofOtherCustomer']);
    expect(come({ contactId: 'nobody' }).codes).toEqual(['row.notFound']);
    expect(come({ kind: 'internal', contact: { name: 'N' } }).codes).toEqual(['contact.ofOtherCustomer']);
    expect(come({ contactId: 'k1' }).rows.list('job')[0]?.contactId).toBe('k1');
  });
  it('lets a new contact bring the vehicle, and agree or collect only where that is said', () => {
    const { rows } = come({ contact: { contactId: 'k9', name: 'N', mayAgreeUpTo: '0150.50' } });
    expect(rows.get('contact', 'k9')).toMatchObject({
      customerId: 'c1',
      mayBring: true,
      mayAgreeUpTo: '150.5',
      mayAgreeAny: false,
      mayCollect: false,
    });
  });
  it('is refused under ids that are taken, for a vehicle that is not there or a promise that is over', () => {
    const before = known()
      .job('j1', { endedAt: tuesdayTen - hour })
      .concern('s1');
    expect(come({ jobId: 'j1' }, before).codes).toEqual(['job.alreadyThere']);
    expect(come({ concerns: [{ concernId: 's1', words: 'W' }] }, before).codes).toEqual(['concern.alreadyThere']);
    const same = { concernId: 's2', words: 'W' };
    expect(come({ concerns: [same, same] }).codes).toEqual(['concern.alreadyThere']);
    expect(come({ vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
    expect(come({ promisedAt: tuesdayTen - 1 }).codes).toEqual(['job.promisedInPast']);
    expect(come({ promisedAt: tuesdayTen }).codes).toEqual([]);
  });
  it('names for a comeback the line it comes back for, of this vehicle', () => {
    const earlier = () =>
      known()
        .job('j1', { endedAt: tuesdayTen - hour })
        .line('l1')
        .line('l2', { vehicleId: 'v2' });
    expect(come({ kind: 'comeback' }).codes).toEqual(['job.comebackLineMissing']);
    expect(come({ comebackOfLineId: 'l2' }, earlier()).codes).toEqual(['job.comebackOfOtherVehicle']);
    expect(come({ comebackOfLineId: 'l9' }, earlier()).codes).toEqual(['row.notFound']);
    const { rows } = come({ jobId: 'j2', comebackOfLineId: 'l1' }, earlier());
    expect(rows.get('job', 'j2')).toMatchObject({ kind: 'comeback', comebackOfLineId: 'l1' });
  });

  const km = (value: number) => ({ value, unit: 'km', source: 'read' }) as const;
  it('is never stopped by the odometer: not readable is kept as that, and nothing read is no reading (rule 15)', () => {
    const unreadable = come({ odometer: { unit: 'km', source: 'notReadable', value: 5 } });
    expect(unreadable.rows.list('odometerReading')).toMatchObject([
      { value: null, source: 'notReadable', doubtful: false },
    ]);
    expect(unreadable.rows.list('job')[0]?.odometerIn).toBeNull();
    expect(come({ odometer: { unit: 'km', source: 'read' } }).rows.list('odometerReading')[0]?.source).toBe(
      'notReadable',
    );
    expect(come().rows.list('odometerReading')).toEqual([]);
  });
  it('keeps a falling reading in doubt and flags it, in whatever unit', () => {
    const read = known().odometer('o1', 100_000);
    const falling = come({ odometer: km(99_999) }, read);
    expect(falling.rows.list('odometerReading').at(-1)).toMatchObject({ value: 99_999, doubtful: true });
    expect(falling.rows.list('flag').map(({ rule }) => rule)).toEqual(['odometer.falling']);
    expect(falling.rows.list('job')[0]?.odometerIn).toBe(99_999);
    expect(come({ odometer: km(100_000) }, read).rows.list('flag')).toEqual([]);
    // 62 137 mi are 99 999.8 km, 62 138 mi are 100 001.4 km (1 mi = 1609.344 m).
    expect(come({ odometer: { ...km(62_137), unit: 'mi' } }, read).rows.list('flag')).toHaveLength(1);
    expect(come({ odometer: { ...km(62_138), unit: 'mi' } }, read).rows.list('flag')).toEqual([]);
  });
  it('weighs a reading against the last one that is not in doubt itself', () => {
    const typo = known()
      .odometer('o1', 100_000)
      .odometer('o2', 1_000, { doubtful: true, effectiveAt: tuesdayTen - 1 });
    expect(come({ odometer: km(2_000) }, typo).rows.list('flag')).toHaveLength(1);
    expect(come({ odometer: km(100_001) }, typo).rows.list('flag')).toEqual([]);
  });
  it('keeps the unit of the vehicle’s last reading for the job, else the shop’s', () => {
    expect(come({}, known().odometer('o1', 5, { unit: 'mi' })).rows.list('job')[0]?.odometerUnit).toBe('mi');
    expect(come().rows.list('job')[0]?.odometerUnit).toBe('km');
    expect(come({}, known().but('shop', 'shop', { units: 'us' })).rows.list('job')[0]?.odometerUnit).toBe('mi');
  });
  it('records how the vehicle moves now, and brings it in no better than that', () => {
    const towed = come({ rolls: false, mayBeDriven: false });
    expect(towed.rows.get('vehicle', 'v1')).toMatchObject({ rolls: false, mayBeDriven: false });
    expect(towed.rows.list('place')[0]?.movedHow).toBe('towed');
    expect(come({ mayBeDriven: false }).rows.list('place')[0]?.movedHow).toBe('rolled');
    expect(come().rows.get('vehicle', 'v1').version).toBe(1);
  });
  it('begins the new place no earlier than the last one of the vehicle ended (rule 1)', () => {
    const before = known()
      .job('j0', { endedAt: tuesdayTen + 5 })
      .inYard({ toAt: tuesdayTen + 5 });
    expect(come({}, before).rows.list('place').at(-1)?.fromAt).toBe(tuesdayTen + 5);
  });
});

describe('the promised time', () => {
  const here = given()
    .shop()
    .vehicle('v1')
    .job('j1', { promisedAt: tuesdayTen + hour })
    .rows();
  const change = (promisedAt: number | null, rows = here, jobId = 'j1') =>
    carryOut(changePromisedTime, rows, { jobId, promisedAt });

  it('moves, or goes', () => {
    expect(change(tuesdayTen + 2 * hour).rows.get('job', 'j1').promisedAt).toBe(tuesdayTen + 2 * hour);
    expect(change(null).rows.get('job', 'j1').promisedAt).toBeNull();
  });
  it('is not promised for before now, nor on a job that is over or not there', () => {
    const over = given().shop().vehicle('v1').job('j1', { endedAt: tuesdayTen }).rows();
    expect(change(tuesdayTen - 1).codes).toEqual(['job.promisedInPast']);
    expect(change(null, over).codes).toEqual(['job.ended']);
    expect(change(null, here, 'j9').codes).toEqual(['row.notFound']);
  });
});
