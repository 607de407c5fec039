import { calendarOfBoard, type Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { PromisedForm } from '../pieces/promised-form.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { useText } from '../text/use-text.js';
import { DeskRow } from './desk-row.js';

/** Promised for today, and promised times that are past; the earliest first. */
export const Promised = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow();
  const words = useVisitWords(board, now);
  const calendar = calendarOfBoard(board);
  const endOfToday = calendar.dayBounds(calendar.dateOf(now)).to;
  const due = visits
    .flatMap((visit) => (visit.job.promisedAt === null ? [] : [{ visit, at: visit.job.promisedAt }]))
    .filter(({ at }) => at < endOfToday)
    .sort((a, b) => a.at - b.at);
  const distance = (at: number): string => format.duration(Math.abs(at - now) / 60_000);
  return (
    <Part heading={t('desk.promised')} under={t('desk.promisedUnder')}>
      {due.length === 0 ? (
        <p className="hf-quiet">{t('desk.noPromised')}</p>
      ) : (
        <ul className="hf-desk-list">
          {due.map(({ visit, at }) => (
            <DeskRow
              key={visit.job.id}
              of={visit}
              under={visit.customer?.name}
              acts={
                <Opener
                  command="changePromisedTime"
                  label={t('desk.change')}
                  about={t('desk.changeOf', { plate: visit.vehicle.plate })}
                >
                  {(close) => <PromisedForm job={visit.job} promisedAt={at} onClose={close} />}
                </Opener>
              }
            >
              <p className="hf-desk-fact">
                <time className={at < now ? 'hf-entry-title' : undefined}>{format.moment(at, now)}</time>
                {' · '}
                {at < now ? (
                  <strong>{t('desk.past', { time: distance(at) })}</strong>
                ) : (
                  t('desk.in', { time: distance(at) })
                )}
              </p>
              <p className="hf-small hf-quiet">{[words.state(visit), words.rest(visit)].join(' · ')}</p>
            </DeskRow>
          ))}
        </ul>
      )}
    </Part>
  );
};
