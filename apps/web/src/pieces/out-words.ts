import { rowsOf, type Board, type Visit } from '@holdfast/board';
import type { Row } from '@holdfast/domain';

import { useText, type Text, type Translate } from '../text/use-text.js';

/** The spot that is kept for the vehicle of a job while it is out; undefined where none is. */
export const keptUseOf = (board: Board, jobId: string): Row<'spotUse'> | undefined =>
  rowsOf(board).list('spotUse', (use) => use.jobId === jobId && use.kind === 'kept' && use.toAt === null)[0];

/** The name of the bay whose spot is kept for the job; null where none is. */
export const keptBayOf = (board: Board, jobId: string): string | null => {
  const use = keptUseOf(board, jobId);
  return use === undefined ? null : (board.tables.bay.get(use.bayId)?.name ?? null);
};

/** The work of another firm that a vehicle is out for. */
export const subletAwayOf = (board: Board, jobId: string): Row<'sublet'> | undefined =>
  rowsOf(board).list(
    'sublet',
    (one) => one.jobId === jobId && one.form === 'vehicleOut' && one.state === 'underWay' && one.toAt === null,
  )[0];

/** The road tests of a visit, newest first, named for a list to choose from. */
export const useRoadTests = (board: Board, now: number) => {
  const { t, format } = useText();
  return (jobId: string): { id: string; title: string; isOut: boolean }[] =>
    rowsOf(board)
      .list('place', (place) => place.jobId === jobId && place.kind === 'roadTest')
      .sort((a, b) => b.fromAt - a.fromAt)
      .map((place) => ({
        id: place.id,
        title: t('out.roadTest', {
          driver: board.tables.person.get(place.driverId ?? '')?.name ?? t('out.somebody'),
          from: format.moment(place.fromAt, now),
        }),
        isOut: place.toAt === null,
      }));
};

export type OutWords = {
  /** Who drives, or which firm has it. */
  readonly who: string;
  readonly since: string;
  /** Whether its spot is kept, and where. */
  readonly spot: string;
  /** When it is due back, and by how much that is past; null where nobody said. */
  readonly due: string | null;
};

/** Who has it: the driver, or the firm. */
const whoHas = (board: Board, place: Row<'place'> | null, firm: string | undefined, t: Translate): string => {
  if (place?.kind === 'away') return t('out.firm', { firm: firm ?? t('out.otherFirm') });
  const driver = board.tables.person.get(place?.driverId ?? '')?.name;
  return t('out.driver', { driver: driver ?? t('out.somebody') });
};

const dueWords = (dueAt: number | null, now: number, { t, format }: Text): string | null => {
  if (dueAt === null) return null;
  const at = format.moment(dueAt, now);
  if (dueAt >= now) return t('out.due', { at });
  return t('out.dueLate', { at, duration: format.duration((now - dueAt) / 60_000) });
};

/** What is known of a vehicle that is on a road test or at another firm, at `now` (epoch ms). */
export const useOutWords = (board: Board, now: number): ((visit: Pick<Visit, 'job' | 'place'>) => OutWords) => {
  const text = useText();
  const { t, format } = text;
  return ({ job, place }) => {
    const sublet = subletAwayOf(board, job.id);
    const bay = keptBayOf(board, job.id);
    const fromAt = place?.fromAt ?? now;
    const duration = format.duration((now - fromAt) / 60_000);
    return {
      who: whoHas(board, place, sublet?.firm, t),
      since: t('out.since', { since: format.moment(fromAt, now), duration }),
      spot: bay === null ? t('out.spotFree') : t('out.spotKept', { bay }),
      due: dueWords(place?.dueBackAt ?? sublet?.dueBackAt ?? null, now, text),
    };
  };
};
