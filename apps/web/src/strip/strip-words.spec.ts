import { describe, expect, it } from '@jest/globals';

import { say } from '@holdfast/contract';

import { formatsFor } from '../text/format.js';
import { segmentKinds, type StripData } from './strip-model.js';
import { segmentAt, segmentWords, stripSentence } from './strip-words.js';

const at = (hour: number, minute: number): number => Date.UTC(2026, 10, 25, hour, minute);
const words = {
  t: (key: Parameters<typeof say>[1], values?: Parameters<typeof say>[2]) => say('en-GB', key, values),
  format: formatsFor({ locale: 'en-GB', zone: 'Europe/London', currency: 'GBP', distanceUnit: 'mi' }),
};
const data: StripData = {
  from: at(8, 0),
  to: at(18, 0),
  now: at(12, 36),
  segments: [
    { from: at(8, 0), to: at(9, 24), kind: 'worked' },
    { from: at(9, 24), to: at(12, 36), kind: 'held', reason: 'parts', waiting: 'within' },
  ],
  stitched: [],
  forecast: { p50: at(15, 30), p80: at(16, 10), p95: at(17, 0) },
  promise: at(16, 0),
};

describe('the sentence of a strip', () => {
  it('says place, vehicle, state with its age, temporary fixes, forecast and promise', () => {
    const sentence = stripSentence({ name: 'Bay 2', vehicle: 'BN 03 TX', fixCount: 1 }, data, words);
    expect(sentence.replaceAll('\u00a0', ' ')).toBe(
      'Bay 2: BN 03 TX, held for parts since 09:24, 3 h 12; somebody waits, within the limit; ' +
        '1 temporary fix on this vehicle; ready about 15:30, 8 in 10 by 16:10; promised 16:00.',
    );
  });

  it('says that nothing is recorded rather than that a bay is empty', () => {
    const sentence = stripSentence({ name: 'Bay 3' }, { ...data, segments: [], forecast: null, promise: null }, words);
    expect(sentence).toBe('Bay 3: nothing recorded for now.');
  });

  it('takes what is planned for no state', () => {
    const planned = [{ from: at(12, 0), to: at(14, 0), kind: 'planned' } as const];
    expect(segmentAt(planned, data.now)).toBeNull();
  });

  it('has words for every kind of time', () => {
    const said = segmentKinds.map((kind) => segmentWords({ from: 0, to: 1, kind }, words));
    expect(new Set(said).size).toBe(segmentKinds.length);
  });
});
