import { accountOfSpot, type Board, calendarOfBoard, rowsOf } from '@holdfast/board';
import { type HoldReason, holdReasons, type Row } from '@holdfast/domain';

import type { StitchedSpan, StripData, StripSegment } from '../strip/strip-model.js';
import { ageTicksOf, dayMinutesOf, limitMinutes } from './waiting-limits.js';

type Window = { readonly from: number; readonly to: number };
type SpotStrip = Pick<StripData, 'segments' | 'stitched'> & { readonly promise: number | null };

const isReason = (word: string | null): word is HoldReason => holdReasons.some((reason) => reason === word);

/** When the wait began that is still the same one at `at`: breaks in between do not start it anew. */
const waitBegan = (segments: ReturnType<typeof accountOfSpot>['segments'], at: number): number => {
  const here = segments[at];
  let began = here?.from ?? 0;
  for (let before = at - 1; before >= 0; before -= 1) {
    const one = segments[before];
    if (!one || one.jobId !== here?.jobId) break;
    if (one.class === here.class && one.holdId === here.holdId) began = one.from;
    else if (one.class !== 'break') break;
  }
  return began;
};

const waitingOf = (reason: HoldReason | 'noReason', minutes: number): StripSegment['waiting'] => {
  const limit = limitMinutes[reason];
  if (limit === null) return undefined;
  return minutes > limit ? 'past' : 'within';
};

const segmentsOf = (board: Board, bayId: string, spot: number, window: Window, now: number): StripSegment[] => {
  const calendar = calendarOfBoard(board);
  const dayMinutes = dayMinutesOf(calendar, now);
  const { segments } = accountOfSpot(board, bayId, spot, { from: window.from, to: Math.min(window.to, now) }, now);
  return segments.map((segment, at): StripSegment => {
    const { from, to, class: kind } = segment;
    if (kind !== 'held' && kind !== 'noReason') return { from, to, kind };
    const minutes = calendar.openMinutes(waitBegan(segments, at), to);
    const reason = kind === 'held' && isReason(segment.reason) ? segment.reason : null;
    const waiting = to === now ? waitingOf(kind === 'held' ? (reason ?? 'other') : 'noReason', minutes) : undefined;
    return {
      from,
      to,
      kind,
      ageTicks: ageTicksOf(minutes, dayMinutes),
      ...(reason === null ? {} : { reason }),
      ...(waiting === undefined ? {} : { waiting }),
    };
  });
};

/** One line for all fixes of the vehicle while it has the spot: it ends in its knot with the last of them. */
const stitchedOf = (fixes: readonly Row<'temporaryFix'>[], use: Row<'spotUse'>): StitchedSpan[] => {
  const there = fixes.filter(
    (fix) => fix.vehicleId === use.vehicleId && fix.since < (use.toAt ?? Infinity) && (fix.endedAt ?? Infinity) > use.fromAt,
  );
  if (there.length === 0) return [];
  const from = Math.max(use.fromAt, Math.min(...there.map((fix) => fix.since)));
  const end = Math.max(...there.map((fix) => fix.endedAt ?? Infinity));
  const leaves = use.toAt ?? Infinity;
  if (end > leaves || end === Infinity) return [{ from, to: leaves === Infinity ? null : leaves, ended: false }];
  return [{ from, to: end, ended: there.every((fix) => fix.endedHow === 'repaired') }];
};

/** What a strip draws of one spot: its account up to now, the stitched lines of the vehicles there, the promised time. */
export const spotStrip = (board: Board, bayId: string, spot: number, window: Window, now: number): SpotStrip => {
  const rows = rowsOf(board);
  const uses = rows.list(
    'spotUse',
    (use) => use.bayId === bayId && use.spot === spot && use.fromAt < window.to && (use.toAt ?? now) > window.from,
  );
  const fixes = rows.list('temporaryFix');
  const standing = uses.find((use) => use.toAt === null);
  const promise = rows.find('job', standing?.jobId)?.promisedAt ?? null;
  return {
    segments: segmentsOf(board, bayId, spot, window, now),
    stitched: uses.flatMap((use) => stitchedOf(fixes, use)),
    promise: promise !== null && promise < window.to && promise > window.from ? promise : null,
  };
};
