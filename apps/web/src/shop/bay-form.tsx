import { calendarOfBoard, shopOf } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { said, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { type BayTyped, factsOf, typedFacts } from './bay-facts.js';
import { EquipmentFields, InspectionFields, LimitFields } from './bay-fields.js';

type BayFormProps = {
  /** Null: a new bay. */
  readonly bay: Row<'bay'> | null;
  readonly spec: Row<'baySpec'> | null;
  readonly onClose: () => void;
};

const useToday = (): string => calendarOfBoard(useBoard()).dateOf(shopNow());
const useUsualUnit = (): 'kg' | 'lb' => (shopOf(useBoard()).units === 'us' ? 'lb' : 'kg');

/** A bay: its name, and what it is from a day on. */
export const BayForm = ({ bay, spec, onClose }: BayFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const unit = useUsualUnit();
  const [name, setName] = useState(bay?.name ?? '');
  const [validFrom, setValidFrom] = useState(useToday());
  const [typed, setTyped] = useState<BayTyped>(() => typedFacts(spec, unit));
  const facts = factsOf(typed);
  const change = (part: Partial<BayTyped>): void => {
    setTyped((before) => ({ ...before, ...part }));
  };
  const send = async (): Promise<void> => {
    if (facts === null) return;
    const called = name.trim();
    const done = { text: bay ? 'shop.done.bay' : 'shop.done.bayAdded', values: { bay: called } } as const;
    const sent = bay
      ? await sending.run('changeBay', { bayId: bay.id, version: bay.version, name: called, validFrom, facts }, done)
      : await sending.run('addBay', { bayId: newId(), name: called, validFrom, ...facts }, done);
    if (sent) onClose();
  };
  return (
    <FormSheet
      heading={bay ? t('shop.bay.changeHeading', { bay: bay.name }) : t('shop.bay.addHeading')}
      command={bay ? 'changeBay' : 'addBay'}
      act={t(bay ? 'shop.save' : 'shop.bay.addAct')}
      sending={sending}
      ready={said(name) !== undefined && facts !== null && validFrom !== ''}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field label={t('shop.bay.name')} value={name} onChange={setName} isRequired />
      <Field
        label={t('shop.bay.spots')}
        value={typed.spots}
        onChange={(spots) => {
          change({ spots });
        }}
        wrong={wholeOf(typed.spots) == null ? t('piece.wrong.whole') : null}
      />
      <EquipmentFields typed={typed} onChange={change} />
      <LimitFields typed={typed} onChange={change} />
      {bay === null && <InspectionFields typed={typed} onChange={change} />}
      <DateField label={t('shop.validFrom')} hint={t('shop.validFromHint')} value={validFrom} onChange={setValidFrom} />
    </FormSheet>
  );
};

type BayTurnProps = { readonly bay: Row<'bay'>; readonly onClose: () => void };

/** A bay that is out of use by its own facts comes back; what is taken out of use now is an outage with its own end. */
export const BackInUseForm = ({
  bay,
  spec,
  onClose,
}: BayTurnProps & { readonly spec: Row<'baySpec'> }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const unit = useUsualUnit();
  const today = useToday();
  const send = async (): Promise<void> => {
    const facts = factsOf({ ...typedFacts(spec, unit), outOfUse: false, outOfUseWords: '' });
    if (facts === null) return;
    const done = { text: 'shop.done.inUse', values: { bay: bay.name } } as const;
    if (await sending.run('changeBay', { bayId: bay.id, version: bay.version, validFrom: today, facts }, done))
      onClose();
  };
  return (
    <FormSheet
      heading={t('shop.bay.inHeading', { bay: bay.name })}
      command="changeBay"
      act={t('shop.bay.inUse')}
      sending={sending}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('shop.bay.inWords')}</p>
    </FormSheet>
  );
};

/** The bay is no more from a day on; its record stays. */
export const EndBayForm = ({ bay, onClose }: BayTurnProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [endedOn, setEndedOn] = useState(useToday());
  const send = async (): Promise<void> => {
    const input = { bayId: bay.id, version: bay.version, endedOn };
    if (await sending.run('changeBay', input, { text: 'shop.done.bayEnded', values: { bay: bay.name } })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.bay.endHeading', { bay: bay.name })}
      command="changeBay"
      act={t('shop.bay.end')}
      sending={sending}
      ready={endedOn !== ''}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('shop.bay.endWords')}</p>
      <DateField label={t('shop.bay.endedOn')} value={endedOn} onChange={setEndedOn} />
    </FormSheet>
  );
};
