import { calendarOfBoard, type Board, type Visit } from '@holdfast/board';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { shownCautions } from '../pieces/vehicle-head.js';
import { restWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';

type ExpectedProps = { readonly board: Board; readonly now: number; readonly visits: readonly Visit[] };

/** Booked visits of today, and earlier ones whose vehicle has not come: when, what, and how much of work. */
export const ExpectedToday = ({ board, now, visits }: ExpectedProps): ReactElement | null => {
  const text = useText();
  const { t, format } = text;
  const calendar = calendarOfBoard(board);
  const { to } = calendar.workingDayBounds(calendar.workingDayOf(now));
  const today = visits.filter(({ job }) => job.expectedAt !== null && job.expectedAt < to);
  if (today.length === 0) return null;
  return (
    <section className="hf-off" aria-label={t('floor.expected')}>
      <h2>{t('floor.expected')}</h2>
      <ul className="hf-off-rows">
        {today.map((visit) => {
          const { job, vehicle, customer } = visit;
          const expectedAt = job.expectedAt ?? now;
          const at = format.moment(expectedAt, now);
          const late = now - expectedAt;
          return (
            <li key={job.id} className="hf-off-row" data-job={job.number} tabIndex={-1}>
              <CautionSlot cautions={shownCautions(visit.cautions, t)} />
              <div className="hf-off-vehicle">
                <Link className="hf-plate-link" href={jobPath(job.id)}>
                  <Plate plate={vehicle.plate} fixCount={visit.fixes.length} />
                </Link>
                <span className="hf-small">{vehicle.description}</span>
              </div>
              <span className="hf-off-where hf-small">{customer?.name ?? ''}</span>
              <span className="hf-off-promise hf-small">
                {late <= 0
                  ? t('floor.expectedAt', { at })
                  : t('floor.expectedLate', { at, duration: format.duration(late / 60_000) })}
              </span>
              <span className="hf-off-state">{restWords(visit, text)}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
