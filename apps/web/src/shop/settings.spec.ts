import { describe, expect, it } from '@jest/globals';

import type { Row } from '@holdfast/domain';

import { changesByDay } from './settings.js';

const first = {
  id: 'a',
  version: 1,
  void: false,
  validFrom: '2026-01-01',
  graceMinutes: 10,
  tolerancePercent: '5',
  floorRecordsGoAheads: false,
  recheckMinutes: null,
  workGuaranteeMonths: 12,
  partGuaranteeMonths: 24,
  personFiguresToLeads: false,
} as const satisfies Row<'shopSetting'>;

describe('settings from a day on', () => {
  it('tell the last day first, with what it changes against the day before it', () => {
    const coming = { ...first, id: 'c', validFrom: '2027-01-01', graceMinutes: 5, floorRecordsGoAheads: true };
    const middle = { ...first, id: 'b', validFrom: '2026-06-01', graceMinutes: 5, tolerancePercent: '5.00' };
    expect(changesByDay([coming, first, middle])).toEqual([
      { id: 'c', validFrom: '2027-01-01', changes: [{ name: 'floorRecordsGoAheads', before: false, after: true }] },
      { id: 'b', validFrom: '2026-06-01', changes: [{ name: 'graceMinutes', before: 10, after: 5 }] },
    ]);
  });

  it('change nothing where a shop has had one set only', () => {
    expect(changesByDay([first])).toEqual([]);
  });
});
