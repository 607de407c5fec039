import { useState, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { NumberPad } from '../ui/fields/number-pad.js';

type NumberFieldProps<Unit extends string> = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit: Unit;
  readonly units: readonly { readonly value: Unit; readonly label: string }[];
  readonly onUnit?: (unit: Unit) => void;
  readonly last?: { readonly value: string; readonly words: string };
  readonly places?: number;
  readonly hint?: string;
  readonly wrong?: string | null;
};

/** A number that is typed at a desk, or keyed in on our own pad, which opens under it, with gloves. */
export const NumberField = <Unit extends string>(props: NumberFieldProps<Unit>): ReactElement => {
  const { t } = useText();
  const [padOpen, setPadOpen] = useState(false);
  const { label, value, onChange, hint, wrong } = props;
  return (
    <div className="hf-number-field">
      <div className="hf-with-act">
        <Field
          label={label}
          value={value}
          onChange={onChange}
          wrong={wrong ?? null}
          {...(hint === undefined ? {} : { hint })}
        />
        <Button
          pressed={padOpen}
          onPress={() => {
            setPadOpen(!padOpen);
          }}
        >
          {t('piece.pad')}
        </Button>
      </div>
      {padOpen && (
        <NumberPad
          label={label}
          value={value}
          onChange={onChange}
          unit={props.unit}
          units={props.units}
          {...(props.onUnit === undefined ? {} : { onUnit: props.onUnit })}
          {...(props.last === undefined ? {} : { last: props.last })}
          places={props.places ?? 0}
          onDone={() => {
            setPadOpen(false);
          }}
        />
      )}
    </div>
  );
};
