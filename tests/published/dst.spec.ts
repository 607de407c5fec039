import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import { type HourRange, calendarOf, localParts, sameHours, staleZones, weekdays } from '@holdfast/shop-calendar';

const hourMs = 3_600_000;
const around = (zone: string, hours: readonly HourRange[] = []) =>
  calendarOf({
    zone,
    hours: [{ validFrom: '2000-01-01', week: sameHours(weekdays, hours), breaks: sameHours([], []) }],
    exceptions: [],
  });

interface Transition {
  readonly zone: string;
  readonly at: number;
  readonly localBefore: string;
  readonly localAfter: string;
  readonly offsetBeforeS: number;
  readonly offsetAfterS: number;
}

/** Whole data file, kept outside the repository; rows carried over below stand in where it is absent. */
const file = fileURLToPath(new URL('../../../shared/reference/data/dst/transitions-2025-2027.csv', import.meta.url));
const carriedOver = `
America/Detroit,2026-03-08T07:00:00Z,2026-03-08T01:59:59,2026-03-08T03:00:00,-18000,-14400,gap
America/Detroit,2026-11-01T06:00:00Z,2026-11-01T01:59:59,2026-11-01T01:00:00,-14400,-18000,overlap
Europe/London,2026-03-29T01:00:00Z,2026-03-29T00:59:59,2026-03-29T02:00:00,0,3600,gap
Europe/London,2026-10-25T01:00:00Z,2026-10-25T01:59:59,2026-10-25T01:00:00,3600,0,overlap
Australia/Lord_Howe,2026-04-04T15:00:00Z,2026-04-05T01:59:59,2026-04-05T01:30:00,39600,37800,overlap
Australia/Lord_Howe,2026-10-03T15:30:00Z,2026-10-04T01:59:59,2026-10-04T02:30:00,37800,39600,gap
America/St_Johns,2026-03-08T05:30:00Z,2026-03-08T01:59:59,2026-03-08T03:00:00,-12600,-9000,gap
America/St_Johns,2026-11-01T04:30:00Z,2026-11-01T01:59:59,2026-11-01T01:00:00,-9000,-12600,overlap
`;

function transitions(): Transition[] {
  if (!existsSync(file))
    console.log('DST-1: the whole zdump list is absent; the 8 transitions carried over are checked.');
  const text = existsSync(file) ? readFileSync(file, 'utf8') : carriedOver;
  return text
    .split('\n')
    .filter((row) => row.includes('/'))
    .map((row) => {
      const [zone = '', at = '', localBefore = '', localAfter = '', before = '', after = ''] = row.split(',');
      return {
        zone,
        at: Date.parse(at),
        localBefore,
        localAfter,
        offsetBeforeS: Number(before),
        offsetAfterS: Number(after),
      };
    });
}

const wall = (instant: number, zone: string): string => {
  const { date, time, second } = localParts(instant, zone);
  return `${date}T${time}:${String(second).padStart(2, '0')}`;
};

// DST-1. Source: zdump on IANA tzdata 2025b (public domain), transitions of 2025 to 2027.
describe('changes of the clock are where zdump has them', () => {
  const list = transitions();

  it('the list holds transitions', () => {
    expect(list.length).toBeGreaterThanOrEqual(8);
  });

  it.each(list)(
    '$zone, $localBefore to $localAfter',
    ({ zone, at, localBefore, localAfter, offsetBeforeS, offsetAfterS }) => {
      expect(wall(at - 1000, zone)).toBe(localBefore);
      expect(wall(at, zone)).toBe(localAfter);
      expect(localParts(at - 1, zone).offsetMinutes * 60).toBe(offsetBeforeS);
      expect(localParts(at, zone).offsetMinutes * 60).toBe(offsetAfterS);
    },
  );

  it('there is no further change between two of the list', () => {
    for (const zone of new Set(list.map((one) => one.zone))) {
      const own = list.filter((one) => one.zone === zone).map((one) => one.at);
      for (let i = 1; i < own.length; i += 1) {
        const [from = 0, to = 0] = [own[i - 1], own[i]];
        const offset = localParts(from, zone).offsetMinutes;
        for (let t = from; t < to; t += 24 * hourMs) expect(localParts(t, zone).offsetMinutes).toBe(offset);
      }
    }
  });
});

// DST-2. Source: IANA tz transitions; luxon, @js-temporal/polyfill and temporal-polyfill agree on these lengths.
describe('the hours of a day on which clocks change', () => {
  it.each([
    ['America/Detroit', '2026-03-08', 23],
    ['America/Detroit', '2026-11-01', 25],
    ['Europe/London', '2026-03-29', 23],
    ['Europe/London', '2026-10-25', 25],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
    ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ['America/St_Johns', '2026-03-08', 23],
    ['America/St_Johns', '2026-11-01', 25],
  ] as const)('%s %s has %d', (zone, date, hours) => {
    const calendar = around(zone, [['00:00', '24:00']]);
    const { from, to } = calendar.dayBounds(date);
    expect((to - from) / hourMs).toBe(hours);
    expect(calendar.openMs(from, to) / hourMs).toBe(hours);
  });
});

// DST-3. Source: temporal-polyfill; the lengths follow from the IANA transitions above.
describe('a night shift from 22:00 to 06:00 over a change of clocks', () => {
  it.each([
    ['America/Detroit', '2026-03-07', 7],
    ['America/Detroit', '2026-10-31', 9],
    ['Australia/Lord_Howe', '2026-04-04', 8.5],
    ['Australia/Lord_Howe', '2026-10-03', 7.5],
  ] as const)('%s %s lasts %d hours and counts for the day it began on', (zone, date, hours) => {
    const calendar = around(zone, [['22:00', '06:00']]);
    const begins = calendar.instantOf(date, '22:00');
    const [shift] = calendar.openIntervals(begins, begins + 12 * hourMs);
    expect(shift).toEqual({ from: begins, to: begins + hours * hourMs });
    expect(calendar.workingDayOf(begins + hours * hourMs - 1)).toBe(date);
    expect(calendar.instantAfter(begins, hours * 60)).toBe(begins + hours * hourMs);
  });
});

// DST-4. Source: IANA tz list, patches of 2026-03-07 and 2026-05-14, in tzdb 2026d: -07 and -06 all year.
describe('a zone whose rules are newer than the data of this machine', () => {
  const version = process.versions['tz'] ?? 'unknown';

  it.each([
    ['America/Vancouver', -420],
    ['America/Edmonton', -360],
  ] as const)('%s on 1 December 2026: the published offset, or named as stale with both offsets', (zone, published) => {
    const used = localParts(Date.parse('2026-12-01T12:00:00Z'), zone).offsetMinutes;
    const stale = staleZones().find((one) => one.zone === zone);
    if (used === published) {
      expect(stale).toBeUndefined();
      return;
    }
    console.log(
      `DST-4: ${zone} is stale here, zone data ${version}: ${used} minutes from UTC, published ${published}.`,
    );
    // Data of 2026d or later that still gave the old offset would be a fault of this library.
    expect(version < '2026d').toBe(true);
    expect(used).toBe(published - 60);
    expect(stale).toMatchObject({ usedOffsetMinutes: used, publishedOffsetMinutes: published });
  });

  it('a zone whose rules have not changed is never named', () => {
    const named = staleZones().map((one) => one.zone);
    for (const zone of ['America/Detroit', 'Europe/London', 'Australia/Lord_Howe', 'America/St_Johns']) {
      expect(named).not.toContain(zone);
    }
  });
});
