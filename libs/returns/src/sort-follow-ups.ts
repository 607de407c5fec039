/**
 * Every follow-up where it belongs: booked already, with an empty window, not to be planned, or waiting for a day of its
 * vehicle. Each lands in exactly one of these, with the reason.
 */
import { type LocalDate, daysBetween } from '@holdfast/shop-calendar';
import { type CustomersDays, type SuitableDays, firstNotBefore, lastNotAfter, suitableDays } from './day-room.js';
import { type FirstDay, type FollowUpLimit, type OpenFollowUp, type Ordered, firstLimit } from './follow-up-windows.js';
import type { BookedReturn, EmptyWindow, NotPlanned, ReturnsInput, WhatCanBeDone } from './proposal.js';
import type { Waiting } from './vehicle-days.js';

/** The day by follow-up of all returns that are booked for today or later. */
export function bookedDays(input: Pick<ReturnsInput, 'booked' | 'today'>): ReadonlyMap<string, LocalDate> {
  const days = new Map<string, LocalDate>();
  for (const { day, followUpIds } of input.booked ?? []) {
    if (day >= input.today) for (const id of followUpIds) days.set(id, day);
  }
  return days;
}

/** A follow-up with its window, waiting for a day. */
export interface WaitingFollowUp extends Waiting {
  readonly followUp: OpenFollowUp;
}

/** Everything about one vehicle's days, made once. */
export interface VehiclePlan extends SuitableDays {
  readonly given: number[];
  readonly booked: BookedReturn[];
  readonly waiting: WaitingFollowUp[];
}

export class SortedFollowUps {
  readonly empty: EmptyWindow[] = [];
  readonly notPlanned: NotPlanned[] = [];
  readonly vehicles = new Map<string, VehiclePlan>();
  /** ids without a day, and so without a day for whoever waits for them */
  private readonly without = new Set<string>();
  private readonly settled: ReadonlySet<string>;
  /** the earliest booked day of those that wait for it, by id */
  private readonly neededBy = new Map<string, LocalDate>();
  private readonly bookedOf = new Map<string, BookedReturn[]>();
  private readonly customers: ReadonlyMap<string, CustomersDays>;
  private readonly suitable: ReturnType<typeof suitableDays>;

  constructor(
    private readonly input: ReturnsInput,
    private readonly ordered: Ordered,
    private readonly first: readonly FirstDay[],
  ) {
    this.suitable = suitableDays(input.workingDays);
    this.customers = new Map((input.customersDays ?? []).map((one) => [one.vehicleId, one]));
    for (const booked of input.booked ?? []) {
      if (booked.day < input.today) continue;
      const list = this.bookedOf.get(booked.vehicleId);
      if (list === undefined) this.bookedOf.set(booked.vehicleId, [booked]);
      else list.push(booked);
    }
    const days = bookedDays(input);
    this.settled = new Set(days.keys());
    for (const [id, day] of days) {
      for (const before of ordered.after.get(id) ?? []) {
        const other = this.neededBy.get(before);
        if (other === undefined || day < other) this.neededBy.set(before, day);
      }
    }
  }

  /** Puts every follow-up where it belongs: empty, not planned, or among those of its vehicle. */
  sort(): void {
    for (const circle of this.ordered.circles) {
      for (const followUpId of circle) this.leave({ followUpId, why: 'circle', circle });
    }
    if (this.ordered.order.length < this.input.followUps.length) this.leaveThoseBehindCircles();
    this.ordered.order.forEach((followUp, at) => {
      const first = this.first[at];
      if (first !== undefined && !this.settled.has(followUp.followUpId)) this.place(followUp, first);
    });
  }

  /** Not in a circle themselves, and wait for one. */
  private leaveThoseBehindCircles(): void {
    const inCircle = new Set(this.ordered.circles.flat());
    const ordered = new Set(this.ordered.order.map(({ followUpId }) => followUpId));
    for (const { followUpId, after } of this.input.followUps) {
      if (ordered.has(followUpId) || inCircle.has(followUpId)) continue;
      this.leave({ followUpId, why: 'waitsFor', other: after.find((id) => !ordered.has(id)) ?? '' });
    }
  }

