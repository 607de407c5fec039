/**
 * The figures of a shop over working days: bay use plain and manned, what held the bays, hours of people, the flow of
 * vehicles. The rows are read in two statements of one view; libs/bay-time works the figures out.
 */
import {
  type BayFigures,
  bayFigures,
  type Flow,
  flowOf,
  type HeldPart,
  type HoldTimes,
  type HoursOfPeople,
  peopleFigures,
  periodsOf,
  type Presence,
  type SpotOfBay,
} from '@holdfast/bay-time';
import type { BayFiguresView, FiguresQuery, FiguresView, MyHoursView, PersonHoursView } from '@holdfast/contract';
import { type By, type Row, validOn } from '@holdfast/domain';
import type { Interval } from '@holdfast/shop-calendar';
import type pg from 'pg';
import { withShop } from '../database/pools.js';
import { accountsIn, type BayAccounts, windowOf, zoneOf } from './bay-time.js';
import { type JobInWindow, jobsInWindow } from './bay-time-rows.js';
import { type FigureRows, figureRowsIn } from './figures-rows.js';
import type { ShopAtHand, ShopOf } from './shop-of.js';

const mostParts = 50;
const mostVehicles = 20;

const onWire = ({ totals, mannedMs, mannedUtilisation }: BayFigures): BayFiguresView => ({
  openMs: totals.openMs,
  availableMs: totals.availableMs,
  occupiedMs: totals.occupiedMs,
  workedMs: totals.classMs.worked,
  heldMs: totals.classMs.held,
  noReasonMs: totals.classMs.noReason,
  mannedMs,
  occupancy: totals.occupancy,
  use: totals.utilisation,
  useManned: mannedUtilisation,
});

const hoursOnWire = (hours: HoursOfPeople): PersonHoursView => ({
  presentMs: hours.presentMs,
  clockedMs: hours.clockedMs,
  bookMs: hours.bookMs,
  efficiency: hours.efficiency,
  productivity: hours.productivity,
});

/** Holds of parts with what they wait for over time. */
function withParts(jobs: readonly JobInWindow[], heldParts: FigureRows['heldParts']): JobInWindow[] {
  const byHold = new Map<string, HeldPart[]>();
  for (const { holdId, partLineId, supplierId, from, to } of heldParts) {
    const of = byHold.get(holdId) ?? [];
    of.push({ partLineId, supplierId, from, to });
    byHold.set(holdId, of);
  }
  return jobs.map((job) => ({
    ...job,
    holds: job.holds.map((hold) => {
      const parts = byHold.get(hold.holdId);
      return parts === undefined ? hold : { ...hold, parts };
    }),
  }));
}

const clippedTo = (now: number, presence: FigureRows['presence']): Presence[] =>
  presence.map(({ personId, from, to }) => ({ personId, from, to: Math.max(from, Math.min(to ?? now, now)) }));

const isTechnician = (shop: ShopAtHand, personId: string): boolean =>
  shop.rows.find('person', personId)?.roles.includes('technician') ?? false;

/** A bay is counted by its equipment of the last day asked for. */
function equipmentOf(shop: ShopAtHand, bayId: string, on: string): string[] {
  const specs = shop.rows.list('baySpec', (spec) => spec.bayId === bayId);
  return (validOn(specs, on)?.equipment ?? []).map(({ kind }) => kind);
}

function spotsOf(accounts: readonly BayAccounts[], shop: ShopAtHand, on: string): SpotOfBay[] {
  return accounts.flatMap(({ bay, spots }) => {
    const equipment = equipmentOf(shop, bay.id, on);
    return spots.flatMap((spot) => spot.accounts.map((account) => ({ bayId: bay.id, equipment, account })));
  });
}

interface Asked {
  readonly query: FiguresQuery;
  readonly by: By;
  readonly shop: ShopAtHand;
  readonly jobs: readonly JobInWindow[];
  readonly rows: FigureRows;
}

/** Hours at the desk are no hours of repair: presence counts of technicians, and of whoever was on a clock. */
function peopleIn({ shop, rows }: Asked, periods: readonly Interval[]) {
  const clocked = new Set(rows.clocks.map(({ personId }) => personId));
  const presence = rows.presence.filter(({ personId }) => clocked.has(personId) || isTechnician(shop, personId));
  return peopleFigures({
    presence: clippedTo(shop.now, presence),
    clocks: rows.clocks,
    finished: rows.finished,
    linesWithBook: new Set(rows.linesWithBook),
    periods,
    now: shop.now,
  });
}

function flowIn({ query, shop, jobs, rows }: Asked): Flow {
  const window = windowOf(query, shop);
  const of = new Map(jobs.map((job) => [job.id, job]));
  const onPremises = rows.visits.flatMap(({ jobId }) => of.get(jobId) ?? []);
  return flowOf({
    window,
    now: shop.now,
    days: periodsOf(shop.calendar, query.from, query.to, 'day'),
    open: shop.calendar.openIntervals(window.from, window.to),
    visits: rows.visits,
    clocks: rows.clocks,
    holds: onPremises.flatMap(({ id: jobId, holds }) => holds.map((hold) => ({ jobId, ...hold }))),
    lines: onPremises.flatMap(({ id: jobId, lines }) =>
      lines.map(({ history, answer, ...line }) => ({
        jobId,
        ...line,
        goAhead: history.length > 0 ? history : [{ at: line.addedAt, answer }],
      })),
    ),
    storedJobs: onPremises.flatMap(({ id: jobId, stored }) => (stored === null ? [] : [{ jobId, ...stored }])),
  });
}

