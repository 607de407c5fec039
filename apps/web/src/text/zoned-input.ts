const wallClocks = new Map<string, Intl.DateTimeFormat>();

const wallClock = (zone: string): Intl.DateTimeFormat => {
  const known = wallClocks.get(zone);
  if (known !== undefined) return known;
  const numeric = 'numeric';
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    ...{ year: numeric, month: numeric, day: numeric, hour: numeric, minute: numeric, second: numeric },
  });
  wallClocks.set(zone, made);
  return made;
};

/** Offset of `zone` from UTC at the instant `at`, in milliseconds (positive east). */
export const offsetAt = (at: number, zone: string): number => {
  const parts = wallClock(zone).formatToParts(at);
  const part = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((candidate) => candidate.type === type)?.value);
  const wall = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second'));
  return wall - Math.floor(at / 1000) * 1000;
};

/** An instant (epoch ms) as the value of a `datetime-local` input, `2026-11-25T09:24`, in the shop's zone. */
export const toZonedInput = (at: number, zone: string): string =>
  new Date(at + offsetAt(at, zone)).toISOString().slice(0, 16);

/**
 * The instant (epoch ms) that a `datetime-local` value means in the shop's zone; null for what is no date and time.
 * Where clocks go back the earlier of the two instants is meant; a time that clocks skip moves on by the skipped span
 * (RFC 5545, section 3.3.5, says both).
 */
export const fromZonedInput = (value: string, zone: string): number | null => {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(value)) return null;
  const wall = Date.parse(`${value}Z`);
  if (Number.isNaN(wall)) return null;
  const day = 86_400_000;
  const before = wall - offsetAt(wall - day, zone);
  if (before + offsetAt(before, zone) === wall) return before;
  const after = wall - offsetAt(wall + day, zone);
  return after + offsetAt(after, zone) === wall ? after : before;
};
