import type { ReactElement } from 'react';

import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { NumberField } from './number-field.js';
import { decimalOf } from './typed.js';

type MoneyFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
};

/** An amount in the currency of the shop; what is none is said beside it. */
export const MoneyField = ({ label, value, onChange, hint }: MoneyFieldProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  return (
    <NumberField
      label={t('piece.amountOf', { label, currency })}
      value={value}
      onChange={onChange}
      unit={currency}
      units={[{ value: currency, label: currency }]}
      places={2}
      {...(hint === undefined ? {} : { hint })}
      wrong={decimalOf(value) === null ? t('piece.wrong.amount') : null}
    />
  );
};
