import { calendarOfBoard } from '@holdfast/board';
import type { TimesView } from '@holdfast/contract';

import { useBoard, useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';

const minuteMs = 60_000;

type Stretch = { readonly fromAt: string; readonly toAt: string | null };

/** A stretch in words: from when to when, and how long; the end is named with its day where that is another. */
export const useStretch = (): ((row: Stretch) => string) => {
  const { t, format } = useText();
  const calendar = calendarOfBoard(useBoard());
  const now = useNow(minuteMs);
  return ({ fromAt, toAt }) => {
    const from = Date.parse(fromAt);
    const until = toAt === null ? now : Date.parse(toAt);
    const duration = format.duration((until - from) / minuteMs);
    const start = `${format.date(from)}, ${format.time(from)}`;
    if (toAt === null) return t('times.runs', { from: start, duration });
    const sameDay = calendar.dateOf(from) === calendar.dateOf(until);
    const end = sameDay ? format.time(until) : `${format.date(until)}, ${format.time(until)}`;
    return t('times.stretch', { from: start, to: end, duration });
  };
};

type Before = { readonly fromAt?: unknown; readonly toAt?: unknown };
const instantOf = (value: unknown): number | null => {
  if (typeof value === 'number') return value;
  return typeof value === 'string' ? Date.parse(value) : null;
};

/** What was put right about an entry, oldest first: what it said before, who changed it when, and why. */
export const useCorrectionWords = (view: TimesView): ((rowId: string) => string[]) => {
  const { t, format } = useText();
  const board = useBoard();
  const moment = (at: number) => `${format.date(at)}, ${format.time(at)}`;
  const say = (one: TimesView['corrections'][number]): string => {
    const before = (one.before ?? {}) as Before;
    const from = instantOf(before.fromAt);
    const to = instantOf(before.toAt);
    const said =
      from === null
        ? t('times.was.none')
        : to === null
          ? t('times.was.running', { from: moment(from) })
          : t('times.was', { from: moment(from), to: moment(to) });
    return t(`times.put.${one.kind}`, {
      was: said,
      who: board.tables.person.get(one.byId ?? '')?.name ?? t('times.somebody'),
      when: moment(Date.parse(one.recordedAt)),
      words: one.words,
    });
  };
  /** The chain of versions that led to this row. */
  const chain = (rowId: string): TimesView['corrections'] => {
    const own = view.corrections.filter(
      (one) => one.newRowId === rowId || (one.newRowId === null && one.rowId === rowId),
    );
    const earlier = own.flatMap((one) => (one.rowId === null || one.rowId === rowId ? [] : chain(one.rowId)));
    return [...earlier, ...own];
  };
  return (rowId) => chain(rowId).map(say);
};
