import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { isTyped } from './is-typed.js';

type EraseProps = { readonly customer: NonNullable<VehicleView['customer']>; readonly onClose: () => void };

const goes = ['names', 'reach', 'plates', 'photos', 'said', 'log'] as const;
const stays = ['work', 'vehicle', 'reason'] as const;

/** The owner erases a customer's personal data for good: what goes, what stays, and the name typed by hand. */
export const EraseForm = ({ customer, onClose }: EraseProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [name, setName] = useState('');
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { customerId: customer.id, version: customer.version, words: words.trim() };
    if (await sending.run('erasePersonalData', input)) onClose();
  };
  return (
    <FormSheet
      heading={t('records.erase.heading')}
      command="erasePersonalData"
      act={t('records.erase.act')}
      sending={sending}
      ready={isTyped(customer.name, name) && said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-care">
        <strong>{t('records.erase.forGood')}</strong>
      </p>
      <section className="hf-group" aria-label={t('records.erase.goes')}>
        <h3>{t('records.erase.goes')}</h3>
        <ul className="hf-erase-list">
          {goes.map((one) => (
            <li key={one}>{t(`records.erase.goes.${one}`)}</li>
          ))}
        </ul>
      </section>
      <section className="hf-group" aria-label={t('records.erase.stays')}>
        <h3>{t('records.erase.stays')}</h3>
        <ul className="hf-erase-list">
          {stays.map((one) => (
            <li key={one}>{t(`records.erase.stays.${one}`)}</li>
          ))}
        </ul>
      </section>
      <TextArea
        label={t('records.erase.why')}
        hint={t('records.erase.whyHint')}
        value={words}
        onChange={setWords}
        rows={2}
        isRequired
      />
      <Field
        label={t('records.erase.type', { name: customer.name })}
        value={name}
        onChange={setName}
        autoComplete="off"
        isRequired
      />
    </FormSheet>
  );
};
