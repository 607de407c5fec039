import type { ReactElement } from 'react';

import { useText, type Text } from '../text/use-text.js';
import { barOf, roomOf, type LoadedDay } from './day-room.js';

/** What a day has and what is free of it, in words. */
export const loadWords = (day: LoadedDay, isToday: boolean, { t, format }: Text): { of: string; room: string } => {
  const room = roomOf(day);
  const values = { load: format.duration(day.loadMinutes), people: format.duration(day.peopleMinutes) };
  const roomWords =
    room < 0
      ? t('load.over', { time: format.duration(-room) })
      : room === 0
        ? t('load.full')
        : t('load.room', { time: format.duration(room) });
  if (day.peopleMinutes === 0 && day.loadMinutes === 0) return { of: t('load.closed'), room: '' };
  return { of: t(isToday ? 'load.ofToday' : 'load.of', values), room: roomWords };
};

/** The whole of a day's bar in one sentence. */
export const loadSentence = (day: LoadedDay, { t, format }: Text): string =>
  t('load.sentence', {
    day: format.day(day.day),
    load: format.duration(day.loadMinutes),
    people: format.duration(day.peopleMinutes),
    over: roomOf(day) < 0 ? format.duration(-roomOf(day)) : 'none',
    jobs: day.bookedJobs,
  });

type BarProps = { readonly day: LoadedDay; readonly scale: number };

/** Hours of people as a frame, book hours as the fill; what is more than they have goes on past the frame. */
export const LoadBar = ({ day, scale }: BarProps): ReactElement => {
  const text = useText();
  const { frame, within, past } = barOf(day, scale);
  return (
    <svg className="hf-load-bar" role="img" aria-label={loadSentence(day, text)} width="100%" height="22">
      <rect className="hf-load-fill" x="0" y="5" width={`${String(within)}%`} height="12" />
      {past > 0 && (
        <rect className="hf-load-past" x={`${String(within)}%`} y="5" width={`${String(past)}%`} height="12" />
      )}
      {frame > 0 && <rect className="hf-load-frame" x="0" y="1" width={`${String(frame)}%`} height="20" />}
    </svg>
  );
};
