import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Thread, readThread, sameThread, stressAreaByFormulaMm2, stressAreaOf } from './thread.js';

function thread(text: string): Thread {
  const read = readThread(text);
  if (read.thread === null) throw new Error(`${text}: ${read.doubt}`);
  return read.thread;
}

describe('a thread as written', () => {
  it('is coarse without a pitch, and says that nobody said so', () => {
    expect(thread('M8')).toEqual({ system: 'metric', diameterMm: 8, pitchMm: 1.25, pitchSaid: false });
    expect(thread('m8 x 1')).toEqual({ system: 'metric', diameterMm: 8, pitchMm: 1, pitchSaid: true });
    expect(thread('M22×1.5')).toMatchObject({ diameterMm: 22, pitchMm: 1.5 });
  });

  it('in inches has its threads per inch', () => {
    expect(thread('3/8-16')).toEqual({ system: 'unified', diameterIn: 0.375, threadsPerInch: 16, name: '3/8-16' });
    expect(thread('7/16-20 UNF')).toMatchObject({ diameterIn: 0.4375, threadsPerInch: 20 });
    expect(thread('#10-24')).toMatchObject({ diameterIn: 0.19 });
    expect(thread('1 1/8-12')).toMatchObject({ diameterIn: 1.125 });
  });

  it.each([
    ['3/8', 'pitchNeeded'],
    ['M22', 'pitchNeeded'],
    ['M8 x 30', 'pitchTooCoarse'],
    ['M8,5', 'comma'],
    ['M0x0', 'notAThread'],
    ['1/0-20', 'notAThread'],
    ['8', 'notAThread'],
    ['', 'notAThread'],
  ])('%s is refused', (text, doubt) => {
    expect(readThread(text)).toEqual({ thread: null, doubt });
  });
});

describe('two threads', () => {
  it('agree only in diameter and pitch, however near they look', () => {
    expect(sameThread(thread('M8'), thread('M8x1.25'))).toBe(true);
    expect(sameThread(thread('M8'), thread('M8x1'))).toBe(false);
    // 7.9375 mm and 1.411 mm: goes in by hand for a few turns.
    expect(sameThread(thread('M8'), thread('5/16-18'))).toBe(false);
    expect(sameThread(thread('3/8-16'), thread('3/8-24'))).toBe(false);
  });
});

describe('a stress area', () => {
  it('is smaller than the shank and greater for a finer thread', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        (d, share) => {
          const of = (pitchMm: number): Thread => ({ system: 'metric', diameterMm: d, pitchMm, pitchSaid: true });
          const coarse = stressAreaByFormulaMm2(of(share * d));
          const fine = stressAreaByFormulaMm2(of((share * d) / 2));
          expect(coarse).toBeLessThan(fine);
          expect(fine).toBeLessThan((Math.PI / 4) * d * d);
        },
      ),
    );
  });

  it('says whether it is printed or computed', () => {
    expect(stressAreaOf(thread('M10'))).toMatchObject({ mm2: 58, basis: 'table' });
    expect(stressAreaOf(thread('M10x1.25')).basis).toBe('formula');
    expect(stressAreaOf(thread('#10-24')).basis).toBe('formula');
  });
});
