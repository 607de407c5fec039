import type { Interval } from '@holdfast/shop-calendar';
import { calendarOfBoard, type Board } from '@holdfast/board';

import { nowShare } from '../strip/strip-scale.js';

const hour = 3_600_000;
/** Less of the past than this would stretch the first minutes of a day over half the screen. */
const leastPastMs = 4 * hour;
const usualPastMs = 8 * hour;

/**
 * What the strips of the floor show at `now` (epoch ms): from the opening of the working day, or eight hours back where
 * it has not opened, with past and future at one pace around the fixed place of "now".
 */
export const floorWindow = (board: Board, now: number): Interval => {
  const calendar = calendarOfBoard(board);
  const day = calendar.workingDayBounds(calendar.workingDayOf(now));
  const opening = calendar.openIntervals(day.from, day.to)[0]?.from;
  const past = opening === undefined || opening >= now ? usualPastMs : Math.max(leastPastMs, now - opening);
  return { from: now - past, to: now + (past * (1 - nowShare)) / nowShare };
};
