import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { NumberField } from '../pieces/number-field.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import type { Draft } from './draft.js';

type StepProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
};

const somebodyNew = 'new';

/** Who is asked and called: a known contact of the customer, or a new one with what they may agree to. */
export const StepContact = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  const board = useBoard();
  // Contacts of the vehicle's own customer come with its read; those of another one as far as the board knows them.
  const known =
    draft.customerId === view.customer?.id
      ? view.contacts
      : [...board.tables.contact.values()].filter((contact) => contact.customerId === draft.customerId);
  const amount = decimalOf(draft.agreeUpTo);
  return (
    <fieldset className="hf-group">
      <legend>{t('checkIn.contact')}</legend>
      {known.length > 0 && (
        <Select
          label={t('checkIn.contact')}
          value={draft.contactId ?? somebodyNew}
          onChange={(id) => {
            onChange({ contactId: id === somebodyNew ? null : id });
          }}
          options={[
            ...known.map((contact) => ({
              value: contact.id,
              label: [contact.name, contact.phone].filter((one) => one !== null).join(', '),
            })),
            { value: somebodyNew, label: t('checkIn.newContact') },
          ]}
        />
      )}
      {draft.contactId === null && (
        <>
          <Field
            label={t('checkIn.contactName')}
            value={draft.contactName}
            onChange={(contactName) => {
              onChange({ contactName });
            }}
          />
          <Field
            label={t('checkIn.phone')}
            type="tel"
            value={draft.phone}
            onChange={(phone) => {
              onChange({ phone });
            }}
          />
          <Tick
            label={t('checkIn.agreeAny')}
            value={draft.agreeAny}
            onChange={(agreeAny) => {
              onChange({ agreeAny });
            }}
          />
          {!draft.agreeAny && (
            <NumberField
              label={t('checkIn.agreeUpTo', { currency })}
              hint={t('checkIn.agreeHint')}
              value={draft.agreeUpTo}
              onChange={(agreeUpTo) => {
                onChange({ agreeUpTo });
              }}
              unit={currency}
              units={[{ value: currency, label: currency }]}
              places={2}
              wrong={amount === null ? t('piece.wrong.amount') : null}
            />
          )}
          <Tick
            label={t('checkIn.mayCollect')}
            value={draft.mayCollect}
            onChange={(mayCollect) => {
              onChange({ mayCollect });
            }}
          />
        </>
      )}
    </fieldset>
  );
};
