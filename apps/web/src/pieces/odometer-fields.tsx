import { distanceUnits } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { wholeOf } from './typed.js';

export type DistanceUnit = (typeof distanceUnits)[number];

type OdometerFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit: DistanceUnit;
  readonly onUnit?: (unit: DistanceUnit) => void;
  /** The reading before, in its own unit. */
  readonly last?: { readonly value: number; readonly unit: DistanceUnit } | null;
};

/** A reading of the odometer as it stands there, in its own unit; the one before is offered. */
export const OdometerField = ({ label, value, onChange, unit, onUnit, last }: OdometerFieldProps): ReactElement => {
  const { t, format } = useText();
  return (
    <NumberField
      label={t('piece.readingOf', { label, unit: t(`word.unit.${unit}`) })}
      value={value}
      onChange={onChange}
      unit={unit}
      units={optionsOf(distanceUnits, (one) => t(`word.unit.${one}`))}
      {...(onUnit === undefined ? {} : { onUnit })}
      {...(last == null
        ? {}
        : {
            last: {
              value: String(last.value),
              words: t('piece.lastReading', { reading: format.distance(last.value, last.unit) }),
            },
            hint: t('piece.lastReading', { reading: format.distance(last.value, last.unit) }),
          })}
      wrong={wholeOf(value) === null ? t('piece.wrong.whole') : null}
    />
  );
};
