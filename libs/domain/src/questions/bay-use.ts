/**
 * What of a bay can be used, and how its lift stands with inspections. It hides that equipment goes out of use in three
 * ways: by the facts of the bay, by an outage from when to when, and by a failed inspection, which takes every lift of the
 * bay out of use until one has passed. Days are of the shop's zone, instants epoch ms.
 */
import { addDays, type Interval, intersect, union } from '@holdfast/shop-calendar';
import type { Rows } from '../kernel/rows.js';
import type { EquipmentItem } from '../tables/shop.js';
import type { Row } from '../tables/tables.js';

type Spec = Row<'baySpec'>;

export const lifts = (spec: Pick<Spec, 'equipment'>): EquipmentItem[] =>
  spec.equipment.filter(({ grips }) => grips !== null);

/** The outage that runs for the whole bay (`null`), or for one piece of its equipment. */
export function runningOutage(
  rows: Rows,
  bayId: string,
  piece: EquipmentItem['kind'] | null,
): Row<'outage'> | undefined {
  return rows.list('outage', (one) => one.bayId === bayId && one.equipment === piece && one.toAt === null)[0];
}

/** Equipment that can be used now: in use by the facts of the bay, no outage runs for it, and no lift that failed. */
export function usableEquipment(rows: Rows, spec: Spec): EquipmentItem[] {
  const failed = lastInspection(rows, spec)?.outcome === 'failed';
  return spec.equipment.filter(
    (item) => item.inUse && !(failed && item.grips !== null) && !runningOutage(rows, spec.bayId, item.kind),
  );
}

export interface Inspected {
  readonly on: string;
  readonly outcome: Row<'liftInspection'>['outcome'];
  /** The shop's interval to the next, months; null: none is followed. */
  readonly intervalMonths: number | null;
}

/** Inspections that were recorded, the last one first: by their day, of one day the one recorded last. */
function inspectionsOf(rows: Rows, spec: Spec): Inspected[] {
  const recorded = rows
    .list('liftInspection', (one) => one.bayId === spec.bayId)
    .sort((a, b) =>
      a.inspectedOn === b.inspectedOn ? b.recordedAt - a.recordedAt : a.inspectedOn < b.inspectedOn ? 1 : -1,
    )
    .map(({ inspectedOn, outcome, intervalMonths }) => ({ on: inspectedOn, outcome, intervalMonths }));
  if (recorded.length > 0 || spec.inspectedOn === null) return recorded;
  const { inspectedOn, inspectionOutcome, inspectionIntervalMonths } = spec;
  return [{ on: inspectedOn, outcome: inspectionOutcome ?? 'passed', intervalMonths: inspectionIntervalMonths }];
}

/** The inspection that counts; before any was recorded, the one that the facts of the bay tell of. */
export function lastInspection(rows: Rows, spec: Spec): Inspected | undefined {
  return inspectionsOf(rows, spec)[0];
}

/** The interval that the shop follows for this lift, months: the last one that was said with an inspection, else the bay's. */
export function intervalOf(rows: Rows, spec: Spec): number | null {
  const said = inspectionsOf(rows, spec).find(({ intervalMonths }) => intervalMonths !== null);
  return said?.intervalMonths ?? spec.inspectionIntervalMonths;
}

/** The day a number of months on; the last of the month where it has no such day (31 January and a month: 28 February). */
export function monthsOn(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const at = year * 12 + (month - 1) + months;
  const first = `${String(Math.floor(at / 12)).padStart(4, '0')}-${String((at % 12) + 1).padStart(2, '0')}-01`;
  const after = Math.floor((at + 1) / 12);
  const next = `${String(after).padStart(4, '0')}-${String(((at + 1) % 12) + 1).padStart(2, '0')}-01`;
  const same = addDays(first, date - 1);
  return same < next ? same : addDays(next, -1);
}

export interface Due {
  readonly inspectedOn: string;
  /** The last day that the inspection covers: the anniversary itself is still in date. */
  readonly dueOn: string;
}

/** Until when the last passed inspection counts; null where none is known or the shop follows no interval. */
export function inspectionDue(rows: Rows, spec: Spec): Due | null {
  const passed = inspectionsOf(rows, spec).find(({ outcome }) => outcome === 'passed');
  const months = passed && (passed.intervalMonths ?? intervalOf(rows, spec));
  return passed && months ? { inspectedOn: passed.on, dueOn: monthsOn(passed.on, months) } : null;
}

export function isOverdue(due: Due, today: string): boolean {
  return due.dueOn < today;
}

/** The one decision on the overdue inspection, whether its end has come or not. */
export function decisionOn(rows: Rows, bayId: string, { inspectedOn }: Due): Row<'liftDecision'> | undefined {
  return rows.list('liftDecision', (one) => one.bayId === bayId && one.inspectedOn === inspectedOn)[0];
}

/** The inspection that stands against using the lift today: overdue, and no decision covers the day. */
export function overdueUndecided(rows: Rows, spec: Spec, today: string): Due | null {
  const due = inspectionDue(rows, spec);
  if (due === null || !isOverdue(due, today)) return null;
  const decision = decisionOn(rows, spec.bayId, due);
  return decision && today <= decision.untilDay ? null : due;
}

const asInterval = ({ fromAt, toAt }: Row<'outage'>): Interval => ({ from: fromAt, to: toAt ?? Infinity });

/**
 * When a bay with these facts counted as out of use by outages, epoch ms, `to` infinite while one runs: the whole bay, or
 * what it is counted by. That is its lift (all of them where it has several); for a bay that lifts nothing all that
 * stands in it.
 */
export function outOfUseByOutage(
  outages: readonly Row<'outage'>[],
  spec: Pick<Spec, 'bayId' | 'equipment'>,
): Interval[] {
  const ofBay = outages.filter(
    (one) => one.bayId === spec.bayId && !one.void && (one.toAt === null || one.toAt > one.fromAt),
  );
  const whole = ofBay.filter(({ equipment }) => equipment === null).map(asInterval);
  const counted = lifts(spec).length > 0 ? lifts(spec) : spec.equipment;
  const pieces = [...new Set(counted.map(({ kind }) => kind))].map((kind) =>
    union(ofBay.filter(({ equipment }) => equipment === kind).map(asInterval)),
  );
  const [first, ...others] = pieces;
  const all = first ? others.reduce<readonly Interval[]>((so, one) => intersect(so, one), first) : [];
  return [...union(whole, all)];
}
