import { calendarOfBoard, expectedVisits } from '@holdfast/board';
import type { ReactElement } from 'react';

import './day-load.css';
import { useBoard, useNow } from '../live/use-board.js';
import { SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { scaleOf } from './day-room.js';
import { LoadBar, loadWords } from './load-bar.js';
import { useDayLoad } from './use-day-load.js';

/** The load of one day (of the shop's zone) and what is booked on it, beside the field that names it. */
export const LoadBeside = ({ day }: { readonly day: string }): ReactElement | null => {
  const text = useText();
  const { t, format } = text;
  const board = useBoard();
  const now = useNow(60_000);
  const calendar = calendarOfBoard(board);
  const today = calendar.dateOf(now);
  const days = useDayLoad({ from: day < today ? null : day, days: 14 })?.days ?? [];
  const loaded = days.find((one) => one.day === day);
  if (loaded === undefined) return null;
  const words = loadWords(loaded, day === today, text);
  const booked = expectedVisits(board, now).flatMap(({ job, vehicle, customer }) =>
    job.expectedAt !== null && calendar.dateOf(job.expectedAt) === day
      ? [[format.time(job.expectedAt), vehicle.plate, customer?.name].filter((one) => one != null).join(' · ')]
      : [],
  );
  return (
    <div className="hf-load-beside" role="group" aria-label={t('load.beside', { day: format.day(day) })}>
      <p className="hf-small hf-entry-title">{t('load.beside', { day: format.day(day) })}</p>
      <LoadBar day={loaded} scale={scaleOf(days)} />
      <p className="hf-small hf-figures">
        {words.of}
        {words.room !== '' && (
          <>
            {' · '}
            <strong>{words.room}</strong>
          </>
        )}
      </p>
      <SmallList lines={booked} />
    </div>
  );
};
