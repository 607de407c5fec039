import type { Visit } from '@holdfast/board';
import type { HoldReason } from '@holdfast/domain';
import { calendarOf, sameHours } from '@holdfast/shop-calendar';
import { describe, expect, it } from '@jest/globals';

import { ageTicksOf, dayMinutesOf, waitOf } from './waiting-limits.js';

const days = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const calendar = calendarOf({
  zone: 'Europe/Dublin',
  hours: [
    { validFrom: '2020-01-01', week: sameHours([...days], [['08:00', '17:00']]), breaks: sameHours([...days], []) },
  ],
  exceptions: [],
});
/** Wednesday 25 November 2026, no summer time in Dublin: local time is UTC. */
const at = (hour: number, minute = 0): number => Date.UTC(2026, 10, 25, hour, minute);
const held = (reason: HoldReason, since: number): Pick<Visit, 'state'> => ({
  state: { kind: 'held', since, reason, holdId: null },
});

describe('the age of a wait', () => {
  it('has one tick below an hour, two below four, three below one working day, four beyond', () => {
    const day = dayMinutesOf(calendar, at(10));
    expect(day).toBe(540);
    expect([0, 59, 60, 239, 240, 539, 540].map((minutes) => ageTicksOf(minutes, day))).toEqual([1, 1, 2, 2, 3, 3, 4]);
  });

  it('counts opening time alone: a night between does not age it', () => {
    const yesterdayAtFour = at(16) - 24 * 3_600_000;
    expect(waitOf(held('parts', yesterdayAtFour), calendar, at(9))?.minutes).toBe(120);
  });
});

describe('somebody waits', () => {
  it('within the limit up to its last minute, past it afterwards', () => {
    expect(waitOf(held('goAhead', at(10)), calendar, at(12))?.waiting).toBe('within');
    expect(waitOf(held('goAhead', at(10)), calendar, at(12, 1))?.waiting).toBe('past');
  });

  it('for nobody while something sets or cools: it has an end of its own', () => {
    expect(waitOf(held('setting', at(8)), calendar, at(16))).toMatchObject({ minutes: 480, waiting: undefined });
  });

  it('not while it is worked on, and not where nothing is left to do', () => {
    expect(waitOf({ state: { kind: 'worked', since: at(8) } }, calendar, at(16))).toBeNull();
    expect(waitOf({ state: { kind: 'noReason', since: at(8), workLeft: false } }, calendar, at(16))).toBeNull();
  });
});
