import type { DayLoadView } from '@holdfast/contract';

export type LoadedDay = DayLoadView['days'][number];

/** Minutes of people that no work has been given to on that day; below nought where it is over. */
export const roomOf = ({ peopleMinutes, loadMinutes }: Pick<LoadedDay, 'peopleMinutes' | 'loadMinutes'>): number =>
  peopleMinutes - loadMinutes;

/** The first of these days with room for so many minutes in one go; null where none has it, or nothing is asked for. */
export const firstDayWithRoom = (days: readonly LoadedDay[], minutes: number): LoadedDay | null =>
  minutes <= 0 ? null : (days.find((day) => roomOf(day) >= minutes) ?? null);

/** Minutes that the whole width of a bar stands for: one scale for all days that are shown together. */
export const scaleOf = (days: readonly LoadedDay[]): number =>
  Math.max(60, ...days.map(({ peopleMinutes, loadMinutes }) => Math.max(peopleMinutes, loadMinutes)));

export type BarParts = {
  /** Percent of the width. */
  readonly frame: number;
  readonly within: number;
  /** What is more than the people have; it stands past the frame. */
  readonly past: number;
};

/** A day's bar: the frame is the hours of people, the fill the book hours, drawn on past the frame where there are more. */
export const barOf = ({ peopleMinutes, loadMinutes }: LoadedDay, scale: number): BarParts => {
  const percent = (minutes: number): number => Math.round((minutes / scale) * 1000) / 10;
  const within = Math.min(loadMinutes, peopleMinutes);
  return { frame: percent(peopleMinutes), within: percent(within), past: percent(loadMinutes) - percent(within) };
};
