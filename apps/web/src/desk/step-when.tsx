import { calendarOfBoard } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { Tick } from '../pieces/ticks.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { openingOn } from './booking-day.js';
import { firstDayWithRoom } from './day-room.js';
import { bookMinutesOf, type Draft } from './draft.js';
import { LoadBeside } from './load-beside.js';
import { useDayLoad } from './use-day-load.js';

type StepProps = { readonly draft: Draft; readonly onChange: (part: Partial<Draft>) => void };

/** Day and time, with the load of that day beside them and the first day that has room for what was said. */
export const StepWhen = ({ draft, onChange }: StepProps): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const calendar = calendarOfBoard(board);
  const ahead = useDayLoad({ from: null })?.days ?? [];
  const minutes = bookMinutesOf(draft);
  const first = firstDayWithRoom(ahead, minutes);
  const { expectedAt } = draft;
  const day = expectedAt === null ? null : calendar.dateOf(expectedAt);
  return (
    <>
      <div className="hf-load-first-day">
        <p>
          {minutes === 0 ? t('booking.thisUnknown') : t('booking.thisTakes', { time: format.duration(minutes) })}
          {first !== null && (
            <>
              {' · '}
              <strong>{t('booking.first', { day: format.day(first.day) })}</strong>
            </>
          )}
        </p>
        {first !== null && first.day !== day && (
          <Button
            size="small"
            onPress={() => {
              onChange({ expectedAt: openingOn(board, first.day) });
            }}
          >
            {t('booking.takeDay', { day: format.day(first.day) })}
          </Button>
        )}
      </div>
      <div className="hf-when">
        <DateTimeField
          label={t('booking.expectedAt')}
          value={expectedAt}
          onChange={(at) => {
            onChange({ expectedAt: at });
          }}
          isRequired
        />
        {day === null ? <p className="hf-quiet">{t('booking.needsTime')}</p> : <LoadBeside day={day} />}
      </div>
      <DateTimeField
        label={t('checkIn.promised')}
        value={draft.promisedAt}
        onChange={(promisedAt) => {
          onChange({ promisedAt });
        }}
      />
      <Field
        label={t('checkIn.boardNote')}
        hint={t('checkIn.boardNoteHint')}
        value={draft.boardNote}
        onChange={(boardNote) => {
          onChange({ boardNote: boardNote.slice(0, 40) });
        }}
      />
      <Tick
        label={t('checkIn.waitsHere')}
        value={draft.waitsHere}
        onChange={(waitsHere) => {
          onChange({ waitsHere });
        }}
      />
    </>
  );
};
