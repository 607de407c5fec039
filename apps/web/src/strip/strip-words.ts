import type { Formats } from '../text/format.js';
import type { Translate } from '../text/use-text.js';
import type { StripData, StripSegment } from './strip-model.js';

export type StripSubject = {
  /** "Bay 2", "Yard, spot 4". */
  readonly name: string;
  /** The plate or job number of the vehicle there now. */
  readonly vehicle?: string;
  /** Temporary fixes on it now. */
  readonly fixCount?: number;
  /** What cannot be used in it, each a phrase. */
  readonly outages?: readonly string[];
};

type Words = { readonly t: Translate; readonly format: Formats };

/** The span that holds at `now`; at the very end of what is recorded, the last one. */
export const segmentAt = (segments: readonly StripSegment[], now: number): StripSegment | null =>
  segments.findLast((segment) => segment.from <= now && segment.to >= now && segment.kind !== 'planned') ?? null;

/** What a span is, in words: "held for parts", "empty". */
export const segmentWords = (segment: StripSegment, { t }: Words): string => {
  if (segment.kind === 'kept' && segment.label !== undefined) return t('strip.keptFor', { vehicle: segment.label });
  if (segment.kind !== 'held') return t(`kind.${segment.kind}`);
  return segment.reason === undefined ? t('kind.held') : t('strip.heldFor', { reason: t(`reason.${segment.reason}`) });
};

const stateClause = (segment: StripSegment | null, data: StripData, words: Words): string => {
  const { t, format } = words;
  if (segment === null) return t('strip.nothingRecorded');
  return t('strip.stateSince', {
    state: segmentWords(segment, words),
    since: format.moment(segment.since ?? segment.from, data.now),
    duration: format.duration(segment.ageMinutes ?? (data.now - segment.from) / 60_000),
  });
};

const waitClause = (segment: StripSegment | null, { t }: Words): string | null =>
  segment?.waiting === undefined ? null : t(`wait.${segment.waiting}`);

const forecastClause = (data: StripData, { t, format }: Words): string | null =>
  data.forecast == null
    ? null
    : t('strip.ready', {
        about: format.moment(data.forecast.p50, data.now),
        by: format.moment(data.forecast.p80, data.now),
      });

const promiseClause = (data: StripData, { t, format }: Words): string | null =>
  data.promise == null ? null : t('strip.promised', { at: format.moment(data.promise, data.now) });

/** "Bay 2: BN 03 TX, held for parts since 09:24, 3 h 12; 1 temporary fix …; about 15:30, 8 in 10 by 16:10." */
export const stripSentence = (subject: StripSubject, data: StripData, words: Words): string => {
  const now = segmentAt(data.segments, data.now);
  const state = stateClause(now, data, words);
  const clauses = [
    subject.vehicle === undefined ? state : `${subject.vehicle}, ${state}`,
    ...(subject.outages ?? []),
    waitClause(now, words),
    (subject.fixCount ?? 0) > 0 ? words.t('mark.patch', { count: subject.fixCount ?? 0 }) : null,
    forecastClause(data, words),
    promiseClause(data, words),
  ].filter((clause) => clause !== null);
  return `${subject.name}: ${clauses.join('; ')}.`;
};
