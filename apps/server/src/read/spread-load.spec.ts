import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { spreadLoad } from './spread-load.js';

const days = [
  { day: '2026-03-10', peopleMinutes: 600 },
  { day: '2026-03-11', peopleMinutes: 0 },
  { day: '2026-03-12', peopleMinutes: 600 },
];

describe('the load of the coming days', () => {
  it('gives a booked visit to its own day and lets the work that is here fill what is left, day by day', () => {
    const load = spreadLoad(days, 700, [
      { day: '2026-03-10', minutes: 200 },
      { day: '2026-03-12', minutes: 90 },
    ]);
    expect(load.map((one) => one.loadMinutes)).toEqual([600, 0, 390]);
    expect(load.map((one) => one.bookedJobs)).toEqual([1, 0, 1]);
  });

  it('shows a day that was booked beyond its people as it is', () => {
    expect(spreadLoad(days, 0, [{ day: '2026-03-11', minutes: 60 }])[1]).toMatchObject({
      loadMinutes: 60,
      peopleMinutes: 0,
    });
  });

  it('counts a visit that should have come before among the work that is here', () => {
    expect(spreadLoad(days, 10, [{ day: '2026-03-02', minutes: 30 }])[0]?.loadMinutes).toBe(40);
  });

  it('never loses or doubles a minute, but for what the last day cannot take', () => {
    const day = fc.constantFrom(...days.map((one) => one.day));
    fc.assert(
      fc.property(fc.nat(3000), fc.array(fc.record({ day, minutes: fc.nat(400) })), (here, booked) => {
        const load = spreadLoad(days, here, booked);
        const shown = load.reduce((sum, one) => sum + one.loadMinutes, 0);
        const room = load.reduce((sum, one) => sum + Math.max(0, one.peopleMinutes - one.bookedMinutes), 0);
        const asked = booked.reduce((sum, one) => sum + one.minutes, 0);
        expect(shown).toBe(asked + Math.min(here, room));
      }),
    );
  });
});
