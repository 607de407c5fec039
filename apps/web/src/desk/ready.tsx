import { rowsOf, type Visit } from '@holdfast/board';
import { isReady, lineEnded } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useBoard } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { handBackPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { DeskRow } from './desk-row.js';

/** Visits whose lines have all ended: the vehicle waits for its owner. */
export const Ready = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const ended = visits.filter((visit) => visit.lines.length > 0 && visit.lines.every(lineEnded));
  return (
    <Part heading={t('desk.ready')} under={t('desk.readyUnder')}>
      {ended.length === 0 ? (
        <p className="hf-quiet">{t('desk.noReady')}</p>
      ) : (
        <ul className="hf-desk-list">
          {ended.map((visit) => (
            <DeskRow
              key={visit.job.id}
              visit={visit}
              under={[visit.contact?.name ?? visit.customer?.name, visit.contact?.phone].filter(Boolean).join(', ')}
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
                {isReady(rowsOf(board), visit.job.id) ? t('desk.readyNow') : t('desk.stillOpen')}
              </p>
            </DeskRow>
          ))}
        </ul>
      )}
    </Part>
  );
};
