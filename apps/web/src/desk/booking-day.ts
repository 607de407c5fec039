import { calendarOfBoard, type Board } from '@holdfast/board';

/** When the shop opens on that day (of its zone), epoch ms; the start of the day where it stays closed. */
export const openingOn = (board: Board, day: string): number => {
  const calendar = calendarOfBoard(board);
  const { from, to } = calendar.dayBounds(day);
  return calendar.openIntervals(from, to)[0]?.from ?? from;
};
