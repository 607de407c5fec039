import { calendarOfBoard, rowsOf, type Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { AttemptForm } from '../pieces/attempt-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { waitOf } from '../pieces/waiting-limits.js';
import { useText } from '../text/use-text.js';
import { WaitMark } from '../ui/marks/wait-mark.js';
import { CheckInLink, useConcernWords } from './expected.js';
import { DeskRow, whoWords } from './desk-row.js';

/** The customer shows on the spot what was reported: an attempt, recorded while it happens. */
const AttemptAct = ({ visit }: { readonly visit: Visit }): ReactElement | null => {
  const { t } = useText();
  const board = useBoard();
  const { job, vehicle } = visit;
  const concerns = rowsOf(board)
    .list('concern', (one) => one.jobId === job.id)
    .sort((a, b) => a.position - b.position);
  if (concerns.length === 0) return null;
  return (
    <Opener command="recordAttempt" label={t('desk.attempt')} about={vehicle.plate}>
      {(close) => (
        <AttemptForm
          jobId={job.id}
          concerns={concerns}
          unit={job.odometerUnit}
          last={job.odometerIn === null ? null : { value: job.odometerIn, unit: job.odometerUnit }}
          onClose={close}
        />
      )}
    </Opener>
  );
};

type ListProps = { readonly visits: readonly Visit[] };

/** Vehicles that stand here and that nobody has checked in. */
export const Arrived = ({ visits }: ListProps): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow();
  const words = useVisitWords(board, now);
  const concerns = useConcernWords();
  return (
    <Part id="desk-arrived" heading={t('desk.arrived')} under={t('desk.arrivedUnder')}>
      {visits.length === 0 ? (
        <p className="hf-quiet">{t('desk.noArrived')}</p>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => (
            <DeskRow
              key={visit.job.id}
              of={visit}
              under={whoWords(visit)}
              acts={
                <>
                  <CheckInLink visit={visit} />
                  <AttemptAct visit={visit} />
                </>
              }
            >
              <p className="hf-desk-fact">
                {t('desk.arrivedSince', { since: format.moment(visit.job.arrivedAt ?? now, now) })}
                {' · '}
                {words.place(visit)}
                {visit.job.keyTag !== null && (
                  <>
                    {' · '}
                    {t('desk.key')} <span className="hf-code hf-desk-key">{visit.job.keyTag}</span>
                  </>
                )}
              </p>
              <p className="hf-small hf-quiet">{concerns(visit)}</p>
            </DeskRow>
          ))}
        </ul>
      )}
    </Part>
  );
};

/** Somebody sits in the room until it is done. */
export const WaitingHere = ({ visits }: ListProps): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow();
  const words = useVisitWords(board, now);
  const calendar = calendarOfBoard(board);
  return (
    <Part id="desk-waiting" heading={t('desk.waiting')} under={t('desk.waitingUnder')}>
      {visits.length === 0 ? (
        <p className="hf-quiet">{t('desk.noWaiting')}</p>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => {
            const { arrivedAt, promisedAt } = visit.job;
            const waiting = waitOf(visit, calendar, now)?.waiting;
            const since = t('desk.since', { since: format.moment(arrivedAt ?? now, now) });
            return (
              <DeskRow key={visit.job.id} of={visit} under={whoWords(visit)} acts={<AttemptAct visit={visit} />}>
                <p className="hf-desk-fact hf-desk-waits">
                  {waiting !== undefined && <WaitMark title={t(`wait.${waiting}`)} waiting={waiting} size={20} />}
                  <span>
                    {[since, words.state(visit), words.rest(visit)].join(' · ')}
                    {promisedAt !== null && (
                      <strong>
                        {' · '}
                        {t('desk.promisedAt', { at: format.moment(promisedAt, now) })}
                      </strong>
                    )}
                  </span>
                </p>
              </DeskRow>
            );
          })}
        </ul>
      )}
    </Part>
  );
};
