import type { ReactElement } from 'react';
import {
  Button,
  FieldError,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select as AriaSelect,
  SelectValue,
  Text,
} from 'react-aria-components';

import './fields.css';
import '../layers/layers.css';
import { useText } from '../../text/use-text.js';

export type Option<Value extends string> = {
  readonly value: Value;
  readonly label: string;
  readonly isDisabled?: boolean;
};

type SelectProps<Value extends string> = {
  readonly label: string;
  readonly value: Value | null;
  readonly onChange: (value: Value) => void;
  readonly options: readonly Option<Value>[];
  readonly hint?: string;
  readonly wrong?: string | null;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
};

/** One of many, in a list that opens. For up to five or so take a Choice: everything in sight, one tap. */
export const Select = <Value extends string>(props: SelectProps<Value>): ReactElement => {
  const { t } = useText();
  return (
    <AriaSelect
      className="hf-field"
      value={props.value}
      onChange={(key) => {
        const chosen = props.options.find((option) => option.value === key);
        if (chosen !== undefined) props.onChange(chosen.value);
      }}
      isInvalid={props.wrong != null}
      isDisabled={props.isDisabled ?? false}
      isRequired={props.isRequired ?? false}
      validationBehavior="aria"
    >
      <Label>{props.label}</Label>
      <Button className="hf-input hf-select">
        <SelectValue>{({ selectedText }) => selectedText || t('field.choose')}</SelectValue>
        <svg aria-hidden="true" width="14" height="9" viewBox="0 0 14 9">
          <path className="hf-line-ink" d="M1.5 1.5 7 7l5.5-5.5" />
        </svg>
      </Button>
      {props.hint !== undefined && (
        <Text slot="description" className="hf-hint">
          {props.hint}
        </Text>
      )}
      <FieldError className="hf-wrong">{props.wrong}</FieldError>
      <Popover className="hf-pop" offset={-2}>
        <ListBox className="hf-options">
          {props.options.map((option) => (
            <ListBoxItem
              key={option.value}
              id={option.value}
              className="hf-option"
              textValue={option.label}
              isDisabled={option.isDisabled ?? false}
            >
              {option.label}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
};
