import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type PartEvent, type PlacedReading, partSeries, projectWear } from './part-series.js';

const reading = (at: number, place: string, mm: number, km: number | null = at * 1000): PlacedReading => ({
  at,
  place,
  km,
  mm,
});

describe('a series', () => {
  it('goes with the tyre when wheels change places, all at once', () => {
    const swap: PartEvent = {
      at: 15,
      kind: 'moved',
      moves: [
        { from: '1L', to: '2L' },
        { from: '2L', to: '1L' },
      ],
    };
    const series = partSeries(
      [reading(10, '1L', 7), reading(10, '2L', 5), reading(20, '1L', 4), reading(20, '2L', 6)],
      [swap],
    );
    expect(series.map((one) => [one.placeNow, one.readings.map(({ mm }) => mm)])).toEqual([
      ['2L', [7, 6]],
      ['1L', [5, 4]],
    ]);
  });

  it('ends at replacement, and a new one begins', () => {
    const series = partSeries(
      [reading(10, '1L', 3), reading(20, '1L', 8)],
      [{ at: 15, kind: 'replaced', places: ['1L'] }],
    );
    expect(series.map((one) => [one.placeNow, one.readings.length])).toEqual([
      [null, 1],
      ['1L', 1],
    ]);
    expect(series[1]?.readings[0]?.deeperThanBefore).toBe(false);
  });

  it('that grows deeper without a change is kept and named', () => {
    const [series] = partSeries([reading(10, '1L', 4), reading(20, '1L', 4.2), reading(30, '1L', 6)], []);
    expect(series?.readings.map(({ deeperThanBefore }) => deeperThanBefore)).toEqual([false, false, true]);
  });

  it('loses no reading and doubles none, whatever happened to the wheels', () => {
    const place = fc.constantFrom('1L', '1R', '2L', '2R', 'spare');
    const event = fc.oneof(
      fc.record({ at: fc.nat(50), kind: fc.constant('replaced' as const), places: fc.uniqueArray(place) }),
      fc
        .record({
          at: fc.nat(50),
          kind: fc.constant('moved' as const),
          order: fc.shuffledSubarray(['1L', '1R', '2L', '2R', 'spare']),
        })
        .map(({ at, kind, order }) => ({
          at,
          kind,
          moves: order.map((from, index) => ({ from, to: order[(index + 1) % order.length] ?? from })),
        })),
    );
    const taken = fc
      .record({ at: fc.nat(50), place, mm: fc.nat(9) })
      .map(({ at, place: where, mm }) => reading(at, where, mm));
    fc.assert(
      fc.property(fc.array(taken), fc.array(event), (readings, events) => {
        const series = partSeries(readings, events);
        const all = series.flatMap((one) => one.readings.map(({ at, place: where, mm }) => `${at} ${where} ${mm}`));
        expect(all.sort()).toEqual(readings.map(({ at, place: where, mm }) => `${at} ${where} ${mm}`).sort());
        const standing = series.flatMap(({ placeNow }) => (placeNow === null ? [] : [placeNow]));
        expect(new Set(standing).size).toBe(standing.length);
      }),
    );
  });
});

describe('wear', () => {
  it('is not projected from one reading, nor where none is measured', () => {
    const project = (...rows: PlacedReading[]) =>
      projectWear(partSeries(rows, [])[0] ?? { placeNow: null, readings: [] }, 1.6);
    expect(project(reading(1, '1L', 6))).toEqual({ basis: 'none', because: 'tooFewReadings' });
    expect(project(reading(1, '1L', 6), reading(2, '1L', 6))).toEqual({ basis: 'none', because: 'noWearMeasured' });
  });

  it('reaches the limit on the line through its readings, by distance where that is known', () => {
    const rows = [reading(10, '1L', 8), reading(20, '1L', 6)];
    const [series] = partSeries(rows, []);
    if (series === undefined) throw new Error('No series.');
    expect(projectWear(series, 2)).toMatchObject({
      basis: 'distance',
      atKm: 40_000,
      alreadyAtLimit: false,
      readings: 2,
    });
    const [timed] = partSeries(
      rows.map((row) => ({ ...row, km: null })),
      [],
    );
    if (timed === undefined) throw new Error('No series.');
    expect(projectWear(timed, 2)).toMatchObject({ basis: 'time', at: 40, atKm: null });
  });

  it('is not thrown off by one wrong reading among five', () => {
    const rows = [8, 7.5, 7, 2, 6].map((mm, at) => reading(at * 10, '1L', mm));
    const [series] = partSeries(rows, []);
    if (series === undefined) throw new Error('No series.');
    const projected = projectWear(series, 2);
    if (projected.basis !== 'distance') throw new Error(projected.basis);
    expect(projected.rate).toBeGreaterThan(0.04);
    expect(projected.rate).toBeLessThan(0.3);
  });
});
