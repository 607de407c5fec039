/**
 * The days of one vehicle: the fewest that meet every window, as early as they can be, with room in the bays. Windows are
 * positions in the list of days that suit the customer. Guaranteed: nothing lies outside its window, nothing before what
 * it waits for, no day is fuller than it may be. Without bounds on the days it is exact; with them it is a heuristic.
 */
import type { VehicleRoom } from './day-room.js';
import { earliestPoints } from './fewest-points.js';
import { placeOneByOne } from './one-by-one.js';

export interface Waiting {
  readonly id: string;
  /** positions in the vehicle's days, both within them */
  readonly from: number;
  readonly to: number;
  readonly minutes: number;
  readonly urgent: boolean;
  /** ids among the same vehicle's that come before it or on the same day */
  readonly after: readonly string[];
}

export interface VehicleDays {
  /** position of the day by id */
  readonly dayOf: ReadonlyMap<string, number>;
  /** ids for which no day within their window had room */
  readonly noRoom: readonly string[];
  /** ids whose windows are pairwise apart: why there are no fewer returns */
  readonly apart: readonly string[];
}

/** A window drawn in by urgency, by what waits for it, and by a day on which it fitted while others had to move on. */
interface Drawn {
  readonly id: string;
  from: number;
  readonly to: number;
  readonly minutes: number;
  readonly urgent: boolean;
  readonly after: readonly Drawn[];
  /** the day it keeps once others of its return had to move on; `to` as long as none had */
  keeps: number;
  /** the last position, never after `to` */
  last: number;
}

interface Group {
  readonly at: number;
  readonly members: Drawn[];
}

function drawnFrom(order: readonly Waiting[]): Drawn[] {
  const drawn: Drawn[] = [];
  for (const { id, from, to, minutes, urgent, after } of order) {
    const before = after.length === 0 ? [] : drawn.filter((one) => after.includes(one.id));
    drawn.push({ id, from, to, minutes, urgent, after: before, keeps: to, last: to });
  }
  return drawn;
}

function minutesOf(members: readonly Drawn[]): number {
  let sum = 0;
  for (const { minutes } of members) sum += minutes;
  return sum;
}

/** What is urgent is done on its first day, and what it waits for by then; `order` has each after those it waits for. */
function drawIn(order: readonly Drawn[]): void {
  for (const one of order) one.last = one.urgent ? one.from : Math.min(one.to, one.keeps);
  for (let at = order.length - 1; at >= 0; at -= 1) {
    const one = order[at];
    if (one === undefined) continue;
    for (const before of one.after) before.last = Math.min(before.last, one.last);
  }
}

/** Nobody begins before what he waits for. */
function pushForward(order: readonly Drawn[]): void {
  for (const one of order) {
    for (const before of one.after) one.from = Math.max(one.from, before.from);
    if (one.from > one.keeps) one.keeps = one.to;
  }
}

/** Each on the first of the points that lies in its window. */
function grouped(order: readonly Drawn[], points: readonly number[]): Group[] {
  const groups = points.map((at): Group => ({ at, members: [] }));
  for (const one of order) groups.find(({ at }) => at >= one.from)?.members.push(one);
  return groups.filter(({ members }) => members.length > 0);
}

/** As many as have room on the day, the pressing ones first, nobody without what he waits for. */
function thatFit(group: Group, room: VehicleRoom): Set<Drawn> {
  const fits = new Set<Drawn>();
  let minutes = 0;
  const pressing = [...group.members].sort((a, b) => a.last - b.last);
  for (let more = true; more;) {
    more = false;
    for (const one of pressing) {
      if (fits.has(one) || !room.has(group.at, minutes + one.minutes)) continue;
      if (one.after.some((before) => group.members.includes(before) && !fits.has(before))) continue;
      fits.add(one);
      minutes += one.minutes;
      more = true;
    }
  }
  return fits;
}

