import { describe, expect, it } from '@jest/globals';
import { calendarOf } from './calendar.js';
import { sameHours } from './calendar-rules.js';
import { faultsInDeliveryRules, nextRun, runsWithCutOff } from './delivery-runs.js';
import { weekdays } from './local-dates.js';

const working = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const shop = calendarOf({
  zone: 'Europe/London',
  hours: [{ validFrom: '2000-01-01', week: sameHours(working, [['08:00', '17:00']]), breaks: sameHours([], []) }],
  exceptions: [{ date: '2026-07-07', hours: [] }],
});
const local = (date: string, time: string): number => shop.instantOf(date, time);
const rules = {
  runs: [
    ...working.map((day) => ({ day, at: '14:00', orderBefore: { daysEarlier: 0, at: '10:30' } })),
    { day: 'mon', at: '07:00', orderBefore: { daysEarlier: 3, at: '17:00' } } as const,
  ],
  noRunOn: ['2026-07-08'],
};

// 3 July 2026 is a Friday.
describe('delivery runs', () => {
  it('an order before the cut-off makes the run, one at the cut-off the next', () => {
    expect(nextRun(rules, shop, local('2026-07-03', '10:30') - 1)).toEqual({
      runAt: local('2026-07-03', '14:00'),
      orderBefore: local('2026-07-03', '10:30'),
      receivedAt: local('2026-07-03', '14:00'),
    });
    expect(nextRun(rules, shop, local('2026-07-03', '10:30'))?.runAt).toBe(local('2026-07-06', '07:00'));
  });

  it('a cut-off days earlier counts by the calendar: Friday evening for Monday’s first van', () => {
    expect(nextRun(rules, shop, local('2026-07-03', '16:59'))?.orderBefore).toBe(local('2026-07-03', '17:00'));
    expect(nextRun(rules, shop, local('2026-07-03', '17:00'))?.runAt).toBe(local('2026-07-06', '14:00'));
  });

  it('what comes while nobody is there is received at the next opening', () => {
    expect(nextRun(rules, shop, local('2026-07-03', '12:00'))?.receivedAt).toBe(local('2026-07-06', '08:00'));
    // The shop is closed on the 7th, and the van does not drive on the 8th.
    const order = local('2026-07-06', '12:00');
    expect(nextRun(rules, shop, order)).toMatchObject({
      runAt: local('2026-07-07', '14:00'),
      receivedAt: local('2026-07-08', '08:00'),
    });
    expect(nextRun(rules, shop, local('2026-07-07', '11:00'))?.runAt).toBe(local('2026-07-09', '14:00'));
  });

  it('run times stay on the wall clock when clocks change', () => {
    // London puts its clocks on on Sunday 29 March 2026 (IANA tz).
    expect(nextRun(rules, shop, Date.parse('2026-03-27T12:00:00Z'))?.runAt).toBe(Date.parse('2026-03-30T06:00:00Z'));
  });

  it('one cut-off for all runs: later ones the same day, earlier ones the next', () => {
    const week = { mon: ['09:00', '15:00'], tue: ['09:00'], wed: [], thu: [], fri: [], sat: [], sun: [] };
    expect(runsWithCutOff(week, '11:00')).toEqual([
      { day: 'mon', at: '09:00', orderBefore: { daysEarlier: 1, at: '11:00' } },
      { day: 'mon', at: '15:00', orderBefore: { daysEarlier: 0, at: '11:00' } },
      { day: 'tue', at: '09:00', orderBefore: { daysEarlier: 1, at: '11:00' } },
    ]);
    expect(runsWithCutOff(week, null)[0]).toEqual({
      day: 'mon',
      at: '09:00',
      orderBefore: { daysEarlier: 0, at: '09:00' },
    });
  });

  it('a supplier without runs has no next one', () => {
    expect(nextRun({ runs: [], noRunOn: [] }, shop, local('2026-07-03', '12:00'))).toBeNull();
  });

  it('faults are named, and refused', () => {
    const faulty = {
      runs: [
        { day: weekdays[0], at: '9', orderBefore: { daysEarlier: -1, at: '10:00' } },
        { day: weekdays[1], at: '09:00', orderBefore: { daysEarlier: 0, at: '10:00' } },
      ],
      noRunOn: ['Christmas'],
    };
    expect(faultsInDeliveryRules(faulty)).toHaveLength(4);
    expect(() => nextRun(faulty, shop, 0)).toThrow(RangeError);
  });
});
