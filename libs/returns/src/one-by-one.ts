/**
 * The other way to fill days that are nearly full: the most pressing follow-ups first, each as early as it has room; then
 * returns are given up whose follow-ups all find room on other days of the vehicle. It places more than bundling does
 * where room is short, and is used only where bundling has left something without room.
 */
import type { VehicleRoom } from './day-room.js';

/** A follow-up with its window in positions, `last` drawn in by urgency and by what waits for it, never after `to`. */
export interface Pressing {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly last: number;
  readonly minutes: number;
  readonly after: readonly Pressing[];
}

interface Filling {
  readonly dayOf: Map<Pressing, number>;
  readonly used: Map<number, number>;
}

const usedOn = (filling: Filling, at: number): number => filling.used.get(at) ?? 0;

function put(filling: Filling, one: Pressing, at: number): void {
  filling.dayOf.set(one, at);
  filling.used.set(at, usedOn(filling, at) + one.minutes);
}

/** The first day from `from` on that has room for it; past `to` if none has. */
function firstWithRoom(one: Pressing, from: number, filling: Filling, room: VehicleRoom): number {
  let at = from;
  while (at <= one.to && !room.has(at, usedOn(filling, at) + one.minutes)) at += 1;
  return at;
}

/**
 * Day after day, on each the most pressing that can lie there. Days on which nothing can are jumped over.
 * n² steps of looking for room, n small: the open follow-ups of one vehicle.
 */
function fill(order: readonly Pressing[], days: number, room: VehicleRoom): Filling {
  const filling: Filling = { dayOf: new Map(), used: new Map() };
  const waiting = [...order].sort((a, b) => a.last - b.last);
  for (let at = 0; at < days;) {
    let next = days;
    let chosen: Pressing | null = null;
    for (const one of waiting) {
      if (filling.dayOf.has(one) || one.after.some((before) => !filling.dayOf.has(before))) continue;
      const own = firstWithRoom(one, Math.max(at, one.from), filling, room);
      if (own > one.to || own >= next) continue;
      next = own;
      chosen = one;
      if (own === at) break;
    }
    if (chosen === null) break;
    put(filling, chosen, next);
    at = next;
  }
  return filling;
}

/** The days between which a follow-up may lie, as the others lie now. */
function between(one: Pressing, order: readonly Pressing[], { dayOf }: Filling): readonly [number, number] {
  let [first, last] = [one.from, one.to];
  for (const before of one.after) first = Math.max(first, dayOf.get(before) ?? first);
  for (const other of order) if (other.after.includes(one)) last = Math.min(last, dayOf.get(other) ?? last);
  return [first, last];
}

/** Gives up a return if each of its follow-ups finds room on another day on which the vehicle comes. */
function withoutReturn(at: number, order: readonly Pressing[], filling: Filling, room: VehicleRoom): Filling | null {
  const trial: Filling = { dayOf: new Map(filling.dayOf), used: new Map(filling.used) };
  trial.used.delete(at);
  for (const one of order) {
    if (filling.dayOf.get(one) !== at) continue;
    const [first, last] = between(one, order, trial);
    const comes = [...trial.used.keys()].sort((a, b) => a - b);
    const other = comes.find((day) => {
      return first <= day && day <= last && room.has(day, usedOn(trial, day) + one.minutes);
    });
    if (other === undefined) return null;
    put(trial, one, other);
  }
  return trial;
}

/** The day of each that found room, by id. `given` are days on which the vehicle comes anyway. */
export function placeOneByOne(
  order: readonly Pressing[],
  given: readonly number[],
  days: number,
  room: VehicleRoom,
): ReadonlyMap<string, number> {
  let filling = fill(order, days, room);
  for (const at of given) if (!filling.used.has(at)) filling.used.set(at, 0);
  const emptiestFirst = [...filling.used].sort(([, a], [, b]) => a - b).map(([at]) => at);
  for (const at of emptiestFirst) {
    if (!given.includes(at)) filling = withoutReturn(at, order, filling, room) ?? filling;
  }
  return new Map([...filling.dayOf].map(([{ id }, at]) => [id, at]));
}
