import { partition, type SpotAccount } from '@holdfast/bay-time';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { strikeEntry } from '../any/strike-entry.js';
import { minute } from '../kernel/given.js';
import { Refused } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { settle } from '../settle.js';
import { circumstancesOf } from '../settle/carry-out.js';
import type { Row, TableName } from '../tables/tables.js';
import { addAttendance, correctAttendance } from './correct-attendance.js';
import { addClock, correctClock } from './correct-clock.js';
import { correctHold } from './correct-hold.js';
import { addStay, correctStay } from './correct-stay.js';
import {
  calendar,
  clockOf,
  dayMinutes,
  days,
  type Entry,
  merged,
  presenceOf,
  reasons,
  recorded,
  spanIn,
  type Stay,
  type Story,
  type Times,
  timesOf,
  vehicles,
  whereOf,
  word,
} from './told-days.js';

const slotted = fc
  .record({
    edges: fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { minLength: 2, maxLength: 2 }),
    person: fc.nat(1),
    what: fc.nat(5),
  })
  .map(({ edges, person, what }) => ({ from: Math.min(...edges), to: Math.max(...edges), person, what }));
const entries = (maxLength: number) =>
  fc
    .array(fc.record({ right: fc.option(slotted), wrong: fc.option(slotted), runs: fc.boolean() }), { maxLength })
    .map((list) =>
      list.map(({ right, wrong, runs }, at): Entry => {
        // Only the last one can still go on, as it was recorded or as it should have been.
        const last = at === list.length - 1;
        return {
          right: right && last && runs ? { ...right, to: null } : right,
          wrong: wrong && last && !runs ? { ...wrong, to: null } : wrong,
        };
      }),
    );
/** As many stays recorded as there were, at other times and in other places; or none but the last of them. */
const stays = fc.integer({ min: 1, max: 6 }).chain((length) => {
  const one = fc
    .tuple(
      fc.uniqueArray(fc.integer({ min: 1, max: dayMinutes - 1 }), { minLength: length - 1, maxLength: length - 1 }),
      fc.array(fc.nat(2), { minLength: length, maxLength: length }),
    )
    .map(([starts, where]): Stay[] =>
      [0, ...starts.sort((a, b) => a - b)].map((from, at) => ({ from, where: where[at] ?? 0 })),
    );
  return fc.record({ right: one, wrong: one, add: fc.boolean() });
});
const story: fc.Arbitrary<Story> = fc.record({
  day: fc.constantFrom(...days),
  stays: fc.tuple(stays, stays),
  clocks: entries(6),
  presence: entries(6),
  holds: entries(3),
});

type Rule<I> = { readonly decide: (rows: Rows, input: I, at: ReturnType<typeof circumstancesOf>) => unknown };

/** Corrections by a manager at the end of the day; none of them may be refused. */
class Desk {
  constructor(
    readonly told: Story,
    public rows: Rows,
  ) {}

  get times(): Times {
    return timesOf(this.told.day);
  }

  go<I>(rule: Rule<I>, input: I): void {
    const at = { ...circumstancesOf({ now: this.times.now, by: 'manager' }), calendar };
    const next = this.rows.fork();
    const outcome = rule.decide(next, input, at);
    if (outcome instanceof Refused) throw new Error(JSON.stringify([outcome.refusals, input]));
    settle(next, at);
    this.rows = next;
  }

  /** Whether the row says so already. */
  has(table: TableName, id: string, said: object): boolean {
    const row = this.rows.get(table, id) as unknown as Readonly<Record<string, unknown>>;
    return Object.entries(said).every(([name, value]) => row[name] === value);
  }
}

const words = 'Looked at the paper';

function putRight(told: Story): Rows {
  const desk = new Desk(told, recorded(told, 'wrong'));
  for (const [at, vehicleId] of vehicles.entries()) {
    if (told.stays[at]?.add) addStays(desk, at, vehicleId);
    else {
      moveStays(desk, at, vehicleId);
      putElsewhere(desk, at, vehicleId);
    }
  }
  for (const n of told.clocks.keys()) putClockRight(desk, n);
  for (const n of told.presence.keys()) putPresenceRight(desk, n);
  for (const n of told.holds.keys()) putHoldRight(desk, n);
  return desk.rows;
}

