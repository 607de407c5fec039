import { calendarOfBoard } from '@holdfast/board';
import type { HoursOfDay } from '@holdfast/domain';
import { addDays } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { said } from '../pieces/typed.js';
import { areWhole, DayHours } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';

type ExceptionFormProps = {
  /** Null: the shop. */
  readonly personId: string | null;
  readonly onClose: () => void;
};

type Spans = { readonly label: string; readonly add: string; readonly first: readonly [string, string] };
type SpansProps = Spans & { readonly value: HoursOfDay; readonly onChange: (hours: HoursOfDay) => void };

const SpansField = ({ label, add, first, value, onChange }: SpansProps): ReactElement => (
  <fieldset className="hf-group">
    <legend>{label}</legend>
    <DayHours name={label} hours={value} first={first} add={add} onChange={onChange} />
  </fieldset>
);

/** Other hours on one day, for the shop or for one person; what was said of that day before is replaced. */
export const ExceptionForm = ({ personId, onClose }: ExceptionFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const board = useBoard();
  const [day, setDay] = useState(() => addDays(calendarOfBoard(board).dateOf(shopNow()), 1));
  const [is, setIs] = useState<'off' | 'other'>('off');
  const [hours, setHours] = useState<HoursOfDay>([['09:00', '13:00']]);
  const [breaks, setBreaks] = useState<HoursOfDay>([]);
  const [words, setWords] = useState('');
  const name = board.tables.person.get(personId ?? '')?.name;
  const isOff = is === 'off';
  const send = async (): Promise<void> => {
    const whose = personId === null ? {} : { personId };
    const times = isOff ? { hours: [] } : { hours: [...hours], breaks: [...breaks] };
    const input = { exceptionId: newId(), day, ...whose, ...times, words: said(words) };
    const values = { day: format.day(day), name: name ?? 'empty' };
    if (await sending.run('setException', input, { text: 'shop.done.exception', values })) onClose();
  };
  return (
    <FormSheet
      heading={name === undefined ? t('shop.exception.heading') : t('shop.exception.headingOf', { name })}
      command="setException"
      act={t('shop.exception.act')}
      sending={sending}
      ready={day !== '' && (isOff || (hours.length > 0 && areWhole(hours) && areWhole(breaks)))}
      onSend={() => void send()}
      onClose={onClose}
    >
      <DateField label={t('shop.exception.day')} value={day} onChange={setDay} isRequired />
      <Choice
        label={t('shop.exception.what')}
        value={is}
        onChange={setIs}
        options={optionsOf(['off', 'other'] as const, (one) =>
          one === 'other'
            ? t('shop.exception.other')
            : t(personId === null ? 'shop.exception.closed' : 'shop.exception.notHere'),
        )}
      />
      {!isOff && (
        <>
          <SpansField
            label={t(personId === null ? 'shop.hours.open' : 'shop.person.present')}
            add={t('week.add')}
            first={['09:00', '13:00']}
            value={hours}
            onChange={setHours}
          />
          <SpansField
            label={t('week.breaks')}
            add={t('week.addBreak')}
            first={['12:00', '12:30']}
            value={breaks}
            onChange={setBreaks}
          />
        </>
      )}
      <Field label={t('shop.exception.why')} hint={t('shop.exception.whyHint')} value={words} onChange={setWords} />
    </FormSheet>
  );
};
