import { calendarOfBoard } from '@holdfast/board';
import type { HoursOfWeek, Row } from '@holdfast/domain';
import { addDays } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { emptyWeek, isWhole, useWeekWords, WeekHours } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { fromWhen } from './valid-words.js';

type HoursFormProps = { readonly first: Row<'openingHours'> | undefined; readonly onClose: () => void };

/** Opening hours and breaks from a day on; the days before keep theirs. */
const HoursForm = ({ first, onClose }: HoursFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const calendar = calendarOfBoard(useBoard());
  const [validFrom, setValidFrom] = useState(() => addDays(calendar.dateOf(shopNow()), 1));
  const [week, setWeek] = useState<HoursOfWeek>(first?.week ?? emptyWeek);
  const [breaks, setBreaks] = useState<HoursOfWeek>(first?.breaks ?? emptyWeek);
  const send = async (): Promise<void> => {
    const done = { text: 'shop.done.hours', values: { day: format.day(validFrom) } } as const;
    if (await sending.run('setOpeningHours', { validFrom, week, breaks }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.hours.heading')}
      command="setOpeningHours"
      act={t('shop.hours.act')}
      sending={sending}
      ready={validFrom !== '' && isWhole(week) && isWhole(breaks)}
      onSend={() => void send()}
      onClose={onClose}
    >
      <DateField label={t('shop.validFrom')} hint={t('shop.validFromHint')} value={validFrom} onChange={setValidFrom} />
      <WeekHours
        caption={t('shop.hours.heading')}
        hoursHeading={t('shop.hours.open')}
        hours={week}
        onHours={setWeek}
        breaks={breaks}
        onBreaks={setBreaks}
      />
    </FormSheet>
  );
};

/** When the shop is open: now, from a later day, and how it was. */
export const HoursPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const weekWords = useWeekWords();
  const today = calendarOfBoard(board).dateOf(useNow());
  const all = [...board.tables.openingHours.values()].sort((a, b) => (a.validFrom < b.validFrom ? 1 : -1));
  return (
    <Part
      id={id}
      heading={t('shop.hours')}
      acts={
        <Opener label={t('shop.hours.set')} command="setOpeningHours">
          {(close) => <HoursForm first={all[0]} onClose={close} />}
        </Opener>
      }
    >
      {all.length === 0 && <p className="hf-quiet">{t('shop.hours.none')}</p>}
      <Entries>
        {fromWhen(all, today).map(({ row: hours, standing, key }) => (
          <Entry key={hours.id}>
            <p className={standing === 'now' ? 'hf-entry-title' : 'hf-quiet'}>
              {t(key, { day: format.day(hours.validFrom) })}
            </p>
            <p>{weekWords(hours.week) || t('shop.hours.closed')}</p>
            {weekWords(hours.breaks) !== '' && (
              <p className="hf-quiet hf-small">{t('shop.hours.breaks', { hours: weekWords(hours.breaks) })}</p>
            )}
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
