import { describe, expect, it } from '@jest/globals';
import type { StrikeEntry } from '../inputs.js';
import { given, hour, opening } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { strikeEntry } from './strike-entry.js';

const nine = opening + hour;
const van = () =>
  given()
    .shop()
    .vehicle('v1')
    .job('j1')
    .inYard()
    .concern('k1')
    .line('l1', { progress: 'stopped', startedAt: opening })
    .clock('c1', { toAt: nine });
const strike = (rows: Rows, table: StrikeEntry['table'], id: string, more: Partial<StrikeEntry> = {}) =>
  carryOut(strikeEntry, rows, { table, id, words: 'Wrong vehicle', ...more });

describe('strikeEntry', () => {
  it('voids the row and keeps it with the words', () => {
    const { rows, outcome } = strike(van().odometer('o1', 900_000).rows(), 'odometerReading', 'o1');
    expect(rows.get('odometerReading', 'o1').void).toBe(true);
    expect(rows.list('correction')).toMatchObject([
      {
        ...{ kind: 'struck', tableName: 'odometerReading', rowId: 'o1', newRowId: null, vehicleId: 'v1' },
        before: { value: 900_000 },
        words: 'Wrong vehicle',
      },
    ]);
    expect(outcome?.facts).toMatchObject({ table: 'odometerReading', id: 'o1', vehicleId: 'v1' });
  });

  it('plans a line again whose only clock was struck, also one that was withdrawn: nothing is put back', () => {
    const rows = van().but('workLine', 'l1', { withdrawnAt: nine, goAhead: 'declined' }).rows();
    expect(strike(rows, 'clock', 'c1').rows.get('workLine', 'l1')).toMatchObject({
      progress: 'planned',
      startedAt: null,
    });
    const two = van().clock('c2', { fromAt: nine }).rows();
    expect(strike(two, 'clock', 'c1').rows.get('workLine', 'l1')).toMatchObject({
      progress: 'started',
      startedAt: nine,
    });
    const done = van().but('workLine', 'l1', { progress: 'done', endedAt: nine }).rows();
    expect(strike(done, 'clock', 'c1').rows.get('workLine', 'l1')).toMatchObject({
      progress: 'done',
      startedAt: opening,
    });
  });

  it('takes along what a hold names', () => {
    const { rows } = strike(van().part('p1').hold('h1', {}, ['l1'], ['p1']).rows(), 'hold', 'h1');
    expect([rows.list('hold'), rows.list('holdLine'), rows.list('holdPart')]).toEqual([[], [], []]);
  });

  it('leaves what another row rests on', () => {
    const found = van().finding('f1');
    expect(strike(found.rows(), 'finding', 'f1').codes).toEqual([]);
    const named = found.but('workLine', 'l1', { findingId: 'f1' }).rows();
    const { codes, refusedFor, refusals } = strike(named, 'finding', 'f1');
    expect([codes, refusedFor]).toEqual([['entry.named'], { table: 'finding', by: 'workLine' }]);
    expect(refusals[0]?.way).toEqual({ table: 'workLine', id: 'l1' });
    const again = van().hold('h1').hold('h2', { againOfId: 'h1' }).rows();
    expect(strike(again, 'hold', 'h1').refusedFor).toEqual({ table: 'hold', by: 'hold' });
  });

  it('strikes no place: a vehicle is somewhere', () => {
    expect(strike(van().rows(), 'place', 'j1-yard').codes).toEqual(['entry.placeStays']);
  });

  it('is of a row that is there, in the state that was seen', () => {
    const rows = van().rows();
    expect(strike(rows, 'clock', 'x').codes).toEqual(['row.notFound']);
    expect(strike(rows, 'clock', 'c1', { version: 2 }).refusedFor).toMatchObject({ version: 2, current: 1 });
    const once = strike(rows, 'clock', 'c1', { version: 1 });
    expect([once.codes, strike(once.rows, 'clock', 'c1').codes]).toEqual([[], ['row.notFound']]);
  });
});
