import { rowsOf, type Board, type Visit } from '@holdfast/board';
import { isReady, lineSettled } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { handBackPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { DeskRow, whoWords } from './desk-row.js';

/** Visits with nothing left to do, lines or only something to be looked at: the vehicle waits for its owner. */
export const readyVisits = (board: Board, visits: readonly Visit[]): Visit[] =>
  visits.filter(({ job, lines }) => {
    const rows = rowsOf(board);
    if (lines.length > 0) return lines.every((line) => lineSettled(rows, line));
    return job.checkedInAt !== null && isReady(rows, job.id);
  });

/** Ready and not collected; whether the customer knows it, and whether something still stands in the way. */
export const Ready = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  const untold = new Set(
    rowsOf(board)
      .list('call', (call) => call.reason === 'ready' && call.endedAt === null)
      .map((call) => call.jobId),
  );
  return (
    <Part id="desk-ready" heading={t('desk.ready')} under={t('desk.readyUnder')}>
      {visits.length === 0 ? (
        <p className="hf-quiet">{t('desk.noReady')}</p>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => (
            <DeskRow
              key={visit.job.id}
              of={visit}
              under={whoWords(visit)}
              acts={
                <Link
                  className="hf-button hf-button-small hf-look-frame"
                  href={handBackPath(visit.job.id)}
                  aria-label={t('desk.handBackOf', { plate: visit.vehicle.plate })}
                >
                  {t('desk.handBack')}
                </Link>
              }
            >
              <p className="hf-desk-fact">
                {isReady(rowsOf(board), visit.job.id)
                  ? t('desk.readyNow', { since: format.moment(visit.state.since, now) })
                  : t('desk.stillOpen')}
                {untold.has(visit.job.id) && ` · ${t('desk.notTold')}`}
              </p>
            </DeskRow>
          ))}
        </ul>
      )}
    </Part>
  );
};
