import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import type { Draft } from './draft.js';
import { useFind } from '../pieces/use-find.js';
import { useCustomer } from './use-customer.js';

type StepProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
};

/** Whose vehicle it is: as the shop knows it, another known customer, or a new one. */
export const StepCustomer = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const [takenName, setTaken] = useState<string | null>(null);
  const known = useCustomer(draft.customerId)?.customer.name;
  const own = view.customer?.id === draft.customerId ? view.customer : null;
  const taken = own?.name ?? known ?? takenName;
  const items = useFind(draft.customerId === null ? draft.customerName : '');
  const found = items.flatMap((item) => (item.kind === 'customer' ? [item] : []));
  if (draft.customerId !== null) {
    return (
      <div className="hf-row">
        <p>{t('checkIn.customerIs', { name: taken ?? '' })}</p>
        <Button
          size="small"
          onPress={() => {
            onChange({ customerId: null, contactId: null });
          }}
        >
          {t('checkIn.otherCustomer')}
        </Button>
      </div>
    );
  }
  return (
    <fieldset className="hf-group">
      <legend>{t('checkIn.customer')}</legend>
      <Field
        label={t('checkIn.customerName')}
        value={draft.customerName}
        onChange={(customerName) => {
          onChange({ customerName });
        }}
        autoFocus
      />
      {found.length > 0 && (
        <ul className="hf-found" aria-label={t('checkIn.knownCustomer')}>
          {found.map((item) => (
            <li key={item.id}>
              <span>{[item.name, item.fleet].filter((one) => one !== null).join(', ')}</span>
              <Button
                size="small"
                onPress={() => {
                  setTaken(item.name);
                  onChange({ customerId: item.id, contactId: null });
                }}
              >
                {t('checkIn.takeCustomer', { name: item.name })}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <Field
        label={t('checkIn.fleet')}
        hint={t('checkIn.fleetHint')}
        value={draft.fleet}
        onChange={(fleet) => {
          onChange({ fleet });
        }}
      />
    </fieldset>
  );
};
