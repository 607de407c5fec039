import type { ReactElement, ReactNode } from 'react';
import { FieldError, Label, RadioButton, RadioField, RadioGroup, Text } from 'react-aria-components';

import './fields.css';

export type ChoiceOption<Value extends string> = {
  readonly value: Value;
  readonly label: string;
  readonly mark?: ReactNode;
  readonly isDisabled?: boolean;
};

type ChoiceProps<Value extends string> = {
  readonly label: string;
  readonly value: Value | null;
  readonly onChange: (value: Value) => void;
  readonly options: readonly ChoiceOption<Value>[];
  /** `large` for gloves: 64 px high and 20 px apart; else joined and 44 px high. */
  readonly size?: 'normal' | 'large';
  readonly hint?: string;
  readonly wrong?: string | null;
};

/** One of a few, all in sight: the chosen one is ink. */
export const Choice = <Value extends string>(props: ChoiceProps<Value>): ReactElement => (
  <RadioGroup
    className={`hf-field hf-choice-${props.size ?? 'normal'}`}
    value={props.value}
    onChange={(value) => {
      const chosen = props.options.find((option) => option.value === value);
      if (chosen !== undefined) props.onChange(chosen.value);
    }}
    isInvalid={props.wrong != null}
    validationBehavior="aria"
    orientation="horizontal"
  >
    <Label>{props.label}</Label>
    <div className="hf-choice">
      {props.options.map((option) => (
        <RadioField key={option.value} value={option.value} isDisabled={option.isDisabled ?? false}>
          <RadioButton className="hf-choice-option">
            {option.mark}
            <span>{option.label}</span>
          </RadioButton>
        </RadioField>
      ))}
    </div>
    {props.hint !== undefined && (
      <Text slot="description" className="hf-hint">
        {props.hint}
      </Text>
    )}
    <FieldError className="hf-wrong">{props.wrong}</FieldError>
  </RadioGroup>
);
