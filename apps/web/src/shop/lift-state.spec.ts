import { describe, expect, it } from '@jest/globals';

import { Rows, type Row } from '@holdfast/domain';

import { asksForCare, liftState } from './lift-state.js';

const row = { version: 1, void: false };
const spec = {
  ...row,
  id: 'spec',
  bayId: 'b',
  validFrom: '2020-01-01',
  spots: 1,
  equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
  capacity: '3500',
  capacityUnit: 'kg',
  maxLengthMm: null,
  maxHeightMm: null,
  maxWheelbaseMm: null,
  inspectedOn: '2025-03-02',
  inspectionOutcome: 'passed',
  inspectionIntervalMonths: 12,
  outOfUse: false,
  outOfUseWords: null,
} as const satisfies Row<'baySpec'>;

type Content = { readonly [table: string]: readonly object[] };
const rowsWith = (content: Content): Rows => Rows.of(content);
const inspection = (inspectedOn: string, outcome: 'passed' | 'failed', intervalMonths: number | null = 12) => ({
  ...row,
  ...{ id: inspectedOn, bayId: 'b', inspectedOn, outcome, intervalMonths, inspector: null, words: null, recordedAt: 1 },
});
const decision = (untilDay: string) => ({
  ...row,
  ...{ id: 'd', bayId: 'b', inspectedOn: '2025-03-02', untilDay, words: 'booked for Friday' },
});

describe('how the lift of a bay stands with its inspections', () => {
  it('is in date on the last day that the inspection covers, and overdue on the day after', () => {
    expect(liftState(rowsWith({}), spec, '2026-03-02')).toMatchObject({ kind: 'inDate', daysLeft: 0 });
    expect(liftState(rowsWith({}), spec, '2026-03-03')).toMatchObject({ kind: 'overdue', daysOver: 1, decision: null });
  });

  it('counts the last day of a decision as one, and knows when it is over', () => {
    const rows = rowsWith({ liftDecision: [decision('2026-03-10')] });
    expect(liftState(rows, spec, '2026-03-10')).toMatchObject({ decision: { daysLeft: 1 } });
    expect(liftState(rows, spec, '2026-03-11')).toMatchObject({ decision: { daysLeft: 0 } });
  });

  it('is what the last recorded inspection says, whatever the facts of the bay told', () => {
    const failed = rowsWith({ liftInspection: [inspection('2026-01-05', 'failed')] });
    expect(liftState(failed, spec, '2026-01-06')).toEqual({ kind: 'failed', on: '2026-01-05' });
    const passed = rowsWith({ liftInspection: [inspection('2026-01-05', 'passed', 6)] });
    expect(liftState(passed, spec, '2026-01-06')).toMatchObject({ kind: 'inDate', dueOn: '2026-07-05' });
  });

  it('is nothing where nothing lifts, and asks for care where no inspection is known', () => {
    const flat = { ...spec, equipment: [{ kind: 'flat', inUse: true, grips: null }] } as const;
    expect(liftState(rowsWith({}), flat, '2026-03-03')).toEqual({ kind: 'noLift' });
    const unknown = liftState(rowsWith({}), { ...spec, inspectedOn: null }, '2026-03-03');
    expect(unknown).toEqual({ kind: 'notInspected' });
    expect(asksForCare(unknown)).toBe(true);
  });

  it('asks for care from thirty days before it is due', () => {
    expect(asksForCare(liftState(rowsWith({}), spec, '2026-01-30'))).toBe(false);
    expect(asksForCare(liftState(rowsWith({}), spec, '2026-01-31'))).toBe(true);
  });
});