function heldOnWire({ shop, rows }: Asked, holds: HoldTimes): FiguresView['held'] {
  const cost = (one: { readonly soleMs: number; readonly sharedMs: number }) => one.soleMs + one.sharedMs;
  const parts = new Map(rows.heldParts.map((part) => [part.partLineId, part]));
  return {
    heldMs: holds.heldMs,
    severalReasonsMs: holds.severalReasonsMs,
    byReason: holds.byReason,
    bySupplier: Object.entries(holds.bySupplier)
      .map(([supplierId, times]) => ({
        supplierId,
        name: shop.rows.find('supplier', supplierId)?.name ?? '',
        ...times,
      }))
      .sort((a, b) => cost(b) - cost(a)),
    byPart: Object.entries(holds.byPart)
      .flatMap(([partLineId, times]) => {
        const part = parts.get(partLineId);
        if (!part) return [];
        return [{ partLineId, description: part.description, jobId: part.jobId, plate: part.plate, ...times }];
      })
      .sort((a, b) => cost(b) - cost(a))
      .slice(0, mostParts),
  };
}

function flowOnWire(asked: Asked): FiguresView['flow'] {
  const flow = flowIn(asked);
  const vehicles = new Map(asked.rows.visits.map((visit) => [visit.vehicleId, visit]));
  return {
    meanHere: flow.meanHere,
    mostHere: flow.mostHere,
    arrived: flow.arrived,
    left: flow.left,
    leftPerDay: flow.leftPerDay,
    timeMs: { ...flow.timeMs },
    comebacks: flow.comebacks.comebacks,
    comebacksPerHundred: flow.comebacks.perHundred,
    vehicles: [...flow.vehicles]
      .sort((a, b) => b.ms - a.ms)
      .slice(0, mostVehicles)
      .map(({ vehicleId, days }) => {
        const { plate = '', description = '' } = vehicles.get(vehicleId) ?? {};
        return { vehicleId, plate, description, days };
      }),
    fleets: flow.fleets.map(({ fleet, vehicles: count, days }) => ({ fleet, vehicles: count, days })),
    littleHolds: flow.little.holds,
  };
}

/** One's own figures are one's own; others see them where the shop says so. */
function mayShow({ by, shop, query }: Asked): (personId: string) => boolean {
  const setting: Row<'shopSetting'> | undefined = validOn(shop.rows.list('shopSetting'), query.to);
  return (personId) => personId === by.personId || setting?.personFiguresToLeads === true;
}

/** Pure: everything read is given. */
function figuresOf(asked: Asked): FiguresView {
  const { query, shop, jobs, rows } = asked;
  const window = windowOf(query, shop);
  const accounts = accountsIn(window, shop, withParts(jobs, rows.heldParts));
  const presence = clippedTo(shop.now, rows.presence).filter((one) => isTechnician(shop, one.personId));
  const spots = spotsOf(accounts, shop, query.to);
  const periods = periodsOf(shop.calendar, query.from, query.to, query.by);
  const perPeriod = bayFigures(spots, presence, periods);
  const [whole] = bayFigures(spots, presence, [window]);
  const hours = peopleIn(asked, periods);
  const [allHours] = peopleIn(asked, [window]);
  if (whole === undefined || allHours === undefined) throw new RangeError('A window gives its figures.');
  const shown = mayShow(asked);
  const bayNames = new Map(accounts.map(({ bay }) => [bay.id, bay.name]));
  return {
    from: query.from,
    to: query.to,
    zone: zoneOf(shop),
    now: new Date(shop.now).toISOString(),
    all: onWire(whole.shop),
    periods: periods.flatMap(({ first, last, whole: isWhole }, at) => {
      const [bays, people] = [perPeriod[at], hours[at]];
      if (!bays || !people) return [];
      return [{ first, last, whole: isWhole, shop: onWire(bays.shop), people: hoursOnWire(people.shop) }];
    }),
    bays: whole.bays.map(({ bayId, figures }) => ({
      bayId,
      name: bayNames.get(bayId) ?? '',
      figures: onWire(figures),
    })),
    equipment: whole.equipment.map(({ kind, figures }) => ({ kind, figures: onWire(figures) })),
    held: heldOnWire(asked, whole.shop.holds),
    people: {
      all: hoursOnWire(allHours.shop),
      people: allHours.people
        .filter(({ personId }) => shown(personId))
        .map(({ personId, hours: own }) => ({
          personId,
          name: shop.rows.find('person', personId)?.name ?? '',
          hours: hoursOnWire(own),
        })),
      bookWithoutClockMs: allHours.bookWithoutClockMs,
    },
    flow: flowOnWire(asked),
  };
}

/** Null: no such shop. */
export function readFigures(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: FiguresQuery,
  by: By,
): Promise<FiguresView | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop) return null;
      const window = windowOf(query, shop);
      const jobs = await jobsInWindow(client, shopId, window, { onPremises: true });
      const rows = await figureRowsIn(client, shopId, window);
      return figuresOf({ query, by, shop, jobs, rows });
    },
    { oneView: true },
  );
}

/** One's own hours; null: no such shop, or nobody of it. */
export function readMyHours(
  pool: pg.Pool,
  shopOf: ShopOf,
  shopId: string,
  query: FiguresQuery,
  by: By,
): Promise<MyHoursView | null> {
  return withShop(
    pool,
    shopId,
    async (client) => {
      const shop = await shopOf(client, shopId);
      if (!shop || by.personId === null) return null;
      const window = windowOf(query, shop);
      const rows = await figureRowsIn(client, shopId, window);
      const [all] = peopleIn({ query, by, shop, jobs: [], rows }, [window]);
      const own = all?.people.find(({ personId }) => personId === by.personId)?.hours;
      const none = { presentMs: 0, clockedMs: 0, bookMs: 0, efficiency: null, productivity: null };
      return { from: query.from, to: query.to, hours: own === undefined ? none : hoursOnWire(own) };
    },
    { oneView: true },
  );
}
