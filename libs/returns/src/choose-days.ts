/**
 * Vehicles choose their days one after another, because they share the bays. Where one finds no room, it is let choose
 * first and all choose again, a few times; the best round counts: the fewest follow-ups without room, then the fewest
 * returns.
 */
import type { LocalDate } from '@holdfast/shop-calendar';
import { DayRoom } from './day-room.js';
import type { VehiclePlan } from './sort-follow-ups.js';
import { type VehicleDays, planVehicle } from './vehicle-days.js';

interface Turn {
  readonly vehicleId: string;
  readonly plan: VehiclePlan;
  readonly rank: string;
}

export interface ChosenDays {
  readonly vehicleId: string;
  readonly plan: VehiclePlan;
  readonly planned: VehicleDays;
}

const mostRounds = 4;
/** Rounds are for shops whose vehicles are few; with more than this many turns in all there is one. */
const mostTurns = 2000;

/** Those with urgent work first, then those whose first limit comes first: they choose their days first. */
function inTurn(vehicles: ReadonlyMap<string, VehiclePlan>): Turn[] {
  const turns = [...vehicles].flatMap(([vehicleId, plan]) => {
    if (plan.waiting.length === 0) return [];
    const last = plan.waiting.reduce((least, { to }) => Math.min(least, to), Number.POSITIVE_INFINITY);
    const urgent = plan.waiting.some((one) => one.urgent) ? '0' : '1';
    return [{ vehicleId, plan, rank: `${urgent} ${plan.days[last] ?? ''} ${vehicleId}` }];
  });
  return turns.sort((a, b) => (a.rank < b.rank ? -1 : 1));
}

function oneRound(turns: readonly Turn[], room: DayRoom): ChosenDays[] {
  return turns.map(({ vehicleId, plan }) => {
    return { vehicleId, plan, planned: planVehicle(plan.waiting, plan.given, plan.days.length, room.of(plan)) };
  });
}

/** Follow-ups without room, and returns: fewer of the first is better, then fewer of the second. */
function costOf(round: readonly ChosenDays[]): readonly [noRoom: number, returns: number] {
  let [noRoom, returns] = [0, 0];
  for (const { planned } of round) {
    noRoom += planned.noRoom.length;
    returns += new Set(planned.dayOf.values()).size;
  }
  return [noRoom, returns];
}

/** The days of every vehicle with something waiting. `free`: bay minutes by day; null: no bounds, and one round. */
export function chooseDays(
  vehicles: ReadonlyMap<string, VehiclePlan>,
  workingDays: readonly LocalDate[],
  free: ReadonlyMap<LocalDate, number> | null,
): readonly ChosenDays[] {
  let turns = inTurn(vehicles);
  let best = oneRound(turns, new DayRoom(workingDays, free));
  let last = best;
  const rounds = Math.min(mostRounds, Math.floor(mostTurns / Math.max(1, turns.length)));
  for (let round = 1; round < rounds && costOf(best)[0] > 0; round += 1) {
    const without = new Set(last.flatMap(({ vehicleId, planned }) => (planned.noRoom.length > 0 ? [vehicleId] : [])));
    const first = (turn: Turn): number => (without.has(turn.vehicleId) ? 0 : 1);
    turns = [...turns].sort((a, b) => first(a) - first(b));
    last = oneRound(turns, new DayRoom(workingDays, free));
    const [now, before] = [costOf(last), costOf(best)];
    if (now[0] < before[0] || (now[0] === before[0] && now[1] < before[1])) best = last;
  }
  return best;
}
