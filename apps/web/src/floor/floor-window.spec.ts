import { fromSnapshot } from '@holdfast/board';
import { sameHours } from '@holdfast/shop-calendar';
import { describe, expect, it } from '@jest/globals';

import { nowShare } from '../strip/strip-scale.js';
import { floorWindow } from './floor-window.js';

const days = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const hours = { id: 'hours', version: 1, validFrom: '2020-01-01', week: sameHours([...days], [['08:00', '17:00']]) };
const board = fromSnapshot(
  {
    epoch: 'epoch',
    seq: 1,
    rows: {
      shop: [{ id: 'shop', version: 1, name: 'Quay', zone: 'UTC', currency: 'EUR', units: 'metric', locale: 'en-GB' }],
      openingHours: [{ ...hours, breaks: sameHours([...days], []) }],
    },
  },
  'staff',
);
/** Wednesday 25 November 2026 in UTC. */
const at = (hour: number, minute = 0): number => Date.UTC(2026, 10, 25, hour, minute);
const hour = 3_600_000;

describe('the window of the floor', () => {
  it('begins with the opening of the working day', () => {
    expect(floorWindow(board, at(14)).from).toBe(at(8));
  });

  it('goes four hours back in the first minutes of a day, so that they are not stretched', () => {
    expect(floorWindow(board, at(8, 20)).from).toBe(at(8, 20) - 4 * hour);
  });

  it('goes eight hours back before the day has opened', () => {
    expect(floorWindow(board, at(6)).from).toBe(at(6) - 8 * hour);
  });

  it('has past and future at one pace with now at its fixed place', () => {
    const { from, to } = floorWindow(board, at(13));
    expect((at(13) - from) / (to - from)).toBeCloseTo(nowShare, 6);
  });
});
