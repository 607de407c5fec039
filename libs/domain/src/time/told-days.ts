/**
 * For specs: days of a shop as they were and as somebody recorded them, made into rows. What belongs together lies in
 * slots of its own, so that either record is one that could have been made.
 */
import { type Calendar, calendarOf, sameHours } from '@holdfast/shop-calendar';
import { type Given, given, minute } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';

// Open at night too, so that the hour that is skipped and the one that is shown twice are opening time.
const everyDay = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export const calendar: Calendar = calendarOf({
  zone: 'Europe/London',
  hours: [
    {
      validFrom: '2020-01-01',
      week: sameHours(everyDay, [
        ['00:30', '03:30'],
        ['08:00', '17:00'],
      ]),
      breaks: sameHours(everyDay, [['12:00', '12:30']]),
    },
  ],
  exceptions: [],
});
/** A day of 24 hours, one of 23 and one of 25. */
export const days = ['2026-03-10', '2026-03-29', '2026-10-25'] as const;
export const dayMinutes = 23 * 60;

type Where = { readonly kind: 'yard' | 'bay'; readonly bayId: string | null; readonly spot: number | null };
const yard: Where = { kind: 'yard', bayId: null, spot: null };
/** Each vehicle has spots that the other one never has, so that every record is one that could have been made. */
const wheres: Readonly<Record<string, readonly Where[]>> = {
  v1: [yard, { kind: 'bay', bayId: 'b1', spot: 1 }, { kind: 'bay', bayId: 'b2', spot: 1 }],
  v2: [yard, { kind: 'bay', bayId: 'b3', spot: 1 }, { kind: 'bay', bayId: 'b2', spot: 2 }],
};
export const vehicles = ['v1', 'v2'] as const;
const lineOf = (n: number) => `l${String(n + 1)}`;
const jobOfLine = (lineId: string) => (lineId === 'l1' || lineId === 'l2' ? 'j1' : 'j2');

export interface Stay {
  readonly from: number;
  readonly where: number;
}
export interface Slotted {
  /** Part of its slot, in hundredths; a running one has no end. */
  readonly from: number;
  readonly to: number | null;
  readonly person: number;
  readonly what: number;
}
export interface Entry {
  readonly right: Slotted | null;
  readonly wrong: Slotted | null;
}
export interface Story {
  readonly day: (typeof days)[number];
  readonly stays: readonly {
    readonly right: readonly Stay[];
    readonly wrong: readonly Stay[];
    readonly add: boolean;
  }[];
  readonly clocks: readonly Entry[];
  readonly presence: readonly Entry[];
  readonly holds: readonly Entry[];
}

export interface Times {
  readonly start: number;
  readonly now: number;
}
export const timesOf = (day: string): Times => {
  const { from, to } = calendar.dayBounds(day);
  return { start: from, now: to };
};
const people = ['technician', 'second'] as const;
const kinds = ['present', 'break', 'shopTime'] as const;
export const reasons = ['tool', 'information', 'bay'] as const;

/** The times of an entry in its slot, epoch ms. */
export function spanIn(list: readonly Entry[], at: number, one: Slotted, { start }: Times) {
  const slotMinutes = Math.floor(dayMinutes / list.length);
  const instant = (part: number) => start + (at * slotMinutes + Math.floor((part * slotMinutes) / 100)) * minute;
  const fromAt = instant(one.from);
  return { fromAt, toAt: one.to === null ? null : Math.max(instant(one.to), fromAt + minute) };
}
export const word = <T>(list: readonly T[], n: number): T => list[n % list.length] as T;
export const clockOf = (one: Slotted) => {
  const lineId = lineOf(one.what % 4);
  return { personId: word(people, one.person), lineId, bench: one.what > 3 };
};
export const presenceOf = (one: Slotted) => ({ personId: word(people, one.person), kind: word(kinds, one.what) });

export const whereOf = (vehicleId: string, { where }: Stay): Where => word(wheres[vehicleId] ?? [yard], where);

