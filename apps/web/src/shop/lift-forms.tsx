import { calendarOfBoard } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import { addDays } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { said, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';

type Bay = Pick<Row<'bay'>, 'id' | 'name'>;

type InspectionFormProps = {
  readonly bay: Bay;
  /** Months followed until now; null: none. */
  readonly interval: number | null;
  readonly onClose: () => void;
};

/** What an inspector found, and in how many months the next one is due. A lift that failed is out of use by it. */
export const InspectionForm = ({ bay, interval, onClose }: InspectionFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const today = calendarOfBoard(useBoard()).dateOf(shopNow());
  const [inspectedOn, setInspectedOn] = useState(today);
  const [outcome, setOutcome] = useState<'passed' | 'failed' | null>(null);
  const [months, setMonths] = useState(interval === null ? '' : String(interval));
  const [inspector, setInspector] = useState('');
  const [words, setWords] = useState('');
  const intervalMonths = wholeOf(months);
  const send = async (): Promise<void> => {
    if (outcome === null || intervalMonths === null) return;
    const told = { intervalMonths, inspector: said(inspector), words: said(words) };
    const input = { inspectionId: newId(), bayId: bay.id, inspectedOn, outcome, ...told };
    const values = { bay: bay.name, day: format.day(inspectedOn), outcome };
    if (await sending.run('recordLiftInspection', input, { text: 'shop.done.inspected', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.lift.inspectHeading', { bay: bay.name })}
      command="recordLiftInspection"
      act={t('shop.lift.inspectAct')}
      sending={sending}
      ready={outcome !== null && inspectedOn !== '' && intervalMonths !== null}
      onSend={() => void send()}
      onClose={onClose}
    >
      <DateField label={t('shop.lift.inspectedOn')} value={inspectedOn} onChange={setInspectedOn} isRequired />
      <Choice
        label={t('shop.bay.field.outcome')}
        size="large"
        value={outcome}
        onChange={setOutcome}
        options={optionsOf(['passed', 'failed'] as const, (one) => t(`shop.bay.outcome.${one}`))}
      />
      {outcome === 'failed' && <p className="hf-care">{t('shop.lift.failedFollows')}</p>}
      <Field
        label={t('shop.bay.field.interval')}
        hint={t('shop.lift.intervalHint')}
        value={months}
        onChange={setMonths}
        wrong={intervalMonths === null ? t('piece.wrong.whole') : null}
      />
      <Field label={t('shop.lift.inspector')} value={inspector} onChange={setInspector} />
      <TextArea label={t('shop.lift.found')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};

/** Rule 4: the decision ends at most so many days after the day on which it is made. */
const mostDays = 14;

type AllowFormProps = { readonly bay: Bay; readonly dueOn: string; readonly onClose: () => void };

/** The one decision that a lift with an overdue inspection is used until a day. */
export const AllowOverdueForm = ({ bay, dueOn, onClose }: AllowFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const today = calendarOfBoard(useBoard()).dateOf(shopNow());
  const latest = addDays(today, mostDays);
  const [untilDay, setUntilDay] = useState(latest);
  const [words, setWords] = useState('');
  const isInside = untilDay >= today && untilDay <= latest;
  const send = async (): Promise<void> => {
    const input = { decisionId: newId(), bayId: bay.id, untilDay, words: words.trim() };
    const values = { bay: bay.name, day: format.day(untilDay) };
    if (await sending.run('allowOverdueLift', input, { text: 'shop.done.allowed', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.lift.allowHeading', { bay: bay.name })}
      command="allowOverdueLift"
      act={t('shop.lift.allowAct')}
      sending={sending}
      ready={isInside && said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-care">{t('shop.lift.allowWords', { due: format.day(dueOn) })}</p>
      <DateField
        label={t('shop.lift.until')}
        hint={t('shop.lift.untilHint', { day: format.day(latest) })}
        value={untilDay}
        onChange={setUntilDay}
        wrong={untilDay === '' || isInside ? null : t('shop.lift.untilWrong', { day: format.day(latest) })}
        isRequired
      />
      <TextArea label={t('shop.lift.why')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
