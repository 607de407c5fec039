import { calendarOfBoard, rowsOf, type Board, type Visit } from '@holdfast/board';
import { isReady, lineEnded } from '@holdfast/domain';

import { useText, type Text } from '../text/use-text.js';

/** The people on a clock of this visit, by name; none on a board without names. */
export const workersOf = (board: Board, visit: Visit): string[] => [
  ...new Set(visit.runningClocks.flatMap((clock) => board.tables.person.get(clock.personId)?.name ?? [])),
];

/** What goes on with a visit, as one short phrase; ages are opening time. */
export const stateWords = (board: Board, visit: Visit, now: number, { t, format }: Text): string => {
  const { state } = visit;
  const duration = format.duration(calendarOfBoard(board).openMinutes(state.since, now));
  const workers = workersOf(board, visit).join(', ');
  switch (state.kind) {
    case 'worked':
      return workers === '' ? t('visit.workedOn', { duration }) : t('visit.worked', { people: workers, duration });
    case 'held':
      return t('visit.held', { reason: t(`reason.${state.reason}`), duration });
    case 'stored':
      return t('visit.stored', { duration });
    case 'noReason':
      if (state.workLeft) return t('visit.noReason', { duration });
      if (visit.lines.length === 0) return t('visit.noLines');
      return t(isReady(rowsOf(board), visit.job.id) ? 'visit.ready' : 'visit.workDone');
    case 'ended':
      return t('visit.ended');
  }
};

/** Where a vehicle stands, in words. */
export const placeWords = (board: Board, { place }: Pick<Visit, 'place'>, { t }: Pick<Text, 't'>): string => {
  if (place === null) return t('visit.nowhere');
  if (place.kind === 'bay') {
    return t('word.place.bay', { bay: board.tables.bay.get(place.bayId ?? '')?.name ?? '' });
  }
  if (place.kind === 'yard' && place.yardSpot !== null) return t('visit.yardSpot', { spot: place.yardSpot });
  return t(`word.place.${place.kind}`);
};

/** What so far is known of how long the rest takes: the book time of its open lines with the go-ahead. */
export const restWords = ({ lines }: Pick<Visit, 'lines'>, { t, format }: Text): string => {
  const open = lines.filter((line) => !lineEnded(line));
  const given = open.filter((line) => line.goAhead === 'given');
  if (open.length === 0) return t('visit.rest.none');
  if (given.length === 0) return t('visit.rest.noGoAhead');
  const minutes = given.reduce((sum, line) => sum + (line.bookMinutes ?? 0), 0);
  if (minutes === 0) return t('visit.rest.noBook', { count: given.length });
  return t('visit.rest.book', { duration: format.duration(minutes) });
};

export type VisitWords = {
  readonly state: (visit: Visit) => string;
  readonly place: (visit: Visit) => string;
  readonly rest: (visit: Visit) => string;
};

/** The phrases of visits on this board at `now` (epoch ms). */
export const useVisitWords = (board: Board, now: number): VisitWords => {
  const text = useText();
  return {
    state: (visit) => stateWords(board, visit, now, text),
    place: (visit) => placeWords(board, visit, text),
    rest: (visit) => restWords(visit, text),
  };
};
