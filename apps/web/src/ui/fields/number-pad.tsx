import type { KeyboardEvent, ReactElement, ReactNode } from 'react';

import './number-pad.css';
import { useText } from '../../text/use-text.js';
import { Button } from '../button.js';
import { Choice, type ChoiceOption } from './choice.js';
import { pressPad, stepPad, type PadKey } from './pad-entry.js';

type NumberPadProps<Unit extends string> = {
  readonly label: string;
  /** What stands in the window: digits with at most one point; empty when nothing is. */
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** The units of the place; the one a number was read in is kept with it, nothing is converted. */
  readonly unit: Unit;
  readonly units: readonly ChoiceOption<Unit>[];
  readonly onUnit?: (unit: Unit) => void;
  /** The last value at the same place, to be taken over by one press. */
  readonly last?: { readonly value: string; readonly words: string };
  /** Decimal places offered; 0 hides the point. */
  readonly places?: number;
  readonly onDone: (value: string, unit: Unit) => void;
};

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;

const BackArrow = (): ReactElement => (
  <svg aria-hidden="true" width="30" height="20" viewBox="0 0 30 20">
    <path className="hf-line-ink" d="M28 10H3M11 2 3 10l8 8" />
  </svg>
);

/** Our own pad: large keys, the last value first, minus and plus one, units beside the number. Takes a keyboard too. */
export const NumberPad = <Unit extends string>(props: NumberPadProps<Unit>): ReactElement => {
  const { t, format } = useText();
  const { value, onChange, places = 0 } = props;
  const unitLabel = props.units.find((unit) => unit.value === props.unit)?.label ?? props.unit;
  const press = (key: PadKey): void => {
    onChange(pressPad(value, key, places));
  };
  const typed = (event: KeyboardEvent): void => {
    const key = event.key === ',' ? '.' : event.key === 'Backspace' ? 'back' : event.key;
    if (!/^(\d|\.|back)$/.test(key)) return;
    event.preventDefault();
    press(key as PadKey);
  };
  const key = (name: PadKey, words: ReactNode, label?: string): ReactElement => (
    <Button
      key={name}
      {...(label === undefined ? {} : { label })}
      onPress={() => {
        press(name);
      }}
    >
      {words}
    </Button>
  );
  return (
    <div className="hf-pad" role="group" aria-label={props.label} onKeyDown={typed}>
      <output className="hf-pad-window" aria-label={props.label} aria-live="polite">
        <span className="hf-pad-value">{value === '' ? '–' : value}</span> <span>{unitLabel}</span>
      </output>
      {props.units.length > 1 && props.onUnit !== undefined && (
        <Choice label={t('pad.unit')} value={props.unit} onChange={props.onUnit} options={props.units} />
      )}
      {props.last !== undefined && (
        <Button
          follows={props.last.words}
          onPress={() => {
            onChange(props.last?.value ?? value);
          }}
        >
          {t('pad.last', { value: `${format.decimal(props.last.value)} ${unitLabel}` })}
        </Button>
      )}
      <div className="hf-pad-keys">
        {digits.map((digit) => key(digit, digit))}
        {places > 0 ? key('.', '.', t('pad.point')) : <span />}
        {key('0', '0')}
        {key('back', <BackArrow />, t('pad.back'))}
      </div>
      <div className="hf-pad-foot">
        {([-1, 1] as const).map((step) => (
          <Button
            key={step}
            label={t(step < 0 ? 'pad.less' : 'pad.more')}
            onPress={() => {
              onChange(stepPad(value, step));
            }}
          >
            {step < 0 ? '−1' : '+1'}
          </Button>
        ))}
        <Button
          look="ink"
          isDisabled={value === '' || value.endsWith('.')}
          onPress={() => {
            props.onDone(value, props.unit);
          }}
        >
          {t('pad.done')}
        </Button>
      </div>
    </div>
  );
};
