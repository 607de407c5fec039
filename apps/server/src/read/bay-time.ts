/**
 * The account of every bay over a window of working days. What happened is read in one statement; what became of each
 * opening millisecond is worked out by libs/bay-time, spot by spot. A window in which the shop changed its grace is
 * accounted for in parts, each with the grace of its days.
 */
import {
  type BayTimeTotals,
  type JobClock,
  type JobHold,
  type JobLine,
  partition,
  type Segment,
  type SpotAccount,
  type SpotInput,
  type SpotStay,
  type StoredMark,
  sumTotals,
  totalsOfAccount,
} from '@holdfast/bay-time';
import type { BayTimeQuery, BayTimeView } from '@holdfast/contract';
import { type Row, validOn, zoneAt } from '@holdfast/domain';
import { type Interval, intersect } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { type JobInWindow, jobsInWindow } from './bay-time-rows.js';
import { calendarsOfPeople } from './people-calendars.js';
import type { ShopAtHand, ShopOf } from './shop-of.js';
import { type BaySpots, type Spot, spotsIn } from './spots.js';

const minuteMs = 60_000;
const iso = (at: number) => new Date(at).toISOString();

/** The same rows as libs/bay-time takes them. */
interface Happened {
  readonly stays: readonly SpotStay[];
  readonly clocks: readonly JobClock[];
  readonly holds: readonly JobHold[];
  readonly lines: readonly JobLine[];
  readonly storedJobs: readonly StoredMark[];
}

interface Part {
  readonly window: Interval;
  readonly graceMs: number;
}

/** The zone that the shop's clock follows now. */
export const zoneOf = ({ rows, now }: Pick<ShopAtHand, 'rows' | 'now'>) => zoneAt(rows, now);

/** The window cut where another setting begins to hold. */
function partsOf(window: Interval, shop: ShopAtHand): Part[] {
  const settings = shop.rows.list('shopSetting');
  const starts = settings
    .map(({ validFrom }) => shop.calendar.workingDayBounds(validFrom).from)
    .filter((at) => at > window.from && at < window.to);
  const edges = [...new Set([window.from, ...starts, window.to])].sort((a, b) => a - b);
  return edges.slice(0, -1).map((from, at) => {
    const setting = validOn(settings, shop.calendar.workingDayOf(from));
    return { window: { from, to: edges[at + 1] ?? window.to }, graceMs: (setting?.graceMinutes ?? 0) * minuteMs };
  });
}

const keyOf = (bayId: string, spot: number) => `${bayId}/${spot}`;

function happenedTo({ id: jobId, clocks, holds, lines, stored }: JobInWindow): Omit<Happened, 'stays'> {
  return {
    clocks: clocks.map((clock) => ({ jobId, ...clock })),
    holds: holds.map((hold) => ({ jobId, ...hold })),
    lines: lines.map(({ history, answer, ...line }) => ({
      jobId,
      ...line,
      goAhead: history.length > 0 ? history : [{ at: line.addedAt, answer }],
    })),
    storedJobs: stored === null ? [] : [{ jobId, ...stored }],
  };
}

function happenedBySpot(jobs: readonly JobInWindow[]): ReadonlyMap<string, Happened> {
  const bySpot = new Map<string, { [K in keyof Happened]: Happened[K][number][] }>();
  for (const job of jobs) {
    const happened = happenedTo(job);
    const spotsOfJob = new Set<string>();
    for (const { bayId, spot, kept, from, to } of job.stays) {
      const key = keyOf(bayId, spot);
      let of = bySpot.get(key);
      if (!of) bySpot.set(key, (of = { stays: [], clocks: [], holds: [], lines: [], storedJobs: [] }));
      of.stays.push({ jobId: job.id, kind: kept ? 'kept' : 'stands', from, to });
      if (spotsOfJob.has(key)) continue;
      spotsOfJob.add(key);
      of.clocks.push(...happened.clocks);
      of.holds.push(...happened.holds);
      of.lines.push(...happened.lines);
      of.storedJobs.push(...happened.storedJobs);
    }
  }
  return bySpot;
}

const nothing: Happened = { stays: [], clocks: [], holds: [], lines: [], storedJobs: [] };

/** What all spots share: opening time and breaks, back to the earliest stay that reaches into the window. */
type Around = Pick<SpotInput, 'open' | 'breaks' | 'personBreaks' | 'now'>;

