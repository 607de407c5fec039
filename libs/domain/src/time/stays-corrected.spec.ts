import { describe, expect, it } from '@jest/globals';
import type { AddStay, CorrectStay } from '../inputs.js';
import { given, type GivenCircumstances, hour, minute, opening, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { placesOfVehicle, usesOfSpot } from '../timeline/lanes.js';
import { addStay, correctStay } from './correct-stay.js';

const nine = opening + hour;
/** In the yard from eight, in bay 1 from nine, and another vehicle in bay 2 all the while. */
const shop = () => given().shop().bay('b1').bay('b2').vehicle('v2').job('j2').inBay('b2').vehicle('v1').job('j1');
const moved = () => shop().inYard({ toAt: nine }).inBay('b1', { fromAt: nine });
const gone = () =>
  shop()
    .but('job', 'j1', { endedAt: tuesdayTen })
    .inYard({ toAt: nine })
    .inBay('b1', { fromAt: nine, toAt: tuesdayTen });
const add = (rows: Rows, over: Partial<AddStay> = {}, said: GivenCircumstances = {}) => {
  const input = { jobId: 'j1', kind: 'bay', bayId: 'b1', fromAt: opening, toAt: nine, words: 'So it was' } as const;
  return carryOut(addStay, rows, { ...input, ...over }, said);
};
const correct = (rows: Rows, over: Partial<CorrectStay>, said: GivenCircumstances = {}) =>
  carryOut(correctStay, rows, { placeId: 'j1-b1', words: 'Looked', ...over }, said);
const places = (rows: Rows) =>
  placesOfVehicle(rows, 'v1')
    .sort((a, b) => a.fromAt - b.fromAt)
    .map((one) => [one.kind, one.fromAt, one.toAt]);
const uses = (rows: Rows, bayId: string) =>
  usesOfSpot(rows, bayId, 1)
    .sort((a, b) => a.fromAt - b.fromAt)
    .map((use) => [use.vehicleId, use.kind, use.fromAt, use.toAt]);

describe('correctStay', () => {
  it('begins earlier or later, and the stay before it follows; the spot is used just as long', () => {
    for (const fromAt of [nine - minute, nine + minute]) {
      const { rows, codes } = correct(moved().rows(), { fromAt });
      expect(codes).toEqual([]);
      expect(places(rows)).toEqual([
        ['yard', opening, fromAt],
        ['bay', fromAt, null],
      ]);
      expect(uses(rows, 'b1')).toEqual([['v1', 'stands', fromAt, null]]);
    }
  });

  it('keeps every version: the stay and its neighbour are void, and what stood before is told with the words', () => {
    const { rows, outcome } = correct(moved().rows(), { fromAt: nine + minute });
    expect(rows.get('place', 'j1-b1').void && rows.get('place', 'j1-yard').void).toBe(true);
    expect(rows.get('spotUse', 'j1-b1-use').void).toBe(true);
    const [yard] = placesOfVehicle(rows, 'v1').filter((one) => one.kind === 'yard');
    expect(rows.list('correction')).toMatchObject([
      { kind: 'replaced', rowId: 'j1-b1', newRowId: outcome?.created?.['place'], before: { fromAt: nine } },
      { kind: 'replaced', rowId: 'j1-yard', newRowId: yard?.id, before: { toAt: nine }, words: 'Looked' },
    ]);
  });

  it('ends earlier or later, and what came after it follows, on the road with its spot kept as well', () => {
    const back = { kind: 'kept', fromAt: nine, toAt: null } as const;
    const out = shop()
      .inBay('b1', { toAt: nine })
      .place('out', { kind: 'roadTest', fromAt: nine })
      .row('spotUse', { ...moved().rows().get('spotUse', 'j1-b1-use'), id: 'kept', ...back });
    const { rows } = correct(out.rows(), { toAt: nine - minute });
    expect(places(rows)).toEqual([
      ['bay', opening, nine - minute],
      ['roadTest', nine - minute, null],
    ]);
    expect(uses(rows, 'b1')).toEqual([
      ['v1', 'stands', opening, nine - minute],
      ['v1', 'kept', nine - minute, null],
    ]);
  });

  it('takes another bay or spot, also of a visit that has ended', () => {
    const { rows, codes } = correct(gone().bay('b3', { spots: 2 }).rows(), { bayId: 'b3', spot: 2 });
    expect(codes).toEqual([]);
    expect(uses(rows, 'b1')).toEqual([]);
    expect(usesOfSpot(rows, 'b3', 2)).toMatchObject([{ vehicleId: 'v1', fromAt: nine, toAt: tuesdayTen }]);
    expect(correct(moved().rows(), { bayId: 'b2' }).codes).toEqual(['time.spotTaken']);
    expect(correct(moved().rows(), { spot: 3 }).codes).toEqual(['place.noSuchSpot']);
    expect(correct(moved().rows(), { bayId: 'x' }).codes).toEqual(['row.notFound']);
  });

  it('never puts two vehicles into a spot, by the stay itself or by the neighbour that follows (rule 1)', () => {
    const after = shop()
      .inBay('b1', { toAt: nine })
      .place('yard', { fromAt: nine })
      .vehicle('v3')
      .job('j3')
      .inBay('b1', { fromAt: nine });
    const clash = correct(after.rows(), { toAt: nine + minute });
    expect(clash.codes).toEqual(['time.spotTaken']);
    expect(clash.refusedFor).toMatchObject({ jobNumber: 3, spot: 1, fromAt: new Date(nine).toISOString(), runs: true });
    const next = correct(after.rows(), { placeId: 'yard', fromAt: nine + minute });
    expect(next.codes).toEqual(['time.spotTaken']);
  });

  it('never leaves a vehicle nowhere', () => {
    expect(correct(moved().rows(), { placeId: 'j1-yard', fromAt: opening + 1 }).codes).toEqual(['time.nowhere']);
    expect(correct(moved().rows(), { toAt: tuesdayTen - 1 }).codes).toEqual(['time.nowhere']);
    expect(correct(gone().rows(), { toAt: tuesdayTen - 1 }).codes).toEqual(['time.nowhere']);
  });

  it('stays within the visit and what has happened', () => {
    expect(correct(moved().rows(), { placeId: 'j1-yard', fromAt: opening - 1 }).codes).toEqual(['time.outsideVisit']);
    expect(correct(gone().rows(), { toAt: tuesdayTen + 1 }, { now: tuesdayTen + hour }).codes).toEqual([
      'time.outsideVisit',
    ]);
    expect(correct(gone().rows(), { toAt: null }).codes).toEqual(['time.cannotRun']);
    expect(correct(moved().rows(), { fromAt: tuesdayTen + 1 }).codes).toEqual(['time.inFuture']);
    const apart = { placeId: 'j1-yard', fromAt: nine + 1, toAt: nine + 2 };
    expect(correct(moved().rows(), apart).codes).toEqual(['time.otherStay']);
  });

  it('is of a stay in bay or yard, and changes something of it', () => {
    const out = shop().inYard({ toAt: nine }).place('out', { kind: 'roadTest', fromAt: nine }).rows();
    expect(correct(out, { placeId: 'out', fromAt: nine + 1 }).codes).toEqual(['time.notAStay']);
    expect(correct(moved().rows(), { placeId: 'j1-yard', bayId: 'b1' }).codes).toEqual(['time.notInBay']);
    expect(correct(moved().rows(), { bayId: 'b1', fromAt: nine }).codes).toEqual(['time.nothingChanged']);
    expect(correct(moved().rows(), { placeId: 'x' }).codes).toEqual(['row.notFound']);
  });
});

describe('addStay', () => {
  it('cuts a stay out of the one that was recorded, which goes on after it', () => {
    const { rows, outcome } = add(moved().rows(), {
      kind: 'yard',
      yardSpot: 'Y3',
      placeId: 'p9',
      fromAt: nine + minute,
      toAt: nine + 2 * minute,
    });
    expect(outcome?.created).toEqual({ place: 'p9' });
    expect(places(rows)).toEqual([
      ['yard', opening, nine],
      ['bay', nine, nine + minute],
      ['yard', nine + minute, nine + 2 * minute],
      ['bay', nine + 2 * minute, null],
    ]);
    expect(uses(rows, 'b1')).toEqual([
      ['v1', 'stands', nine, nine + minute],
      ['v1', 'stands', nine + 2 * minute, null],
    ]);
    expect(rows.list('correction')).toMatchObject([
      { kind: 'added', newRowId: 'p9', rowId: null },
      { kind: 'ended', rowId: 'j1-b1', newRowId: 'j1-b1' },
    ]);
  });

  it('replaces what lies within it', () => {
    const { rows } = add(moved().rows(), { fromAt: opening, toAt: nine, bayId: 'b1' });
    expect(places(rows)).toEqual([
      ['bay', opening, nine],
      ['bay', nine, null],
    ]);
  });

  it('refuses a taken spot, a bay that is not said, and times outside the visit', () => {
    expect(add(moved().rows(), { bayId: 'b2' }).codes).toEqual(['time.spotTaken']);
    expect(add(moved().rows(), { bayId: undefined }).codes).toEqual(['time.bayMissing']);
    expect(add(moved().rows(), { fromAt: opening - 1 }).codes).toEqual(['time.outsideVisit']);
    expect(add(moved().rows(), { toAt: opening }).codes).toEqual(['time.endBeforeStart']);
    expect(add(moved().rows(), { placeId: 'j1-b1' }).codes).toEqual(['time.alreadyRecorded']);
    expect(add(moved().rows(), { jobId: 'x' }).codes).toEqual(['row.notFound']);
    expect(add(shop().booked('j9').rows(), { jobId: 'j9' }).codes).toEqual(['time.notArrived']);
  });
});