/** The next day on which the whole group has room, keeps its windows and stays before the next group; null: none. */
function laterDay(group: Group, next: Group | undefined, room: VehicleRoom): number | null {
  let last = (next?.at ?? Number.POSITIVE_INFINITY) - 1;
  for (const one of group.members) last = Math.min(last, one.last);
  const minutes = minutesOf(group.members);
  for (let at = group.at + 1; at <= last; at += 1) if (room.has(at, minutes)) return at;
  return null;
}

interface Attempt {
  readonly groups: readonly Group[];
  readonly apart: readonly string[];
  /** a group for which there is no room within its windows */
  readonly full: Group | null;
}

function attempt(order: readonly Drawn[], given: readonly number[], room: VehicleRoom): Attempt {
  const open = order
    .filter(({ from, last }) => !given.some((at) => from <= at && at <= last))
    .map(({ id, from, last }) => ({ id, from, to: last }));
  const { points, disjoint } = earliestPoints(open);
  const apart = disjoint.map(({ id }) => id);
  const all = given.length === 0 ? points : [...new Set([...given, ...points])].sort((a, b) => a - b);
  const groups = grouped(order, all);
  if (!room.bounded) return { groups, apart, full: null };
  const placed: Group[] = [];
  for (const [index, group] of groups.entries()) {
    const fitsHere = room.has(group.at, minutesOf(group.members));
    // A day that is given is met, not moved: it is booked already.
    const movable = !given.includes(group.at);
    const at = fitsHere ? group.at : movable ? laterDay(group, groups[index + 1], room) : null;
    if (at === null) return { groups, apart, full: group };
    placed.push({ at, members: group.members });
  }
  return { groups: placed, apart, full: null };
}

/** Those that fit keep the day; the others go on to the next on which they have room by themselves. */
function moveOn(full: Group, room: VehicleRoom): void {
  const fit = thatFit(full, room);
  for (const one of full.members) {
    if (fit.has(one)) {
      one.keeps = full.at;
      continue;
    }
    one.from = full.at + 1;
    while (one.from <= one.to && !room.has(one.from, one.minutes)) one.from += 1;
  }
}

/** Those whose windows have run out, and whoever waits for them. */
function runOut(order: readonly Drawn[]): Set<Drawn> {
  const out = new Set<Drawn>();
  for (const one of order) if (one.from > one.to || one.after.some((before) => out.has(before))) out.add(one);
  return out;
}

function bundled(order: readonly Waiting[], given: readonly number[], room: VehicleRoom): VehicleDays {
  const noRoom: string[] = [];
  let left = drawnFrom(order);
  for (;;) {
    drawIn(left);
    const { groups, apart, full } = attempt(left, given, room);
    if (full === null) {
      const dayOf = new Map<string, number>();
      for (const { at, members } of groups) for (const { id } of members) dayOf.set(id, at);
      return { dayOf, noRoom, apart };
    }
    moveOn(full, room);
    pushForward(left);
    const out = runOut(left);
    if (out.size === 0) continue;
    for (const { id } of out) noRoom.push(id);
    left = left.filter((one) => !out.has(one));
  }
}

function oneByOne(order: readonly Waiting[], given: readonly number[], days: number, room: VehicleRoom): VehicleDays {
  const drawn = drawnFrom(order);
  drawIn(drawn);
  const dayOf = placeOneByOne(drawn, given, days, room);
  return { dayOf, noRoom: order.flatMap(({ id }) => (dayOf.has(id) ? [] : [id])), apart: [] };
}

/**
 * `order` has each after those it waits for, no window is empty and none begins before one it waits for. `given` are days
 * on which the vehicle comes anyway, `days` is how many it has. Takes the room that it uses. Without bounds n·log n; with
 * them as many turns again as days turn out to be full, each of which moves something on.
 */
export function planVehicle(
  order: readonly Waiting[],
  given: readonly number[],
  days: number,
  room: VehicleRoom,
): VehicleDays {
  const first = bundled(order, given, room);
  const second = first.noRoom.length > 0 ? oneByOne(order, given, days, room) : first;
  const best = second.noRoom.length < first.noRoom.length ? { ...second, apart: first.apart } : first;
  for (const { id, minutes } of order) {
    const at = best.dayOf.get(id);
    if (at !== undefined) room.take(at, minutes);
  }
  return best;
}
