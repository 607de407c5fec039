import { describe, expect, it } from '@jest/globals';
import type { GoAheadAnswer, JobLine } from './account-input.js';
import { waitsOfJob } from './job-waits.js';

const way = (
  lineId: string,
  goAhead: readonly (readonly [at: number, answer: GoAheadAnswer])[],
  more: Partial<JobLine> = {},
): JobLine => ({
  jobId: 'van',
  lineId,
  addedAt: 0,
  endedAt: null,
  after: null,
  choice: 'brakes',
  goAhead: goAhead.map(([at, answer]) => ({ at, answer })),
  ...more,
});
const waits = (...lines: readonly JobLine[]) =>
  waitsOfJob({ lines, holds: [], stored: [] }, 1000).map(({ from, to, reason }) => `${from}-${to} ${reason ?? ''}`);

describe('lines of one choice', () => {
  it('wait for the customer together until one is given, and the others no more', () => {
    expect(waits(way('new', [[400, 'given']]), way('mended', []))).toEqual(['0-400 goAhead']);
    expect(waits(way('mended', []), way('new', [[400, 'given']], { endedAt: 700 }))).toEqual(['0-400 goAhead']);
  });

  it('wait again when the word is taken back', () => {
    const new_ = way('new', [
      [400, 'given'],
      [600, 'declined'],
    ]);
    expect(waits(new_, way('mended', []))).toEqual(['0-400 goAhead', '600-1000 goAhead']);
  });

  it('do not settle a line of another choice, or of none', () => {
    const other = way('lamp', [], { choice: 'lamp' });
    expect(waits(way('new', [[400, 'given']], { endedAt: 500 }), other)).toEqual(['0-400 goAhead', '500-1000 goAhead']);
    const none = way('lamp', [], { choice: null });
    expect(waits(way('new', [[400, 'given']], { endedAt: 500 }), none)).toEqual(['0-400 goAhead', '500-1000 goAhead']);
  });
});