  private plan(vehicleId: string): VehiclePlan {
    const known = this.vehicles.get(vehicleId);
    if (known !== undefined) return known;
    const booked = this.bookedOf.get(vehicleId) ?? [];
    const suitable = this.suitable(
      this.customers.get(vehicleId),
      booked.map(({ day }) => day),
    );
    const given = booked.map(({ day }) => firstNotBefore(suitable.days, day));
    const plan: VehiclePlan = { ...suitable, given, booked, waiting: [] };
    this.vehicles.set(vehicleId, plan);
    return plan;
  }

  private place(followUp: OpenFollowUp, first: FirstDay): void {
    const { followUpId, vehicleId } = followUp;
    const limit = this.limitOf(followUp);
    const plan = this.plan(vehicleId);
    const from = first.day === null ? plan.days.length : firstNotBefore(plan.days, first.day);
    const to = limit === null ? plan.days.length - 1 : lastNotAfter(plan.days, limit.day);
    if (limit !== null && this.isEmpty(first, limit, from > to)) {
      this.without.add(followUpId);
      this.empty.push(emptyWindow(followUp, first, limit, plan.days[from] ?? null, this.input.today));
      return;
    }
    const after = followUp.after.length === 0 ? [] : (this.ordered.after.get(followUpId) ?? []);
    const missing = after.find((id) => this.without.has(id));
    if (first.day === null) this.leave({ followUpId, why: 'noDate' });
    else if (missing !== undefined) this.leave({ followUpId, why: 'waitsFor', other: missing });
    else if (from >= plan.days.length || from > to) this.leave({ followUpId, why: 'beyondHorizon' });
    else {
      const { bayMinutes: minutes, urgency } = followUp;
      const open = after.filter((id) => !this.settled.has(id));
      plan.waiting.push({ followUp, id: followUpId, from, to, minutes, urgent: urgency === 'urgent', after: open });
    }
  }

  /** Its first limit, or the booked day of a follow-up that waits for it, whichever comes first. */
  private limitOf({ followUpId, limits }: OpenFollowUp): FollowUpLimit | null {
    const booked = this.neededBy.get(followUpId);
    return firstLimit(booked === undefined ? limits : [...limits, { kind: 'booked', day: booked }]);
  }

  private isEmpty(first: FirstDay, limit: FollowUpLimit, noDay: boolean): boolean {
    if (limit.day < this.input.today || first.day === null || first.day > limit.day) return true;
    return noDay && this.within(limit);
  }

  /** Whether the working days given reach as far as the limit. */
  private within(limit: FollowUpLimit): boolean {
    return limit.day <= (this.input.workingDays.at(-1) ?? '');
  }

  leave(entry: NotPlanned): void {
    if (this.settled.has(entry.followUpId)) return;
    this.without.add(entry.followUpId);
    this.notPlanned.push(entry);
  }
}

function emptyWindow(
  followUp: OpenFollowUp,
  first: FirstDay,
  limit: FollowUpLimit,
  firstDay: LocalDate | null,
  today: LocalDate,
): EmptyWindow {
  const { followUpId, vehicleId } = followUp;
  const passed = limit.day < today;
  const why = passed
    ? 'limitPassed'
    : first.day === null
      ? 'noDate'
      : first.day > limit.day
        ? 'needAfterLimit'
        : 'noDaySuits';
  const byNeed: Readonly<Record<FirstDay['because']['kind'], readonly WhatCanBeDone[]>> = {
    today: [],
    part: ['earlierOffer', 'otherSource'],
    goAhead: ['askForGoAhead'],
    followUp: ['otherFollowUpSooner'],
  };
  const canBeDone: WhatCanBeDone[] = [...byNeed[first.because.kind]];
  if (why === 'noDaySuits') canBeDone.push('otherDayWithCustomer');
  canBeDone.push('newMeasureAndLimit');
  const day = first.day === null ? null : (firstDay ?? first.day);
  const daysMissing = day === null ? null : daysBetween(limit.day, day);
  return { followUpId, vehicleId, why, first, limit, daysMissing, canBeDone };
}