function putClockRight(desk: Desk, n: number): void {
  const id = `c${String(n)}`;
  const { right, wrong } = desk.told.clocks[n] ?? { right: null, wrong: null };
  if (wrong && !right) desk.go(strikeEntry, { table: 'clock', id, words });
  if (!right) return;
  const said = { ...clockOf(right), ...spanIn(desk.told.clocks, n, right, desk.times) };
  if (!wrong && said.toAt !== null) desk.go(addClock, { ...said, toAt: said.toAt, words });
  if (wrong && !desk.has('clock', id, said)) desk.go(correctClock, { clockId: id, ...said, words });
}

function putPresenceRight(desk: Desk, n: number): void {
  const id = `a${String(n)}`;
  const { right, wrong } = desk.told.presence[n] ?? { right: null, wrong: null };
  const same = wrong?.person === right?.person;
  if (wrong && !same) desk.go(strikeEntry, { table: 'attendance', id, words });
  if (!right) return;
  const { personId, ...said } = { ...presenceOf(right), ...spanIn(desk.told.presence, n, right, desk.times) };
  if (!same && said.toAt !== null) desk.go(addAttendance, { personId, ...said, toAt: said.toAt, words });
  if (same && !desk.has('attendance', id, said)) desk.go(correctAttendance, { attendanceId: id, ...said, words });
}

function putHoldRight(desk: Desk, n: number): void {
  const id = `h${String(n)}`;
  const { right, wrong } = desk.told.holds[n] ?? { right: null, wrong: null };
  if (!right && wrong) desk.go(strikeEntry, { table: 'hold', id, words });
  if (!right) return;
  const said = { reason: word(reasons, right.what), ...spanIn(desk.told.holds, n, right, desk.times) };
  if (!desk.has('hold', id, said)) desk.go(correctHold, { holdId: id, ...said, words });
}

const inBay = ({ bayId, spot }: ReturnType<typeof whereOf>) => ({ bayId: bayId ?? undefined, spot: spot ?? undefined });

function addStays(desk: Desk, at: number, vehicleId: string): void {
  const { start } = desk.times;
  const right = desk.told.stays[at]?.right ?? [];
  for (const [n, stay] of right.entries()) {
    const next = right[n + 1];
    if (!next) continue;
    const where = whereOf(vehicleId, stay);
    const span = { fromAt: start + stay.from * minute, toAt: start + next.from * minute };
    desk.go(addStay, { jobId: `j${String(at + 1)}`, kind: where.kind, ...inBay(where), ...span, words });
  }
}

function nthPlace({ rows }: Desk, vehicleId: string, n: number): Row<'place'> {
  const places = rows.list('place', (place) => place.vehicleId === vehicleId).sort((a, b) => a.fromAt - b.fromAt);
  const place = places[n];
  if (!place) throw new Error(`no place ${String(n)} of ${vehicleId}`);
  return place;
}

/** Those that begin later from the last on, then those that begin earlier from the first on: none runs into another. */
function moveStays(desk: Desk, at: number, vehicleId: string): void {
  const { right, wrong } = desk.told.stays[at] ?? { right: [], wrong: [] };
  const moved = right.map((stay, n) => ({ n, from: stay.from, by: stay.from - (wrong[n]?.from ?? 0) }));
  const later = moved.filter((one) => one.by > 0).reverse();
  for (const { n, from } of [...later, ...moved.filter((one) => one.by < 0)]) {
    const instant = desk.times.start + from * minute;
    // From either side: the beginning of the one, or the end of the one before it.
    if (n % 2 === 0) desk.go(correctStay, { placeId: nthPlace(desk, vehicleId, n).id, fromAt: instant, words });
    else desk.go(correctStay, { placeId: nthPlace(desk, vehicleId, n - 1).id, toAt: instant, words });
  }
}

function putElsewhere(desk: Desk, at: number, vehicleId: string): void {
  for (const [n, stay] of (desk.told.stays[at]?.right ?? []).entries()) {
    const { id: placeId, jobId, ...place } = nthPlace(desk, vehicleId, n);
    const where = whereOf(vehicleId, stay);
    if (desk.has('place', placeId, where)) continue;
    if (place.kind === 'bay' && where.kind === 'bay') desk.go(correctStay, { placeId, ...inBay(where), words });
    else if (place.toAt !== null) {
      const span = { fromAt: place.fromAt, toAt: place.toAt };
      desk.go(addStay, { jobId, kind: where.kind, ...inBay(where), ...span, words });
    }
  }
}

