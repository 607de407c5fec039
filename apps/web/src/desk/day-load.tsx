import { calendarOfBoard, expectedVisits } from '@holdfast/board';
import { addDays } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import './day-load.css';
import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { minutesOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { firstDayWithRoom, roomOf, scaleOf, type LoadedDay } from './day-room.js';
import { bookPath } from './desk-paths.js';
import { ExpectedRow } from './expected.js';
import { LoadBar, loadWords } from './load-bar.js';
import { daysAhead, useDayLoad } from './use-day-load.js';

const daysShown = 14;

/** The first day with room for the book hours that somebody on the telephone asks about. */
const FirstDay = ({ days }: { readonly days: readonly LoadedDay[] }): ReactElement => {
  const { t, format } = useText();
  const may = useMay();
  const [typed, setTyped] = useState('');
  const minutes = minutesOf(typed);
  const first = typeof minutes === 'number' ? firstDayWithRoom(days, minutes) : null;
  return (
    <div className="hf-load-first">
      <Field
        label={t('load.hours')}
        hint={t('piece.hoursHint')}
        value={typed}
        onChange={setTyped}
        wrong={minutes === null ? t('piece.wrong.minutes') : null}
      />
      <div role="status">
        {typeof minutes !== 'number' || minutes === 0 ? (
          <p className="hf-quiet">{t('load.firstAsk')}</p>
        ) : first === null ? (
          <p>{t('load.firstNone', { days: daysAhead, hours: format.duration(minutes) })}</p>
        ) : (
          <>
            <p className="hf-load-answer">
              {t('load.first', { hours: format.duration(minutes), day: format.day(first.day) })}
            </p>
            <p className="hf-small hf-quiet">{t('load.firstHours', { room: format.duration(roomOf(first)) })}</p>
          </>
        )}
      </div>
      {first !== null && may.command('bookJob') && (
        <Link className="hf-button hf-button-small hf-look-frame" href={bookPath(first.day)}>
          {t('load.bookThen')}
        </Link>
      )}
    </div>
  );
};

type RowProps = {
  readonly day: LoadedDay;
  readonly scale: number;
  readonly isToday: boolean;
  readonly isPicked: boolean;
  readonly onPick: () => void;
};

const DayRow = ({ day, scale, isToday, isPicked, onPick }: RowProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const words = loadWords(day, isToday, text);
  const { bookedJobs, bookedMinutes } = day;
  const booked =
    bookedMinutes === 0
      ? t('load.booked', { count: bookedJobs })
      : t('load.bookedTime', { count: bookedJobs, time: format.duration(bookedMinutes) });
  return (
    <li className="hf-load-day" data-day={day.day}>
      <button type="button" className="hf-load-pick" aria-pressed={isPicked} onClick={onPick}>
        {format.day(day.day)}
      </button>
      {(day.peopleMinutes > 0 || day.loadMinutes > 0) && <LoadBar day={day} scale={scale} />}
      <span className="hf-load-of">{words.of}</span>
      <span className={roomOf(day) < 0 ? 'hf-load-room hf-entry-title' : 'hf-load-room'}>{words.room}</span>
      <span className="hf-load-booked hf-quiet">{bookedJobs === 0 ? '' : booked}</span>
    </li>
  );
};

/** What is booked for one day. */
const BookedOn = ({ day }: { readonly day: string }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const may = useMay();
  const now = useNow(60_000);
  const calendar = calendarOfBoard(board);
  const visits = expectedVisits(board, now).filter(
    ({ job }) => job.expectedAt !== null && calendar.dateOf(job.expectedAt) === day,
  );
  return (
    <section aria-label={t('load.visits', { day: format.day(day) })} className="hf-load-visits">
      <div className="hf-row">
        <h3>{t('load.visits', { day: format.day(day) })}</h3>
        {may.command('bookJob') && (
          <Link className="hf-button hf-button-small hf-look-frame" href={bookPath(day)}>
            {t('load.bookOn')}
          </Link>
        )}
      </div>
      {visits.length === 0 ? (
        <p className="hf-quiet">{t('load.noVisits')}</p>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => (
            <ExpectedRow key={visit.job.id} visit={visit} />
          ))}
        </ul>
      )}
    </section>
  );
};

/** The load of two weeks from any day on, the first day with room, and what is booked for the day that is picked. */
export const DayLoad = (): ReactElement => {
  const { t } = useText();
  const today = calendarOfBoard(useBoard()).dateOf(useNow(60_000));
  const [typedFrom, setFrom] = useState<string | null>(null);
  const [picked, setPicked] = useState<string | null>(null);
  const from = typedFrom === null || typedFrom < today ? today : typedFrom;
  const isNear = from <= addDays(today, daysAhead - daysShown);
  const ahead = useDayLoad({ from: null });
  const far = useDayLoad({ from, days: daysShown, isWanted: !isNear });
  const days = ((isNear ? ahead : far)?.days ?? []).filter(({ day }) => day >= from).slice(0, daysShown);
  const scale = scaleOf(days);
  const withoutHours = ahead?.linesWithoutHours ?? 0;
  return (
    <Part id="desk-load" heading={t('load.heading')} under={t('load.under')}>
      <FirstDay days={ahead?.days ?? []} />
      <div className="hf-load-from">
        <DateField
          label={t('load.day')}
          value={typedFrom ?? today}
          onChange={(day) => {
            setFrom(day === '' ? null : day);
            setPicked(day === '' || day < today ? null : day);
          }}
        />
        <p className="hf-small hf-quiet">{t('load.scale')}</p>
      </div>
      <ul className="hf-load-days">
        {days.map((day) => (
          <DayRow
            key={day.day}
            day={day}
            scale={scale}
            isToday={day.day === today}
            isPicked={day.day === picked}
            onPick={() => {
              setPicked(day.day === picked ? null : day.day);
            }}
          />
        ))}
      </ul>
      {withoutHours > 0 && <p className="hf-small hf-quiet">{t('load.withoutHours', { count: withoutHours })}</p>}
      {picked !== null && <BookedOn day={picked} />}
    </Part>
  );
};