/** What `add` says is recorded from a list of stays: only yard until the last one, else all of them. */
function asRecorded(list: readonly Stay[]): Stay[] {
  const last = list.at(-1);
  return last && list.length > 1 ? [{ from: 0, where: 0 }, last] : [...list];
}

type Which = 'right' | 'wrong';

function withStays(world: Given, told: Story, which: Which, vehicleId: string, at: number): Given {
  const { start } = timesOf(told.day);
  const jobId = `j${String(at + 1)}`;
  const { right, wrong, add } = told.stays[at] ?? { right: [], wrong: [], add: false };
  const wrongly = add ? asRecorded(right) : wrong;
  const list = which === 'right' ? right : wrongly;
  return list.reduce((so, stay, n) => {
    const next = list[n + 1];
    const span = { fromAt: start + stay.from * minute, toAt: next ? start + next.from * minute : null };
    const place = { id: `${vehicleId}-${String(n)}`, jobId, vehicleId, ...whereOf(vehicleId, stay), ...span };
    return place.bayId === null ? so.place(place.id, place) : so.inBay(place.bayId, place, { id: `${place.id}-use` });
  }, world);
}

function withEntries(world: Given, told: Story, which: Which): Given {
  const times = timesOf(told.day);
  const base = { recordedAt: times.start, effectiveAt: times.start, byId: null, device: null };
  for (const [n, { [which]: one }] of told.clocks.entries()) {
    if (!one) continue;
    const of = clockOf(one);
    world.clock(`c${String(n)}`, {
      ...base,
      jobId: jobOfLine(of.lineId),
      ...of,
      ...spanIn(told.clocks, n, one, times),
    });
  }
  for (const [n, { [which]: one }] of told.presence.entries()) {
    if (!one) continue;
    const span = spanIn(told.presence, n, one, times);
    world.row('attendance', { id: `a${String(n)}`, ...base, words: null, ...presenceOf(one), ...span });
  }
  for (const [n, { right, wrong }] of told.holds.entries()) {
    // A hold that was never is struck; one that was not recorded is opened as a report, which is no correction.
    const one = which === 'right' ? right : (wrong ?? right);
    if (!one) continue;
    const of = { jobId: word(['j1', 'j2'], n), vehicleId: word(vehicles, n), openedById: 'technician' };
    world.hold(`h${String(n)}`, { ...of, reason: word(reasons, one.what), ...spanIn(told.holds, n, one, times) });
  }
  return world;
}

export function recorded(told: Story, which: Which): Rows {
  const { start } = timesOf(told.day);
  let world = given().shop().bay('b1').bay('b2', { spots: 2 }).bay('b3');
  for (const [at, vehicleId] of vehicles.entries()) {
    world = world.vehicle(vehicleId).job(`j${String(at + 1)}`, { arrivedAt: start, checkedInAt: start });
    for (const n of [0, 1]) world = world.line(lineOf(2 * at + n), { effectiveAt: start });
    world = withStays(world, told, which, vehicleId, at);
  }
  const rows = withEntries(world, told, which).rows();
  for (const line of rows.list('workLine')) {
    const clocks = rows.list('clock', (clock) => clock.lineId === line.id);
    if (clocks.length === 0) continue;
    const progress = clocks.some((clock) => clock.toAt === null) ? 'started' : 'stopped';
    rows.change('workLine', line.id, { progress, startedAt: Math.min(...clocks.map((clock) => clock.fromAt)) });
  }
  return rows.fork();
}

/** Intervals that say the same and touch are one. */
export function merged(
  list: readonly { readonly key: string; readonly fromAt: number; readonly toAt: number | null }[],
) {
  const found: { key: string; fromAt: number; toAt: number | null }[] = [];
  const inTurn = [...list].sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.fromAt - b.fromAt));
  for (const one of inTurn) {
    const last = found.at(-1);
    if (last?.key === one.key && last.toAt === one.fromAt) last.toAt = one.toAt;
    else found.push({ ...one });
  }
  return found;
}
