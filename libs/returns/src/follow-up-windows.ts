/**
 * From needs and limits to windows. A window's first day is that of the last need to be met, its last day that of the
 * first limit; each says which need or limit it was. Follow-ups that wait for others begin no earlier than those
 * (the same day will do: alignment after tyres), and those must be done no later than what waits for them. Whoever waits
 * for himself in a circle is named and left out.
 */
import type { LocalDate } from '@holdfast/shop-calendar';

export interface NeededPart {
  readonly partLineId: string;
  /** lines of one order with one due-in date are one shipment: they come together */
  readonly shipmentId: string;
  readonly inHand: boolean;
  /** the day it is here with the confidence that the shop plans by; null: no date can be given */
  readonly expected: LocalDate | null;
}

export interface FollowUpLimit {
  /** `booked`: something that waits for it is booked for that day */
  readonly kind: 'day' | 'odometer' | 'distance' | 'time' | 'season' | 'booked';
  /** the last day within it; distances on the fast side of the odometer's projection, seasons the day before they begin */
  readonly day: LocalDate;
}

export interface OpenFollowUp {
  readonly followUpId: string;
  readonly vehicleId: string;
  readonly urgency: 'urgent' | 'soon' | 'whenItSuits';
  /** minutes of bay time */
  readonly bayMinutes: number;
  readonly parts: readonly NeededPart[];
  /** `expectedOn`: when the customer is likely to have answered, such as the next try of the contact log */
  readonly goAhead: 'notNeeded' | 'given' | { readonly expectedOn: LocalDate };
  /** other follow-ups of the vehicle; ids that are not among the open ones count as done */
  readonly after: readonly string[];
  /** the first one reached counts; none: no last day */
  readonly limits: readonly FollowUpLimit[];
}

export type FirstDayReason =
  | { readonly kind: 'today' }
  | { readonly kind: 'part'; readonly partLineId: string }
  | { readonly kind: 'goAhead' }
  | { readonly kind: 'followUp'; readonly followUpId: string };

export interface FirstDay {
  /** null: a part without any date */
  readonly day: LocalDate | null;
  readonly because: FirstDayReason;
}

/** The limit reached first; null: none. */
export function firstLimit(limits: readonly FollowUpLimit[]): FollowUpLimit | null {
  return limits.reduce<FollowUpLimit | null>(
    (first, one) => (first === null || one.day < first.day ? one : first),
    null,
  );
}

/** The later of two; a day that nobody can name is later than any. */
function later(a: FirstDay, b: FirstDay): FirstDay {
  if (a.day === null) return a;
  return b.day === null || b.day > a.day ? b : a;
}

/** The first day by a follow-up's own needs; `free` for one without any. */
function ownFirstDay(followUp: OpenFollowUp, free: FirstDay): FirstDay {
  let first = free;
  if (typeof followUp.goAhead === 'object') {
    first = later(first, { day: followUp.goAhead.expectedOn, because: { kind: 'goAhead' } });
  }
  for (const part of followUp.parts) {
    if (part.inHand) continue;
    first = later(first, { day: part.expected, because: { kind: 'part', partLineId: part.partLineId } });
  }
  return first;
}

export interface Ordered {
  /** each after those it waits for */
  readonly order: readonly OpenFollowUp[];
  /** ids that wait for each other, one list per circle */
  readonly circles: readonly (readonly string[])[];
  /** links to a follow-up of another vehicle: no return can meet them, and they are left out */
  readonly otherVehicle: readonly { readonly followUpId: string; readonly after: string }[];
  /** by id: those it waits for that are open and of the same vehicle; absent: none */
  readonly after: ReadonlyMap<string, readonly string[]>;
  /** ids that others wait for */
  readonly waitedFor: ReadonlySet<string>;
}

interface Links {
  readonly after: Map<string, readonly string[]>;
  readonly waitedFor: ReadonlySet<string>;
  readonly otherVehicle: { followUpId: string; after: string }[];
}

function linksOf(followUps: readonly OpenFollowUp[]): Links {
  const linked = followUps.filter(({ after }) => after.length > 0);
  const named = new Set(linked.flatMap(({ after }) => after));
  const byId = new Map<string, OpenFollowUp>();
  if (named.size > 0) for (const one of followUps) if (named.has(one.followUpId)) byId.set(one.followUpId, one);
  const links: Links = { after: new Map(), waitedFor: named, otherVehicle: [] };
  for (const { followUpId, vehicleId, after } of linked) {
    const kept = [...new Set(after)].filter((id) => {
      const other = byId.get(id);
      if (other === undefined) return false;
      if (other.vehicleId === vehicleId) return true;
      links.otherVehicle.push({ followUpId, after: id });
      return false;
    });
    links.after.set(followUpId, kept);
  }
  return links;
}

/** Circles among links that are left when everything without an unmet need has been taken away. */
function circlesAmong(stuck: ReadonlySet<string>, after: ReadonlyMap<string, readonly string[]>): string[][] {
  const circles: string[][] = [];
  const seen = new Set<string>();
  for (const start of stuck) {
    const path: string[] = [];
    let at: string | undefined = start;
    while (at !== undefined && !seen.has(at)) {
      seen.add(at);
      path.push(at);
      at = after.get(at)?.find((id) => stuck.has(id));
    }
    const begins = at === undefined ? -1 : path.indexOf(at);
    if (begins >= 0) circles.push(path.slice(begins));
  }
  return circles;
}

/** Follow-ups so that each comes after those it waits for. Linear. A link that would close a circle is found by this too. */
export function inOrder(followUps: readonly OpenFollowUp[]): Ordered {
  const { after, waitedFor, otherVehicle } = linksOf(followUps);
  const open = new Map<string, number>();
  const dependents = new Map<string, OpenFollowUp[]>();
  const order: OpenFollowUp[] = [];
  for (const one of followUps) {
    const needs = one.after.length === 0 ? [] : (after.get(one.followUpId) ?? []);
    if (needs.length === 0) order.push(one);
    else open.set(one.followUpId, needs.length);
    for (const id of needs) {
      const list = dependents.get(id);
      if (list === undefined) dependents.set(id, [one]);
      else list.push(one);
    }
  }
  // `order` grows while it is walked.
  for (const done of order) {
    if (!waitedFor.has(done.followUpId)) continue;
    for (const one of dependents.get(done.followUpId) ?? []) {
      const left = (open.get(one.followUpId) ?? 0) - 1;
      open.set(one.followUpId, left);
      if (left === 0) {
        order.push(one);
        open.delete(one.followUpId);
      }
    }
  }
  return { order, circles: circlesAmong(new Set(open.keys()), after), otherVehicle, after, waitedFor };
}

/**
 * First days with the links, one by one as `order` has them: nobody begins before what he waits for. `booked` are the days
 * of those that have one.
 */
export function firstDays(
  { order, after, waitedFor }: Ordered,
  today: LocalDate,
  booked: ReadonlyMap<string, LocalDate>,
): readonly FirstDay[] {
  const free: FirstDay = { day: today, because: { kind: 'today' } };
  const ofWaitedFor = new Map<string, FirstDay>();
  return order.map((one) => {
    let day = ownFirstDay(one, free);
    if (one.after.length > 0) {
      for (const id of after.get(one.followUpId) ?? []) {
        const theirs = booked.get(id) ?? ofWaitedFor.get(id)?.day;
        if (theirs === undefined) continue;
        day = later(day, { day: theirs, because: { kind: 'followUp', followUpId: id } });
      }
    }
    if (waitedFor.has(one.followUpId)) ofWaitedFor.set(one.followUpId, day);
    return day;
  });
}
