/** Working days as positions, the days that suit a customer, and the bay minutes still free on each day. */
import { type LocalDate, type Weekday, weekdayOf } from '@holdfast/shop-calendar';

/** When a customer can bring the vehicle. */
export interface CustomersDays {
  readonly vehicleId: string;
  /** absent: any working day */
  readonly weekdays?: readonly Weekday[];
  readonly notOn: readonly LocalDate[];
}

/** Position of the first day not before `day` in a rising list of days; its length if there is none. */
export function firstNotBefore(days: readonly LocalDate[], day: LocalDate): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] ?? '') < day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Position of the last day not after `day`; −1 if there is none. */
export function lastNotAfter(days: readonly LocalDate[], day: LocalDate): number {
  const next = firstNotBefore(days, day);
  return days[next] === day ? next : next - 1;
}

/** The days of one vehicle, and where each stands among the working days. */
export interface SuitableDays {
  readonly days: readonly LocalDate[];
  /** position among the working days, −1 for a booked day that is none; null: these are the working days themselves */
  readonly among: readonly number[] | null;
}

/** Working days by customer: weekdays are looked up once for all of them. */
export function suitableDays(
  workingDays: readonly LocalDate[],
): (customer: CustomersDays | undefined, booked: readonly LocalDate[]) => SuitableDays {
  const every: SuitableDays = { days: workingDays, among: null };
  let weekdays: readonly Weekday[] | null = null;
  return (customer, booked) => {
    const extra = booked.filter((day) => workingDays[firstNotBefore(workingDays, day)] !== day);
    if (customer === undefined && extra.length === 0) return every;
    weekdays ??= workingDays.map(weekdayOf);
    const notOn = new Set(customer?.notOn);
    const wanted = customer?.weekdays;
    const suits = workingDays.filter((day, at) => {
      const weekday = weekdays?.[at];
      return !notOn.has(day) && (wanted === undefined || (weekday !== undefined && wanted.includes(weekday)));
    });
    const days = booked.length === 0 ? suits : [...new Set([...suits, ...booked])].sort();
    const among = days.map((day) => {
      const at = firstNotBefore(workingDays, day);
      return workingDays[at] === day ? at : -1;
    });
    return { days, among };
  };
}

/** Bay minutes still free by working day; a day that is not listed has no bound. */
export class DayRoom {
  private readonly free: Float64Array | null;

  constructor(workingDays: readonly LocalDate[], freeMinutes: ReadonlyMap<LocalDate, number> | null) {
    this.free =
      freeMinutes === null
        ? null
        : Float64Array.from(workingDays, (day) => freeMinutes.get(day) ?? Number.POSITIVE_INFINITY);
  }

  /** The same room by the positions of one vehicle's days. */
  of({ among }: SuitableDays): VehicleRoom {
    return new VehicleRoom(this.free, among);
  }
}

/** Room by positions in the days of a vehicle. */
export class VehicleRoom {
  constructor(
    private readonly free: Float64Array | null,
    private readonly among: readonly number[] | null,
  ) {}

  get bounded(): boolean {
    return this.free !== null;
  }

  has(at: number, minutes: number): boolean {
    if (this.free === null) return true;
    const left = this.free[this.among === null ? at : (this.among[at] ?? -1)];
    return left === undefined || minutes <= left;
  }

  take(at: number, minutes: number): void {
    const position = this.among === null ? at : (this.among[at] ?? -1);
    if (this.free === null || position < 0) return;
    this.free[position] = (this.free[position] ?? 0) - minutes;
  }
}
