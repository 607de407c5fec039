import type { Visit } from '@holdfast/board';
import type { HoldReason } from '@holdfast/domain';
import type { Calendar } from '@holdfast/shop-calendar';

import type { AgeTickCount } from '../ui/marks/age-ticks.js';
import type { Waiting } from '../ui/marks/wait-mark.js';

/**
 * For how many minutes of opening time somebody may wait for each reason before the wait is past its limit. Null: nobody's
 * move, or an end of its own. Our own figures for a start; they are measured against a record later.
 */
export const limitMinutes: Readonly<Record<HoldReason | 'noReason', number | null>> = {
  parts: 480,
  goAhead: 120,
  sublet: 960,
  information: 120,
  tool: 60,
  bay: 120,
  technician: 60,
  setting: null,
  conditions: null,
  assessor: 480,
  collection: 960,
  other: 240,
  noReason: 60,
};

/** A shop that is closed that day: what then counts as one working day, in minutes. */
const usualDayMinutes = 480;

/** Age of a wait in opening time: below an hour, below four, below one working day of this shop, longer. */
export const ageTicksOf = (minutes: number, dayMinutes: number): AgeTickCount => {
  if (minutes < 60) return 1;
  if (minutes < 240) return 2;
  return minutes < dayMinutes ? 3 : 4;
};

/** Opening minutes of the working day of `now` (epoch ms). */
export const dayMinutesOf = (calendar: Calendar, now: number): number => {
  const { from, to } = calendar.workingDayBounds(calendar.workingDayOf(now));
  return calendar.openMinutes(from, to) || usualDayMinutes;
};

export type WaitOfVisit = {
  /** Opening minutes since it began. */
  readonly minutes: number;
  readonly ticks: AgeTickCount;
  readonly waiting: Waiting | undefined;
};

/** How long a visit has waited at `now`, and whether somebody waits within or past the limit; null while it does not. */
export const waitOf = ({ state }: Pick<Visit, 'state'>, calendar: Calendar, now: number): WaitOfVisit | null => {
  if (state.kind !== 'held' && (state.kind !== 'noReason' || !state.workLeft)) return null;
  const minutes = calendar.openMinutes(state.since, now);
  const limit = limitMinutes[state.kind === 'held' ? state.reason : 'noReason'];
  const waiting = limit === null ? undefined : minutes > limit ? 'past' : 'within';
  return { minutes, ticks: ageTicksOf(minutes, dayMinutesOf(calendar, now)), waiting };
};
