// ui/fields/ hides how things are typed, chosen and counted. It guarantees that every field has a visible label, that what
// is wrong stands beside it as a sentence, that numbers need no system keyboard, and that times are of the shop's zone.
import type { ReactElement } from 'react';
import {
  FieldError,
  Input,
  Label,
  Text,
  TextArea as AriaTextArea,
  TextField,
  type TextFieldProps,
} from 'react-aria-components';

import './fields.css';

export type FieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What helps to fill it in. */
  readonly hint?: string;
  /** What is wrong with it, as a sentence; null or absent when nothing is. */
  readonly wrong?: string | null;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
  readonly name?: string;
  readonly autoFocus?: boolean;
};

type OneLine = FieldProps & {
  readonly type?: 'text' | 'password' | 'tel' | 'email' | 'search';
  readonly autoComplete?: string;
  /** Plates, VINs and codes: capital letters, slashed zero. */
  readonly code?: boolean;
};

export const fieldAttributes = (props: FieldProps): TextFieldProps => ({
  value: props.value,
  onChange: props.onChange,
  isInvalid: props.wrong != null,
  isRequired: props.isRequired ?? false,
  isDisabled: props.isDisabled ?? false,
  validationBehavior: 'aria',
  ...(props.name === undefined ? {} : { name: props.name }),
  ...(props.autoFocus === undefined ? {} : { autoFocus: props.autoFocus }),
});

export const FieldWords = ({ hint, wrong }: Pick<FieldProps, 'hint' | 'wrong'>): ReactElement => (
  <>
    {hint !== undefined && (
      <Text slot="description" className="hf-hint">
        {hint}
      </Text>
    )}
    <FieldError className="hf-wrong">{wrong}</FieldError>
  </>
);

/** One line of text. */
export const Field = (props: OneLine): ReactElement => (
  <TextField
    {...fieldAttributes(props)}
    className="hf-field"
    type={props.type ?? 'text'}
    {...(props.autoComplete === undefined ? {} : { autoComplete: props.autoComplete })}
  >
    <Label>{props.label}</Label>
    <Input
      className={props.code === true ? 'hf-input hf-code' : 'hf-input'}
      {...(props.code === true ? { autoCapitalize: 'characters', spellCheck: false } : {})}
    />
    <FieldWords {...props} />
  </TextField>
);

/** Several lines of text. */
export const TextArea = (props: FieldProps & { readonly rows?: number }): ReactElement => (
  <TextField {...fieldAttributes(props)} className="hf-field">
    <Label>{props.label}</Label>
    <AriaTextArea className="hf-input hf-text-area" rows={props.rows ?? 3} />
    <FieldWords {...props} />
  </TextField>
);
