/**
 * Which days vehicles come back on, for which follow-ups. Empty windows first, with the days missing and what can be done;
 * then the proposed returns. What is urgent is never put off to be bundled; the rest comes back as seldom as its windows
 * allow, on the earliest such days that suit the customer and have room.
 */
import type { LocalDate } from '@holdfast/shop-calendar';
import { chooseDays } from './choose-days.js';
import { lastNotAfter } from './day-room.js';
import { type OpenFollowUp, firstDays, firstLimit, inOrder } from './follow-up-windows.js';
import type { EmptyWindow, ProposedReturn, ReturnsInput, ReturnsProposal } from './proposal.js';
import { type VehiclePlan, type WaitingFollowUp, SortedFollowUps, bookedDays } from './sort-follow-ups.js';

/** The chance that every shipment not in hand is here by the day; those of one shipment count once. */
export function chanceAllHere(
  followUps: readonly OpenFollowUp[],
  day: LocalDate,
  chanceHere: ReturnsInput['chanceHere'],
): number | null {
  const shipments = new Set(
    followUps.flatMap(({ parts }) => parts.flatMap(({ inHand, shipmentId }) => (inHand ? [] : [shipmentId]))),
  );
  let chance = 1;
  for (const shipment of shipments) {
    const one = chanceHere?.(shipment, day) ?? null;
    if (one === null) return null;
    chance *= one;
  }
  return chance;
}

function returnOf(
  windows: readonly WaitingFollowUp[],
  at: number,
  plan: VehiclePlan,
  input: ReturnsInput,
): ProposedReturn {
  const day = plan.days[at] ?? '';
  const members = windows.map(({ followUp }) => followUp);
  const limits = members.flatMap(({ limits: own }) => firstLimit(own)?.day ?? []).sort();
  const from = plan.days[Math.max(...windows.map((one) => one.from))] ?? day;
  const to = limits[0] === undefined ? null : (plan.days[lastNotAfter(plan.days, limits[0])] ?? day);
  return {
    vehicleId: members[0]?.vehicleId ?? '',
    day,
    joins: plan.booked.find((booked) => booked.day === day)?.returnId ?? null,
    followUpIds: members.map(({ followUpId }) => followUpId),
    bayMinutes: members.reduce((sum, one) => sum + one.bayMinutes, 0),
    between: { from, to },
    bookable: members.every(({ parts, goAhead }) => typeof goAhead !== 'object' && parts.every(({ inHand }) => inHand)),
    chanceAllParts: chanceAllHere(members, day, input.chanceHere),
  };
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Proposes returns for all open follow-ups of a shop. Every follow-up that is not booked comes out exactly once: empty,
 * in a return, or not planned, with the reason. The answer is the same for the same input, whatever its order of vehicles.
 * RangeError: working days that do not rise or begin before today.
 */
export function proposeReturns(input: ReturnsInput): ReturnsProposal {
  const { workingDays, today } = input;
  if (workingDays.some((day, at) => day <= (workingDays[at - 1] ?? '') || day < today)) {
    throw new RangeError('Working days have to rise and begin today or later.');
  }
  const ordered = inOrder(input.followUps);
  const proposal = new SortedFollowUps(input, ordered, firstDays(ordered, today, bookedDays(input)));
  proposal.sort();
  const returns: ProposedReturn[] = [];
  const apart = new Map<string, readonly string[]>();
  for (const { vehicleId, plan, planned } of chooseDays(proposal.vehicles, workingDays, input.freeBayMinutes ?? null)) {
    for (const followUpId of planned.noRoom) proposal.leave({ followUpId, why: 'noRoom' });
    if (planned.apart.length > 1) apart.set(vehicleId, planned.apart);
    const byDay = new Map<number, WaitingFollowUp[]>();
    for (const one of plan.waiting) {
      const at = planned.dayOf.get(one.id);
      if (at === undefined) continue;
      const list = byDay.get(at);
      if (list === undefined) byDay.set(at, [one]);
      else list.push(one);
    }
    for (const [at, windows] of byDay) {
      returns.push(returnOf(windows, at, plan, input));
    }
  }
  return {
    empty: proposal.empty.sort(worstFirst(today)),
    returns: returns.sort((a, b) => byText(a.day, b.day) || byText(a.vehicleId, b.vehicleId)),
    notPlanned: proposal.notPlanned,
    apart,
    otherVehicle: ordered.otherVehicle,
  };
}

const worstFirst =
  (today: LocalDate) =>
  (a: EmptyWindow, b: EmptyWindow): number => {
    const passed = (one: EmptyWindow): number => (one.limit.day < today ? 0 : 1);
    if (passed(a) !== passed(b)) return passed(a) - passed(b);
    if (passed(a) === 0 && a.limit.day !== b.limit.day) return byText(a.limit.day, b.limit.day);
    const missing = (one: EmptyWindow): number => one.daysMissing ?? Number.POSITIVE_INFINITY;
    const more = missing(b) - missing(a);
    return Number.isNaN(more) || more === 0 ? byText(a.followUpId, b.followUpId) : more;
  };
