import type { HoldReason } from '@holdfast/domain';
import type { Calendar } from '@holdfast/shop-calendar';

import type { AgeTickCount } from '../ui/marks/age-ticks.js';
import type { Waiting } from '../ui/marks/wait-mark.js';

/**
 * Opening minutes after which a wait for this reason is past its limit, so that its blue is solid. Null: it has its own
 * end, or nobody can hasten it, and nobody is said to wait.
 */
const limitMinutes: Readonly<Record<HoldReason, number | null>> = {
  parts: 480,
  goAhead: 120,
  sublet: 960,
  information: 60,
  tool: 60,
  bay: 120,
  technician: 120,
  setting: null,
  conditions: null,
  assessor: 960,
  collection: 480,
  other: 120,
};

/** After so many opening minutes without a reason a standing vehicle counts as somebody waiting. */
const noReasonMinutes = 15;

/** Whether somebody waits, and whether longer than the reason's limit. `reason` null: nobody said why. */
export const waitingFor = (reason: HoldReason | null, openMinutes: number): Waiting | undefined => {
  if (reason === null) return openMinutes > noReasonMinutes ? 'past' : undefined;
  const limit = limitMinutes[reason];
  if (limit === null) return undefined;
  return openMinutes > limit ? 'past' : 'within';
};

const usualDayMinutes = 480;

/** Ticks of a wait between two instants (epoch ms), by opening time: < 1 h, < 4 h, < one working day, longer. */
export const ageTicks = (calendar: Calendar, since: number, now: number): AgeTickCount => {
  const minutes = calendar.openMinutes(since, now);
  if (minutes < 60) return 1;
  if (minutes < 240) return 2;
  const { from, to } = calendar.workingDayBounds(calendar.workingDayOf(now));
  return minutes < (calendar.openMinutes(from, to) || usualDayMinutes) ? 3 : 4;
};
