import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, opening, tuesdayTen } from '../kernel/given.js';
import { recorded, usual } from '../kernel/given-usual.js';
import { carryOut } from '../settle/carry-out.js';
import { type TableName, tableNames, tables } from '../tables/tables.js';
import { mergeCustomers, mergeVehicles } from './merge.js';

/** The old record, `v2`, with one row of every table that can name a vehicle by a visit of its own; `v1` is kept. */
const two = () =>
  given()
    .shop()
    .bay('b1')
    .customer('c1')
    .contact('k1')
    .vehicle('v1', { plate: 'HB 1', vin: null, curbKg: null })
    .customer('c2')
    .contact('k2')
    .vehicle('v2', { plate: 'HB 2', vin: 'V2', curbKg: 1800, rolls: false, mayBeDriven: false })
    .odometer('o2', 10)
    .job('j2', { number: 2 })
    .inYard({ fromAt: opening - hour, toAt: opening })
    .inBay('b1')
    .line('l2')
    .hold('h2')
    .finding('f2')
    .wheel('w2', '1L')
    .call('call2')
    .followUp('fu2')
    .fix('fix2')
    .secondCheck('sc2')
    .part('p2')
    .caution('ca2')
    .report('r2')
    .sublet('s2')
    .row('standingGoAhead', {
      id: 'sg2',
      ...recorded,
      customerId: 'c2',
      vehicleId: 'v2',
      jobId: null,
      kind: 'smallThings',
      upTo: '50',
      orderNumber: null,
      byName: 'A',
      untilDay: null,
      endedAt: null,
      endWords: null,
    });
const merge = (of: Given = two(), over: object = {}) =>
  carryOut(mergeVehicles, of.rows(), {
    vehicleId: 'v1',
    otherId: 'v2',
    otherVersion: 1,
    words: 'Plate was misread',
    ...over,
  });
const mergeOwners = (of: Given = two(), over: object = {}) =>
  carryOut(mergeCustomers, of.rows(), {
    customerId: 'c1',
    otherId: 'c2',
    otherVersion: 1,
    words: 'Same firm',
    ...over,
  });

/** Every row that names the record in a column of its table, but for the one that says into which it was merged. */
const naming = ({ rows }: ReturnType<typeof merge>, table: TableName, id: string) =>
  tableNames.flatMap((name) =>
    Object.entries(tables[name].columns)
      .filter(([, { ref }]) => ref === table)
      .flatMap(([column]) =>
        rows
          .listAll(name)
          .filter((row) => (row as unknown as Record<string, unknown>)[column] === id)
          .map((row) => `${name} ${row.id}`),
      ),
  );

describe('two records of one vehicle', () => {
  it('become one: every row that names the other names the kept one', () => {
    const merged = merge();
    expect(naming(merged, 'vehicle', 'v2')).toEqual([]);
    const moved = naming(merged, 'vehicle', 'v1');
    expect(moved).toEqual(
      expect.arrayContaining([
        'job j2',
        'place j2-b1',
        'spotUse j2-b1-use',
        'workLine l2',
        'hold h2',
        'finding f2',
        'wheelRecord w2',
        'followUp fu2',
        'temporaryFix fix2',
        'secondCheck sc2',
        'partLine p2',
        'caution ca2',
        'report r2',
        'sublet s2',
        'standingGoAhead sg2',
        'odometerReading o2',
        'vehicle v2',
      ]),
    );
    expect(merged.outcome?.facts).toMatchObject({ vehicleId: 'v1', otherId: 'v2' });
  });
  it('keep plate and facts of the one, with what only the other knew; how it moves comes from the visit that is here', () => {
    const { rows } = merge();
    expect(rows.get('vehicle', 'v1')).toMatchObject({
      plate: 'HB 1',
      vin: 'V2',
      curbKg: 1800,
      grossKg: 2800,
      rolls: false,
    });
    expect(rows.get('vehicle', 'v2')).toMatchObject({ plate: 'HB 2', mergedIntoId: 'v1' });
    const gone = two().but('job', 'j2', { endedAt: tuesdayTen });
    expect(merge(gone).rows.get('vehicle', 'v1').rolls).toBe(true);
  });
  it('lead on from what was merged into the other before', () => {
    const { rows } = merge(two().vehicle('v3', { mergedIntoId: 'v2' }));
    expect(rows.get('vehicle', 'v3').mergedIntoId).toBe('v1');
  });
  it('are not merged while both are here, or where both were somewhere at one time', () => {
    const here = two().job('j1', { number: 1, vehicleId: 'v1' });
    expect(merge(here).refusals).toMatchObject([
      { code: 'merge.bothHere', facts: { number: 1, otherNumber: 2 }, way: { id: 'j2' } },
    ]);
    const was = (toAt: number) =>
      two()
        .row('job', { id: 'j1', ...usual.job, number: 1, vehicleId: 'v1', customerId: null, endedAt: toAt })
        .row('place', { id: 'p1', ...usual.place, jobId: 'j1', vehicleId: 'v1', fromAt: opening - 2 * hour, toAt });
    expect(merge(was(opening - hour)).codes).toEqual([]);
    expect(merge(was(opening - hour + 1)).codes).toEqual(['merge.placesOverlap']);
  });
  it('are two, known, and both as they were seen', () => {
    expect(merge(two(), { otherId: 'v1' }).codes).toEqual(['merge.withItself']);
    expect(merge(two(), { otherId: 'v9' }).codes).toEqual(['row.notFound']);
    expect(merge(two(), { vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
    expect(merge(two().but('vehicle', 'v2', { mergedIntoId: 'v3' })).codes).toEqual(['row.notFound']);
    expect(merge(two(), { otherVersion: 2 }).refusals).toMatchObject([
      { code: 'row.stale', facts: { id: 'v2', version: 2, current: 1 } },
    ]);
  });
});

describe('two records of one customer', () => {
  it('become one, with the contacts, vehicles, visits, calls and go-aheads of both', () => {
    const merged = mergeOwners();
    expect(naming(merged, 'customer', 'c2')).toEqual([]);
    expect(naming(merged, 'customer', 'c1')).toEqual(
      expect.arrayContaining(['contact k1', 'contact k2', 'vehicle v2', 'job j2', 'call call2', 'standingGoAhead sg2']),
    );
    expect(merged.rows.get('customer', 'c2')).toMatchObject({ name: 'c2', mergedIntoId: 'c1' });
  });
  it('are both as they were seen, and neither is erased', () => {
    expect(mergeOwners(two(), { otherVersion: 3 }).codes).toEqual(['row.stale']);
    expect(mergeOwners(two(), { otherId: 'c1' }).codes).toEqual(['merge.withItself']);
    expect(mergeOwners(two().but('customer', 'c2', { erasedAt: 1 })).codes).toEqual(['customer.erased']);
    expect(mergeOwners(two(), { otherId: 'c9' }).codes).toEqual(['row.notFound']);
  });
});
