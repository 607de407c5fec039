import type { BayTimeClass, Segment } from '@holdfast/bay-time';
import { accountOfSpot, calendarOfBoard, rowsOf, type Board, type Spot, type Visit } from '@holdfast/board';
import type { HoldReason, Row } from '@holdfast/domain';
import type { Interval } from '@holdfast/shop-calendar';

import { ageTicksOf, dayMinutesOf, waitOf } from '../pieces/waiting-limits.js';
import type { SegmentKind, StitchedSpan, StripSegment } from '../strip/strip-model.js';

const kindOf: Readonly<Record<BayTimeClass, SegmentKind>> = {
  outOfUse: 'outOfUse',
  worked: 'worked',
  stored: 'stored',
  held: 'held',
  noReason: 'noReason',
  break: 'break',
  empty: 'empty',
};

const isWait = (segment: Segment): boolean => segment.class === 'held' || segment.class === 'noReason';

/** One wait, also where breaks or the night cut it into several stretches. */
const waitKey = (segment: Segment): string => [segment.class, segment.jobId, segment.reason, segment.holdId].join(' ');

/** The first stretch of each wait with the opening minutes that the whole of it took. */
const agesOf = (segments: readonly Segment[]): ReadonlyMap<Segment, number> => {
  const first = new Map<string, Segment>();
  const minutes = new Map<Segment, number>();
  for (const segment of segments.filter(isWait)) {
    const key = waitKey(segment);
    const start = first.get(key) ?? segment;
    first.set(key, start);
    minutes.set(start, (minutes.get(start) ?? 0) + (segment.to - segment.from) / 60_000);
  }
  return minutes;
};

/**
 * What became of a spot's time in the window, as its strip draws it; `visit` is the one that stands there now. Only a
 * wait that still lasts is one in which somebody waits.
 */
export const segmentsOfSpot = (
  board: Board,
  spot: Spot,
  visit: Visit | undefined,
  { window, now }: { readonly window: Interval; readonly now: number },
): StripSegment[] => {
  const calendar = calendarOfBoard(board);
  const { segments } = accountOfSpot(board, spot.bay.id, spot.spot, { from: window.from, to: now }, now);
  const ages = agesOf(segments);
  const dayMinutes = dayMinutesOf(calendar, now);
  const wait = visit && waitOf(visit, calendar, now);
  const kept = keptOf(board, spot, now);
  return segments.flatMap((segment, at) => {
    const { from, to, reason } = segment;
    const isLast = at === segments.length - 1 && to >= now;
    const age = ages.get(segment);
    const drawn: StripSegment = {
      from,
      to,
      kind: kindOf[segment.class],
      ...(reason === null || segment.class !== 'held' ? {} : { reason: reason as HoldReason }),
      ...(age === undefined ? {} : { ageTicks: ageTicksOf(age, dayMinutes) }),
      ...(isLast && wait && isWait(segment) ? lastingWait(visit, wait) : {}),
    };
    return withKept(drawn, kept);
  });
};

type Kept = Interval & { readonly plate: string };

/** When the spot was kept for a vehicle that was out, in order of time. */
const keptOf = (board: Board, spot: Spot, now: number): Kept[] =>
  rowsOf(board)
    .list('spotUse', (use) => use.bayId === spot.bay.id && use.spot === spot.spot && use.kind === 'kept')
    .map(({ fromAt, toAt, vehicleId }) => ({
      from: fromAt,
      to: toAt ?? now,
      plate: board.tables.vehicle.get(vehicleId)?.plate ?? '',
    }))
    .sort((a, b) => a.from - b.from);

/** The stretches of a segment in which nothing stood there are drawn as kept, whatever is worked or waited for meanwhile. */
export const withKept = (segment: StripSegment, kept: readonly Kept[]): StripSegment[] => {
  const parts: StripSegment[] = [];
  let { from } = segment;
  for (const { from: out, to: back, plate } of kept) {
    const [begins, ends] = [Math.max(from, out), Math.min(segment.to, back)];
    if (begins >= ends) continue;
    if (begins > from) parts.push({ ...segment, from, to: begins });
    parts.push({ from: begins, to: ends, kind: 'kept', label: plate });
    from = ends;
  }
  return from < segment.to ? [...parts, { ...segment, from }] : parts;
};

const lastingWait = (visit: Visit, wait: NonNullable<ReturnType<typeof waitOf>>): Partial<StripSegment> => ({
  since: visit.state.since,
  ageMinutes: wait.minutes,
  ageTicks: wait.ticks,
  ...(wait.waiting === undefined ? {} : { waiting: wait.waiting }),
});

type Use = Row<'spotUse'>;

/** The stitched line under one stay: from the first fix on the vehicle to the end of the stay, or to the last repair. */
const stitchedUnder = (use: Use, fixes: readonly Row<'temporaryFix'>[]): StitchedSpan | null => {
  const left = use.toAt ?? Number.POSITIVE_INFINITY;
  const on = fixes.filter((fix) => fix.since < left && (fix.endedAt === null || fix.endedAt > use.fromAt));
  if (on.length === 0) return null;
  const from = Math.max(use.fromAt, Math.min(...on.map((fix) => fix.since)));
  const last = Math.max(...on.map((fix) => fix.endedAt ?? Number.POSITIVE_INFINITY));
  if (last > left) return { from, to: use.toAt, ended: false };
  if (last === Number.POSITIVE_INFINITY) return { from, to: null, ended: false };
  const repaired = on.some((fix) => fix.endedAt === last && fix.endedHow === 'repaired');
  return { from, to: last, ended: repaired };
};

/** The stitched lines under all stays of the spot that reach into the window. */
export const stitchedOfSpot = (board: Board, spot: Spot, window: Interval): StitchedSpan[] => {
  const rows = rowsOf(board);
  return rows
    .list(
      'spotUse',
      (use) => use.bayId === spot.bay.id && use.spot === spot.spot && (use.toAt ?? window.to) > window.from,
    )
    .flatMap(
      (use) =>
        stitchedUnder(
          use,
          rows.list('temporaryFix', (fix) => fix.vehicleId === use.vehicleId),
        ) ?? [],
    );
};
