import { standingKinds } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { MoneyField } from '../pieces/money-field.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import type { Draft } from './draft.js';

type StepProps = { readonly draft: Draft; readonly onChange: (part: Partial<Draft>) => void };

/** What the customer agrees to before it is asked: looking for the fault, small things, the limit of a fleet. */
export const StepStanding = ({ draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const { standing, orderNumber } = draft;
  return (
    <fieldset className="hf-group">
      <legend>{t('checkIn.standing')}</legend>
      <p className="hf-small hf-quiet">{t('checkIn.standingHint')}</p>
      {standingKinds.map((kind) => (
        <MoneyField
          key={kind}
          label={t(`checkIn.standing.${kind}`)}
          value={standing[kind]}
          onChange={(upTo) => {
            onChange({ standing: { ...standing, [kind]: upTo } });
          }}
        />
      ))}
      {standing.fleetLimit.trim() !== '' && (
        <Field
          label={t('checkIn.orderNumber')}
          value={orderNumber}
          onChange={(next) => {
            onChange({ orderNumber: next });
          }}
        />
      )}
    </fieldset>
  );
};
