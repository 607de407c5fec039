import { useState, type ReactElement } from 'react';
import { Input, Label, TextField } from 'react-aria-components';

import './fields.css';
import { useText } from '../../text/use-text.js';
import { fromZonedInput, toZonedInput } from '../../text/zoned-input.js';
import { FieldWords } from './field.js';

type DateTimeProps = {
  readonly label: string;
  /** Epoch milliseconds; null while nothing is set. */
  readonly value: number | null;
  readonly onChange: (at: number | null) => void;
  readonly hint?: string;
  readonly wrong?: string | null;
  readonly isRequired?: boolean;
};

/** A date and time of the shop's zone, whatever zone the device is in; the zone stands under the field. */
export const DateTimeField = (props: DateTimeProps): ReactElement => {
  const { t, zone } = useText();
  const given = props.value === null ? '' : toZonedInput(props.value, zone);
  const [typed, setTyped] = useState<string | null>(null);
  const change = (text: string): void => {
    const at = fromZonedInput(text, zone);
    setTyped(at === null ? text : null);
    props.onChange(at);
  };
  return (
    <TextField
      className="hf-field"
      value={typed ?? given}
      onChange={change}
      isInvalid={props.wrong != null}
      isRequired={props.isRequired ?? false}
      validationBehavior="aria"
    >
      <Label>{props.label}</Label>
      <Input className="hf-input" type="datetime-local" />
      <FieldWords
        hint={props.hint ?? t('field.zone', { zone: zone.replaceAll('_', ' ') })}
        wrong={props.wrong ?? null}
      />
    </TextField>
  );
};

type DateProps = Omit<DateTimeProps, 'value' | 'onChange'> & {
  /** A day without a time, `2026-11-25`; empty while nothing is set. */
  readonly value: string;
  readonly onChange: (isoDay: string) => void;
};

/** A day without a time. */
export const DateField = (props: DateProps): ReactElement => (
  <TextField
    className="hf-field"
    value={props.value}
    onChange={props.onChange}
    isInvalid={props.wrong != null}
    isRequired={props.isRequired ?? false}
    validationBehavior="aria"
  >
    <Label>{props.label}</Label>
    <Input className="hf-input" type="date" />
    <FieldWords wrong={props.wrong ?? null} {...(props.hint === undefined ? {} : { hint: props.hint })} />
  </TextField>
);
