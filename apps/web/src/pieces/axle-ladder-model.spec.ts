import { wheelPosition } from '@holdfast/domain';
import { describe, expect, it } from '@jest/globals';

import { allPlaces, axlesOf, rungsOf, stateOfWheel } from './axle-ladder-model.js';

describe('the axle ladder', () => {
  it('has two rungs of single wheels for a light vehicle', () => {
    expect(rungsOf(axlesOf('light', []), [])).toEqual([
      { axle: 1, left: ['1L'], right: ['1R'] },
      { axle: 2, left: ['2L'], right: ['2R'] },
    ]);
  });

  it('has twins behind on a heavy vehicle, the outer ones at the ends', () => {
    expect(rungsOf(axlesOf('heavy', []), [])[1]).toEqual({ axle: 2, left: ['2LO', '2LI'], right: ['2RI', '2RO'] });
  });

  it('has one wheel on each axle of a motorcycle', () => {
    expect(allPlaces(rungsOf(axlesOf('motorcycle', []), []))).toEqual(['1L', '2L', 'spare']);
  });

  it('grows with what was recorded, and never hides a wheel that was recorded', () => {
    const recorded = ['1L', '3RO', '2L', 'spare'];
    const axles = { ...axlesOf('light', recorded), twins: [2, 3] };
    expect(axles.count).toBe(3);
    const places = allPlaces(rungsOf(axles, recorded));
    expect(recorded.filter((one) => !places.includes(one))).toEqual([]);
  });

  it('has only places that the wire knows', () => {
    const places = allPlaces(rungsOf({ count: 9, twins: [1, 5, 9], middle: false }, []));
    expect(places.filter((one) => !wheelPosition.test(one))).toEqual([]);
    expect(new Set(places).size).toBe(places.length);
  });
});

describe('the state of a wheel', () => {
  it('is missing its torque from the moment it is on until it is tightened', () => {
    expect(stateOfWheel(undefined)).toBe('asItWas');
    expect(stateOfWheel({ offAt: 1, onAt: null, torquedAt: null })).toBe('off');
    expect(stateOfWheel({ offAt: 1, onAt: 2, torquedAt: null })).toBe('untorqued');
    expect(stateOfWheel({ offAt: 1, onAt: 2, torquedAt: 3 })).toBe('torqued');
  });
});