function aroundOf(window: Interval, jobs: readonly JobInWindow[], shop: ShopAtHand): Around {
  let first = window.from;
  for (const { stays } of jobs) for (const { from } of stays) first = Math.min(first, from);
  const clocked = new Set(jobs.flatMap(({ clocks }) => clocks.map(({ personId }) => personId)));
  const own = [...calendarsOfPeople(shop)].filter(([personId]) => clocked.has(personId));
  return {
    open: shop.calendar.openIntervals(first, window.to),
    breaks: shop.calendar.breakIntervals(first, window.to),
    personBreaks: Object.fromEntries(own.map(([id, calendar]) => [id, calendar.breakIntervals(first, window.to)])),
    now: shop.now,
  };
}

function accountsOfSpot(
  { there }: Spot,
  bay: BaySpots,
  happened: Happened,
  parts: readonly Part[],
  around: Around,
): SpotAccount[] {
  const open = intersect(around.open, there);
  return parts.map(({ window, graceMs }) =>
    partition({ ...around, ...happened, open, window, graceMs, outOfUse: bay.outOfUse }),
  );
}

/** A bay with the accounts of its spots: one for each part of the window in which the same settings hold. */
export interface BayAccounts {
  readonly bay: Row<'bay'>;
  readonly spots: readonly { readonly spot: number; readonly accounts: readonly SpotAccount[] }[];
}

/** The account of every spot of every bay over a window, in the order of the building. */
export function accountsIn(window: Interval, shop: ShopAtHand, jobs: readonly JobInWindow[]): BayAccounts[] {
  const around = aroundOf(window, jobs, shop);
  const parts = partsOf(window, shop);
  const bySpot = happenedBySpot(jobs);
  return spotsIn(window, shop).map((bay) => ({
    bay: bay.bay,
    spots: bay.spots.map((spot) => ({
      spot: spot.spot,
      accounts: accountsOfSpot(spot, bay, bySpot.get(keyOf(bay.bay.id, spot.spot)) ?? nothing, parts, around),
    })),
  }));
}

interface SpotTime {
  readonly spot: number;
  readonly totals: BayTimeTotals;
  readonly segments: readonly Segment[];
}

function timeOfSpot({ spot, accounts }: BayAccounts['spots'][number]): SpotTime {
  return { spot, totals: sumTotals(accounts.map(totalsOfAccount)), segments: accounts.flatMap((one) => one.segments) };
}

/** Working days `from` to `to` of the shop, both included. Pure: everything read is given. */
export function bayTimeOf(query: BayTimeQuery, shop: ShopAtHand, jobs: readonly JobInWindow[]): BayTimeView {
  const window = windowOf(query, shop);
  const bays = accountsIn(window, shop, jobs).map((bay) => {
    const spots = bay.spots.map(timeOfSpot);
    return { bayId: bay.bay.id, name: bay.bay.name, totals: sumTotals(spots.map(({ totals }) => totals)), spots };
  });
  const withSegments = query.segments === 'true';
  return {
    from: query.from,
    to: query.to,
    zone: zoneOf(shop),
    now: iso(shop.now),
    open: shop.calendar
      .openIntervals(window.from, window.to)
      .map(({ from, to }): [string, string] => [iso(from), iso(to)]),
    totals: sumTotals(bays.map(({ totals }) => totals)),
    bays: bays.map(({ spots, ...bay }) => ({
      ...bay,
      spots: spots.map(({ spot, totals, segments }) =>
        withSegments ? { spot, totals, segments: segments.map(onWire) } : { spot, totals },
      ),
    })),
  };
}

function onWire(segment: Segment): NonNullable<BayTimeView['bays'][number]['spots'][number]['segments']>[number] {
  return { ...segment, from: iso(segment.from), to: iso(segment.to) };
}

export function windowOf(query: Pick<BayTimeQuery, 'from' | 'to'>, { calendar }: ShopAtHand): Interval {
  return { from: calendar.workingDayBounds(query.from).from, to: calendar.workingDayBounds(query.to).to };
}

/** Null where there is no such shop. */
export function readBayTime(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: BayTimeQuery,
): Promise<BayTimeView | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop) return null;
      return bayTimeOf(query, shop, await jobsInWindow(client, shopId, windowOf(query, shop)));
    },
    { oneView: true },
  );
}
