import { scaleLinear } from 'd3-scale';

/** "Now" stands at this share of the width on every strip and axis. */
export const nowShare = 0.46;

export type StripScale = (at: number) => number;

/** A window of `spanMinutes` around `now` (epoch ms) in which past and future run at one pace. */
export const stripWindow = (now: number, spanMinutes: number): { from: number; to: number } => {
  const span = spanMinutes * 60_000;
  return { from: now - span * nowShare, to: now + span * (1 - nowShare) };
};

/**
 * Instants (epoch ms) to CSS pixels, clamped to the strip. With `now` inside the window it stands at `nowShare` of the
 * width; a window that is over (or still to come) runs evenly from edge to edge.
 */
export const stripScale = (window: { from: number; to: number; now: number }, width: number): StripScale => {
  const { from, to, now } = window;
  const inside = now > from && now < to;
  const scale = inside
    ? scaleLinear([from, now, to], [0, width * nowShare, width])
    : scaleLinear([from, to], [0, width]);
  return scale.clamp(true);
};

const minute = 60_000;
const stepMinutes = [15, 30, 60, 120, 180, 360, 720, 1440] as const;

/**
 * Instants for the axis: whole hours (or quarters, halves …) of the shop's zone, at least `leastPixels` apart.
 * `offsetMinutes` is the zone's offset from UTC in the window, so that 3-hour steps fall on 09:00 and 12:00.
 */
export const axisTicks = (
  window: { from: number; to: number },
  width: number,
  offsetMinutes: number,
  leastPixels = 76,
): number[] => {
  const pixelsPerMinute = width / ((window.to - window.from) / minute);
  const step = (stepMinutes.find((candidate) => candidate * pixelsPerMinute >= leastPixels) ?? 1440) * minute;
  const offset = offsetMinutes * minute;
  const first = Math.ceil((window.from + offset) / step) * step - offset;
  return Array.from({ length: Math.max(0, Math.floor((window.to - first) / step) + 1) }, (_, at) => first + at * step);
};
