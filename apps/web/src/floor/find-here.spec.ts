import type { Visit } from '@holdfast/board';
import { describe, expect, it } from '@jest/globals';

import { findHere } from './find-here.js';

/** Thirty vehicles in the yard: keys 1 to 30, spots A1 to A30. */
const yard = Array.from({ length: 30 }, (_, at): Visit => {
  const n = at + 1;
  return {
    job: { number: 400 + n, keyTag: String(n) },
    vehicle: { plate: `KX ${String(10 + n)} ABC` },
    customer: { name: `Quay Freight ${String(n)}` },
    contact: { name: n === 17 ? 'Zoe Mensah' : 'Somebody Else' },
    place: { kind: 'yard', yardSpot: `A${String(n)}` },
  } as unknown as Visit;
});
const numbers = (typed: string): number[] => findHere(yard, typed).map(({ job }) => job.number);

describe('finding one of thirty vehicles', () => {
  it('takes a plate however it is written', () => {
    expect(numbers('kx27')).toEqual([417]);
    expect(numbers('KX-27 abc')).toEqual([417]);
  });

  it('takes a name from any of its words', () => {
    expect(numbers('mens')).toEqual([417]);
  });

  it('puts the key that was typed whole before those that only begin so', () => {
    expect(numbers('2')[0]).toBe(402);
    expect(numbers('2')).toContain(420);
  });

  it('takes a yard spot', () => {
    expect(numbers('a7')[0]).toBe(407);
  });

  it('finds nothing where nothing was typed, or nothing begins so', () => {
    expect(numbers('')).toEqual([]);
    expect(numbers('zzz')).toEqual([]);
  });
});
