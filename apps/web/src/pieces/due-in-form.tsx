import { supplierStates } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import type { Named } from './line-form.js';
import { optionsOf } from './options.js';
import { Ticks } from './ticks.js';
import { said } from './typed.js';

export type SupplierState = (typeof supplierStates)[number];

type DueFieldsProps = {
  readonly state: SupplierState;
  readonly dueOn: string;
  readonly onState: (state: SupplierState) => void;
  readonly onDueOn: (day: string) => void;
};

/** What the supplier says of a part, and the day; "no date" has none. */
export const DueFields = ({ state, dueOn, onState, onDueOn }: DueFieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-pair">
      <Select
        label={t('dueIn.state')}
        value={state}
        onChange={onState}
        options={optionsOf(supplierStates, (value) => t(`word.supplier.${value}`))}
      />
      {state !== 'backorderedNoDate' && <DateField label={t('dueIn.day')} value={dueOn} onChange={onDueOn} />}
    </div>
  );
};

/** The day as the wire wants it: none where the supplier names none. */
export const dueDay = (state: SupplierState, dueOn: string): string | undefined =>
  state === 'backorderedNoDate' || dueOn === '' ? undefined : dueOn;

type DueInFormProps = {
  readonly parts: readonly Named[];
  readonly state?: SupplierState;
  readonly onClose: () => void;
};

/** When a supplier says that parts will come. Every date is kept with the day it was told. */
export const DueInForm = ({ parts, state: first, onClose }: DueInFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [chosen, setChosen] = useState<readonly string[]>(parts.map((part) => part.id));
  const [state, setState] = useState<SupplierState>(first ?? 'inStock');
  const [dueOn, setDueOn] = useState('');
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { partLineIds: [...chosen], state, dueOn: dueDay(state, dueOn), words: said(words) };
    if (await sending.run('recordDueIn', input, { text: 'dueIn.done', values: { count: chosen.length } })) onClose();
  };
  const [only] = parts;
  return (
    <FormSheet
      heading={parts.length === 1 && only ? t('dueIn.headingOne', { title: only.title }) : t('dueIn.heading')}
      command="recordDueIn"
      act={t('dueIn.act')}
      sending={sending}
      ready={chosen.length > 0}
      onSend={() => void send()}
      onClose={onClose}
    >
      {parts.length > 1 && <Ticks label={t('dueIn.parts')} rows={parts} value={chosen} onChange={setChosen} />}
      <DueFields state={state} dueOn={dueOn} onState={setState} onDueOn={setDueOn} />
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
