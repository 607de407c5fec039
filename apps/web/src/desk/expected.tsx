import { rowsOf, type Visit } from '@holdfast/board';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { CancelJobForm } from '../pieces/small-turn-forms.js';
import { restWords } from '../pieces/visit-words.js';
import { useText } from '../text/use-text.js';
import { ArrivalForm, ChangeBookingForm } from './booking-forms.js';
import { checkInPath } from './desk-paths.js';
import { DeskRow, whoWords } from './desk-row.js';

/** The way into check-in for a visit that is booked. */
export const CheckInLink = ({ visit }: { readonly visit: Visit }): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  if (!may.command('checkIn')) return null;
  return (
    <Link
      className="hf-button hf-button-small hf-look-frame"
      href={checkInPath(visit.job.id)}
      aria-label={t('desk.checkInOf', { plate: visit.vehicle.plate })}
    >
      {t('desk.checkIn')}
    </Link>
  );
};

/** What was reported of a visit, in one line; empty where nothing was. */
export const useConcernWords = (): ((visit: Visit) => string) => {
  const board = useBoard();
  return ({ job }) =>
    rowsOf(board)
      .list('concern', (one) => one.jobId === job.id)
      .sort((a, b) => a.position - b.position)
      .map((one) => one.words)
      .join(' · ');
};

/** A booked visit: when, whose, what for; it came, it comes later, it does not come. */
export const ExpectedRow = ({ visit }: { readonly visit: Visit }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const now = useNow();
  const concerns = useConcernWords()(visit);
  const { job, vehicle } = visit;
  const expectedAt = job.expectedAt ?? now;
  const late = now - expectedAt;
  const about = vehicle.plate;
  return (
    <DeskRow
      of={visit}
      under={whoWords(visit)}
      acts={
        <>
          <Opener command="recordArrival" label={t('desk.arrive')} about={about}>
            {(close) => <ArrivalForm visit={visit} onClose={close} />}
          </Opener>
          <CheckInLink visit={visit} />
          <Opener command="changeBooking" label={t('desk.anotherTime')} look="plain" about={about}>
            {(close) => <ChangeBookingForm visit={visit} onClose={close} />}
          </Opener>
          <Opener command="cancelJob" label={t('desk.notComing')} look="plain" about={about}>
            {(close) => <CancelJobForm job={job} plate={vehicle.plate} isExpected onClose={close} />}
          </Opener>
        </>
      }
    >
      <p className="hf-desk-fact">
        <time className="hf-entry-title">{format.moment(expectedAt, now)}</time>
        {late > 0 && <strong> · {t('desk.lateBy', { time: format.duration(late / 60_000) })}</strong>}
        {job.waitsHere && ` · ${t('desk.waitsHere')}`}
      </p>
      <p className="hf-small hf-quiet">{[concerns, restWords(visit, text)].filter((one) => one !== '').join(' · ')}</p>
    </DeskRow>
  );
};

/** Booked for today and not here yet; the late ones first. */
export const Expected = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t } = useText();
  return (
    <Part id="desk-expected" heading={t('desk.expected')} under={t('desk.expectedUnder')}>
      {visits.length === 0 ? (
        <p className="hf-quiet">{t('desk.noExpected')}</p>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => (
            <ExpectedRow key={visit.job.id} visit={visit} />
          ))}
        </ul>
      )}
    </Part>
  );
};
