import { describe, expect, it } from '@jest/globals';
import { type SpotInput, partition, totalsOfAccount, totalsPer } from '@holdfast/bay-time';
import { calendarOf, sameHours } from '@holdfast/shop-calendar';

/** A Friday in a shop open 08:00 to 17:00, at Detroit's winter offset (UTC-5); the morning as a shop would live it. */
const shop = calendarOf({
  zone: 'America/Detroit',
  hours: [
    {
      validFrom: '2026-01-01',
      week: sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['08:00', '17:00']]),
      breaks: sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['12:00', '12:30']]),
    },
  ],
  exceptions: [],
});
const date = '2026-02-06';
const at = (time: string): number => shop.instantOf(date, time);
const window = shop.dayBounds(date);
const minutes = (ms: number): number => ms / 60_000;

const day: SpotInput = {
  window,
  open: shop.openIntervals(window.from, window.to),
  outOfUse: [{ from: at('16:00'), to: at('17:00') }],
  stays: [{ jobId: 'van', from: at('08:30'), to: at('15:30'), kind: 'stands' }],
  clocks: [
    { jobId: 'van', personId: 'Rhona', from: at('08:40'), to: at('10:00'), bench: false },
    { jobId: 'van', personId: 'Iain', from: at('09:00'), to: at('10:00'), bench: false },
    { jobId: 'van', personId: 'Rhona', from: at('13:00'), to: at('15:00'), bench: false },
  ],
  holds: [{ holdId: 'h', jobId: 'van', lineIds: ['bumper'], reason: 'parts', from: at('10:00'), to: at('11:30') }],
  lines: [
    {
      jobId: 'van',
      lineId: 'bumper',
      addedAt: at('08:30'),
      endedAt: at('15:00'),
      after: null,
      goAhead: [{ at: at('08:35'), answer: 'given' }],
    },
  ],
  storedJobs: [],
  breaks: shop.breakIntervals(window.from, window.to),
  graceMs: 15 * 60_000,
  now: at('20:00'),
};
const totals = totalsOfAccount(partition(day));

// ISO-2. Source: ISO 22400-2:2014 clause 2 (2.4): the time model is a "partition of the reference time".
describe('the account is a partition of the reference time (ISO 22400-2, 2.4)', () => {
  it('its parts of one day, worked by hand, add up to nine hours of opening', () => {
    expect(Object.fromEntries(Object.entries(totals.classMs).map(([name, ms]) => [name, minutes(ms)]))).toEqual({
      outOfUse: 60, // 16:00 to 17:00
      worked: 200, // 08:40 to 10:00 with two people for a while, 13:00 to 15:00
      stored: 0,
      held: 95, // 08:30 to 08:35 with the customer, 10:00 to 11:30 for parts
      noReason: 75, // 11:30 to 12:00, 12:30 to 13:00, 15:15 to 15:30 after the grace
      break: 50, // 08:35 to 08:40 in the grace, 12:00 to 12:30, 15:00 to 15:15 in the grace
      empty: 60, // 08:00 to 08:30, 15:30 to 16:00
    });
    expect(minutes(totals.openMs)).toBe(540);
  });

  it('and so do the parts of any division of the day', () => {
    const hours = Array.from({ length: 24 }, (_, i) => ({
      from: window.from + i * 3_600_000,
      to: window.from + (i + 1) * 3_600_000,
    }));
    const sum = totalsPer(partition(day), hours).reduce((all, one) => all + one.openMs, 0);
    expect(sum).toBe(totals.openMs);
  });
});

// ISO-1. Source: hsu-aut/IndustrialStandard-ODP-ISO22400-2, an ontology made from the standard: allocation efficiency
// = AUBT / PBT, utilization efficiency = APT / AUBT, availability = APT / PBT. The mapping to bays is our reading.
describe('shares by the definitions of ISO 22400-2, in our reading', () => {
  const [pbt, aubt, apt] = [totals.availableMs, totals.occupiedMs, totals.classMs.worked];

  it('occupancy is allocation efficiency, AUBT / PBT', () => {
    expect([minutes(aubt), minutes(pbt)]).toEqual([420, 480]);
    expect(totals.occupancy).toBe(420 / 480);
  });

  it('utilisation is availability, APT / PBT = allocation efficiency x utilization efficiency', () => {
    expect(totals.utilisation).toBe(200 / 480);
    expect((aubt / pbt) * (apt / aubt)).toBeCloseTo(totals.utilisation ?? NaN, 12);
  });

  it('technician-hours are clocks added up, bay-hours clocks united', () => {
    expect([minutes(totals.technicianMs), minutes(totals.classMs.worked)]).toEqual([260, 200]);
  });
});
