import { describe, expect, it } from '@jest/globals';
import type { CorrectVehicle, RecordOdometer } from '../inputs.js';
import { type Given, given, type GivenCircumstances, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { correctVehicle } from './correct-vehicle.js';
import { recordOdometer } from './record-odometer.js';
import { setBoardNote } from './set-board-note.js';

const van = () => given().shop().vehicle('v1', { vin: '1M8GDM9AXKP042788', weighedKg: null });
const correct = (input: Partial<CorrectVehicle>, said: GivenCircumstances = {}) =>
  carryOut(correctVehicle, van().rows(), { vehicleId: 'v1', ...input }, said);
const kept = (input: Partial<CorrectVehicle>) =>
  correct(input)
    .rows.list('vehicleCorrection')
    .map(({ field, before, after, source }) => [field, before, after, source]);

describe('a correction of a vehicle', () => {
  it('keeps both values of each fact that changed, with source and words', () => {
    const input = {
      plate: ' qy 9-é ',
      description: 'Panel van',
      curbKg: 2100,
      curbSource: 'papers',
      words: 'Read again',
    } as const;
    const { rows, outcome } = correct(input);
    expect(rows.get('vehicle', 'v1')).toMatchObject({
      plate: 'qy 9-é',
      plateKey: 'QY9E',
      curbKg: 2100,
      curbSource: 'papers',
    });
    expect(kept(input)).toEqual([
      ['plate', 'v1', 'qy 9-é', null],
      ['curbKg', '2000', '2100', 'papers'],
    ]);
    expect(rows.list('vehicleCorrection')[0]).toMatchObject({
      vehicleId: 'v1',
      words: 'Read again',
      recordedAt: tuesdayTen,
    });
    expect(outcome?.facts).toEqual({ vehicleId: 'v1', fields: 'plate curbKg' });
  });
  it('tells where a weight comes from, and takes away what is not known after all', () => {
    expect(kept({ weighedKg: 2300 })).toEqual([['weighedKg', null, '2300', 'weighed']]);
    expect(kept({ grossKg: 3000, grossSource: 'plate' })).toEqual([['grossKg', '2800', '3000', 'plate']]);
    expect(kept({ vin: null, notes: 'Low roof' })).toEqual([
      ['vin', '1M8GDM9AXKP042788', null, null],
      ['notes', null, 'Low roof', null],
    ]);
  });
  it('of a mass is owner’s or manager’s, and says where it was read (rule 4)', () => {
    for (const mass of [
      { curbKg: 1, curbSource: 'told' },
      { grossKg: 1, grossSource: 'told' },
      { weighedKg: 1 },
    ] as const) {
      expect(correct(mass, { by: 'desk' }).codes).toEqual(['vehicle.massByLead']);
      for (const by of ['owner', 'manager'] as const) expect(correct(mass, { by }).codes).toEqual([]);
    }
    expect(correct({ curbKg: 2100 }).codes).toEqual(['vehicle.massSourceMissing']);
    expect(correct({ grossKg: 2900 }).codes).toEqual(['vehicle.massSourceMissing']);
    expect(correct({ plate: 'X1' }, { by: 'desk' }).codes).toEqual([]);
  });
  it('keeps a doubtful VIN and flags it; never refuses it (rule 15)', () => {
    const doubtful = correct({ vin: ' abc ' });
    expect(doubtful.rows.get('vehicle', 'v1').vin).toBe('ABC');
    expect(doubtful.rows.list('flag').map(({ rule }) => rule)).toEqual(['vin.doubtful']);
    expect(correct({ vin: '1M8GDM9AXKP042789' }).rows.list('flag')).toEqual([]);
    expect(correct({ vin: null }).rows.list('flag')).toEqual([]);
  });
  it('that says what stands there is none', () => {
    expect(correct({ plate: 'v1', kind: 'light' }).codes).toEqual(['vehicle.nothingChanged']);
    expect(correct({}).codes).toEqual(['vehicle.nothingChanged']);
    expect(correct({ vehicleId: 'v9', plate: 'X' }).codes).toEqual(['row.notFound']);
  });
});

describe('the odometer, read at any time', () => {
  const here = () => van().job('j1').odometer('o1', 100_000).vehicle('v2').job('j2');
  const read = (input: Partial<RecordOdometer>, story: Given = here()) =>
    carryOut(
      recordOdometer,
      story.rows(),
      { vehicleId: 'v1', unit: 'km', source: 'read', value: 100_100, ...input },
      { by: 'technician' },
    );
  it('is kept on the visit that is named or on, and between visits on none', () => {
    expect(read({}).rows.list('odometerReading').at(-1)).toMatchObject({
      vehicleId: 'v1',
      jobId: 'j1',
      value: 100_100,
    });
    expect(read({ jobId: 'j1' }).rows.list('odometerReading').at(-1)?.jobId).toBe('j1');
    expect(read({}, van()).rows.list('odometerReading').at(-1)?.jobId).toBeNull();
  });
  it('is kept and flagged when it fell, and kept as not readable (rule 15)', () => {
    const falling = read({ value: 99_999 });
    expect(falling.rows.list('odometerReading').at(-1)).toMatchObject({ value: 99_999, doubtful: true });
    expect(falling.rows.list('flag').map(({ rule }) => rule)).toEqual(['odometer.falling']);
    expect(read({ value: undefined, source: 'notReadable' }).rows.list('odometerReading').at(-1)).toMatchObject({
      value: null,
      source: 'notReadable',
    });
  });
  it('has a value, and a visit of this vehicle', () => {
    expect(read({ value: undefined }).codes).toEqual(['odometer.valueMissing']);
    expect(read({ jobId: 'j2' }).codes).toEqual(['row.notFound']);
    expect(read({ vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
  });
});

describe('the board note', () => {
  const note = (words: string | null, over: object = {}, jobId = 'j1') =>
    carryOut(
      setBoardNote,
      van()
        .job('j1', { boardNote: 'Old', ...over })
        .rows(),
      { jobId, note: words },
    );
  it('is set, or taken away', () => {
    expect(note('Dog in the boot').rows.get('job', 'j1').boardNote).toBe('Dog in the boot');
    expect(note(null).rows.get('job', 'j1').boardNote).toBeNull();
  });
  it('is not put on a visit that is over or not there', () => {
    expect(note('N', { endedAt: tuesdayTen }).codes).toEqual(['job.ended']);
    expect(note('N', {}, 'j9').codes).toEqual(['row.notFound']);
  });
});