function intervalsOf(rows: Rows) {
  const span = ({ fromAt, toAt }: { readonly fromAt: number; readonly toAt: number | null }) => ({ fromAt, toAt });
  return {
    places: merged(
      rows.list('place').map((one) => ({ key: [one.vehicleId, one.kind, one.bayId, one.spot].join(), ...span(one) })),
    ),
    uses: merged(
      rows.list('spotUse').map((one) => ({ key: [one.bayId, one.spot, one.vehicleId, one.kind].join(), ...span(one) })),
    ),
    clocks: merged(
      rows.list('clock').map((one) => ({ key: [one.personId, one.lineId, one.jobId, one.bench].join(), ...span(one) })),
    ),
    presence: merged(rows.list('attendance').map((one) => ({ key: [one.personId, one.kind].join(), ...span(one) }))),
    holds: merged(rows.list('hold').map((one) => ({ key: [one.jobId, one.reason].join(), ...span(one) }))),
    lines: rows.list('workLine').map(({ id, progress, startedAt }) => ({ id, progress, startedAt })),
  };
}

function accountOf(rows: Rows, bayId: string, spot: number, { start, now }: Times): SpotAccount {
  const toSpan = ({ fromAt, toAt }: { readonly fromAt: number; readonly toAt: number | null }) => ({
    from: fromAt,
    to: toAt,
  });
  return partition({
    window: { from: start, to: now },
    open: calendar.openIntervals(start, now),
    outOfUse: [],
    stays: rows
      .list('spotUse', (use) => use.bayId === bayId && use.spot === spot)
      .map((use) => ({ jobId: use.jobId, kind: use.kind, ...toSpan(use) })),
    clocks: rows
      .list('clock')
      .map((one) => ({ jobId: one.jobId, personId: one.personId, bench: one.bench, ...toSpan(one) })),
    holds: rows
      .list('hold')
      .map((one) => ({ holdId: 'h', jobId: one.jobId, lineIds: [], reason: one.reason, ...toSpan(one) })),
    lines: rows.list('workLine').map((line) => ({
      jobId: line.jobId,
      lineId: line.id,
      addedAt: line.effectiveAt,
      endedAt: line.endedAt,
      after: null,
      goAhead: [{ at: line.effectiveAt, answer: line.goAhead }],
    })),
    storedJobs: [],
    breaks: calendar.breakIntervals(start, now),
    graceMs: 15 * minute,
    now,
  });
}

const spots = [
  ['b1', 1],
  ['b2', 1],
  ['b2', 2],
  ['b3', 1],
] as const;

/** What corrections cannot bring about: a running row that nobody recorded. */
function reachable(told: Story): Story {
  const ended = (list: readonly Entry[], samePerson: boolean): Entry[] =>
    list.map(({ right, wrong }) => {
      const isNew = right && (!wrong || (samePerson && wrong.person !== right.person));
      return { wrong, right: isNew && right.to === null ? { ...right, to: 99 } : right };
    });
  return {
    ...told,
    // Whether the last stay, which runs on, is in the yard or in a bay was recorded right: it is moved, not corrected.
    stays: told.stays.map(({ right, wrong, add }) => ({
      add,
      wrong,
      right: right.map((stay, n) => {
        const last = n === right.length - 1 && !add;
        const was = wrong[n]?.where ?? 0;
        return last && (was === 0) !== (stay.where === 0) ? { ...stay, where: was } : stay;
      }),
    })),
    clocks: ended(told.clocks, false),
    presence: ended(told.presence, true),
  };
}

describe('a day that was recorded wrong and put right', () => {
  it('gives the intervals, and the account of every spot, of the same day recorded right the first time', () => {
    fc.assert(
      fc.property(story.map(reachable), (told) => {
        const times = timesOf(told.day);
        const [right, corrected] = [recorded(told, 'right'), putRight(told)];
        expect(intervalsOf(corrected)).toEqual(intervalsOf(right));
        for (const [bayId, spot] of spots) {
          expect(accountOf(corrected, bayId, spot, times)).toEqual(accountOf(right, bayId, spot, times));
        }
      }),
      { numRuns: 60 },
    );
  });
});
