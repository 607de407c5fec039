/**
 * How full the coming days are: book time with the go-ahead against the time of people, a sum and no plan. What waits for
 * parts or for a bay is not looked at here.
 */
export interface Capacity {
  /** Calendar day of the shop's zone. */
  readonly day: string;
  readonly peopleMinutes: number;
}

export interface Booked {
  readonly day: string;
  readonly minutes: number;
}

export interface LoadOfDay extends Capacity {
  readonly loadMinutes: number;
  readonly bookedMinutes: number;
  readonly bookedJobs: number;
}

/**
 * The work of booked visits falls to their own day, wholly, even where it is more than the day has. What is left of the
 * work on the premises (`here`, minutes) fills what remains of each day in turn, from the first; what the last day cannot
 * take is left out. Days in order; bookings before the first day count as here: they are late.
 */
export function spreadLoad(days: readonly Capacity[], here: number, booked: readonly Booked[]): LoadOfDay[] {
  const first = days[0]?.day ?? '';
  let left = here + sumOf(booked.filter((one) => one.day < first));
  return days.map(({ day, peopleMinutes }) => {
    const ofDay = booked.filter((one) => one.day === day);
    const bookedMinutes = sumOf(ofDay);
    const taken = Math.min(left, Math.max(0, peopleMinutes - bookedMinutes));
    left -= taken;
    return { day, peopleMinutes, bookedMinutes, loadMinutes: bookedMinutes + taken, bookedJobs: ofDay.length };
  });
}

const sumOf = (list: readonly Booked[]) => list.reduce((sum, one) => sum + one.minutes, 0);
