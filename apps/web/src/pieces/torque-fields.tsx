import { torqueSources, torqueUnits } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { decimalOf, said } from './typed.js';

type Unit = (typeof torqueUnits)[number];
type Source = (typeof torqueSources)[number];

export type TorqueState = {
  readonly value: string;
  readonly unit: Unit;
  readonly source: Source | null;
  readonly sourceWords: string;
  readonly tool: string;
  readonly change: (part: Partial<Omit<TorqueState, 'change' | 'input'>>) => void;
  /** As the wire wants it; null while something is missing. Holdfast computes no torque: the value is the person's. */
  readonly input: {
    torque: string;
    torqueUnit: Unit;
    torqueSource: Source;
    sourceWords?: string | undefined;
    tool: string;
  } | null;
};

export const useTorque = (): TorqueState => {
  const { distanceUnit, locale } = useShopSettings();
  const [facts, setFacts] = useState<Omit<TorqueState, 'change' | 'input'>>({
    value: '',
    unit: locale === 'en-US' && distanceUnit === 'mi' ? 'poundFoot' : 'newtonMetre',
    source: null,
    sourceWords: '',
    tool: '',
  });
  const torque = decimalOf(facts.value);
  const tool = said(facts.tool);
  const isWhole = typeof torque === 'string' && facts.source !== null && tool !== undefined;
  return {
    ...facts,
    change: (part) => {
      setFacts((before) => ({ ...before, ...part }));
    },
    input: isWhole
      ? {
          torque,
          torqueUnit: facts.unit,
          torqueSource: facts.source,
          sourceWords: said(facts.sourceWords),
          tool,
        }
      : null,
  };
};

/** Value with its unit, where the value comes from, and the tool. */
export const TorqueFields = ({ torque }: { readonly torque: TorqueState }): ReactElement => {
  const { t } = useText();
  return (
    <>
      <NumberField
        label={t('piece.torque.valueIn', { unit: t(`word.torqueUnit.${torque.unit}`) })}
        value={torque.value}
        onChange={(value) => {
          torque.change({ value });
        }}
        unit={torque.unit}
        units={optionsOf(torqueUnits, (unit) => t(`word.torqueUnit.${unit}`))}
        onUnit={(unit) => {
          torque.change({ unit });
        }}
        places={1}
        hint={t('piece.torque.hint')}
        wrong={decimalOf(torque.value) === null ? t('piece.wrong.amount') : null}
      />
      <Choice
        label={t('piece.torque.source')}
        value={torque.source}
        onChange={(source) => {
          torque.change({ source });
        }}
        options={optionsOf(torqueSources, (source) => t(`word.torqueSource.${source}`))}
      />
      <Field
        label={t('piece.torque.sourceWords')}
        value={torque.sourceWords}
        onChange={(sourceWords) => {
          torque.change({ sourceWords });
        }}
      />
      <Field
        label={t('piece.torque.tool')}
        value={torque.tool}
        onChange={(tool) => {
          torque.change({ tool });
        }}
        isRequired
      />
    </>
  );
};
