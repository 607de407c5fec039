import { describe, expect, it } from '@jest/globals';

import type { Row } from '@holdfast/domain';

import { factsOf, typedFacts } from './bay-facts.js';

const spec = {
  id: 's',
  version: 1,
  void: false,
  bayId: 'b',
  validFrom: '2026-01-01',
  spots: 2,
  equipment: [{ kind: 'twoPostLift', inUse: false, grips: 'points' }],
  capacity: '3500',
  capacityUnit: 'kg',
  maxLengthMm: null,
  maxHeightMm: 2100,
  maxWheelbaseMm: null,
  inspectedOn: '2026-03-02',
  inspectionOutcome: 'failed',
  inspectionIntervalMonths: 12,
  outOfUse: true,
  outOfUseWords: 'cable worn',
} as const satisfies Row<'baySpec'>;

describe('the facts of a bay in a form', () => {
  it('come out as they went in, so that a change of one field keeps the others', () => {
    expect(factsOf(typedFacts(spec, 'lb'))).toEqual({
      spots: 2,
      equipment: [{ kind: 'twoPostLift', inUse: false, grips: 'points' }],
      capacity: '3500',
      capacityUnit: 'kg',
      maxLengthMm: undefined,
      maxHeightMm: 2100,
      maxWheelbaseMm: undefined,
      inspectionIntervalMonths: 12,
      inspectedOn: '2026-03-02',
      inspectionOutcome: 'failed',
      outOfUse: true,
      outOfUseWords: 'cable worn',
    });
  });

  it('are none while a field holds what is no number, or a bay would have no spot', () => {
    const typed = typedFacts(null, 'kg');
    expect(factsOf({ ...typed, capacity: 'heavy' })).toBeNull();
    expect(factsOf({ ...typed, maxLengthMm: '4,5 m' })).toBeNull();
    expect(factsOf({ ...typed, spots: '0' })).toBeNull();
    expect(factsOf({ ...typed, spots: '' })).toBeNull();
  });

  it('say nothing of an inspection that has no day', () => {
    expect(factsOf(typedFacts(null, 'kg'))).not.toHaveProperty('inspectionOutcome');
  });
});
