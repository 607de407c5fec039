import { describe, expect, it } from '@jest/globals';
import { at, calendar, dayMs, ordered, said } from './given-orders.js';
import { trackRecord } from './track-record.js';

describe('the track record', () => {
  it('asks only with what was known, and sets our dates beside the day named and beside it with the usual slip', () => {
    const slips = Array.from({ length: 100 }, (_, i) => (i % 10 < 6 ? 0 : i % 10 < 8 ? 3 : 8));
    const lines = slips.map((slip, i) => {
      const orderedOn = calendar.nextWorkingDay('2026-01-05', i) ?? '';
      const due = calendar.nextWorkingDay(orderedOn, 10) ?? '';
      return ordered(`line ${String(i)}`, `${orderedOn}T09:00`, {
        words: [said(`${orderedOn}T09:00`, 'backorderedWithDate', due)],
        goodAt: at(`${calendar.nextWorkingDay(due, slip) ?? ''}T11:00`),
      });
    });
    const cuts = [40, 55, 70, 85, 100, 115, 130].map((day) => at('2026-01-05T12:00') + day * dayMs);
    const record = trackRecord(lines, { calendar, cuts, until: at('2026-09-30T12:00') });
    expect(record.asked).toBeGreaterThan(50);
    expect([record.undecided, record.compared]).toEqual([0, record.asked]);
    for (const { level, before, by } of record.levels) {
      expect(before).toBeLessThanOrEqual(level + 0.1);
      expect(by).toBeGreaterThanOrEqual(level - 0.1);
    }
    expect(record.loss?.ours).toBeLessThan(record.loss?.dayNamed ?? 0);
    expect(record.loss?.ours).toBeLessThan(record.loss?.dayNamedPlusSlip ?? 0);
  });

  it('calls a question undecided while nobody knows how it ended', () => {
    const line = ordered('a', '2026-02-02T09:00', { words: [said('2026-02-02T09:00', 'specialOrder', '2026-03-02')] });
    const record = trackRecord([line], { calendar, cuts: [at('2026-02-10T12:00')], until: at('2026-02-20T12:00') });
    expect(record).toMatchObject({ asked: 1, undecided: 1, compared: 0, loss: null });
  });
});
